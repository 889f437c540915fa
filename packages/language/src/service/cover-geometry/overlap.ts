// A CommonJS package in whose one export Node finds no names.
import sat from 'sat';
import { outline, partIn, poseAt, toFrame, type Part, type Pose } from './outline.js';
import type { PlacedPiece } from './types.js';

type Circle = InstanceType<typeof sat.Circle>;
type Polygon = InstanceType<typeof sat.Polygon>;

/** Overlaps smaller than this are the noise of the figures, mm. */
const NOISE = 0.01;

/** A piece as the tests for overlap take it, with a circle and an upright box round it that rule most pairs out. */
export class Solid {
    readonly x: number;
    readonly y: number;
    readonly reach: number;
    readonly halfAcross: number;
    readonly halfUp: number;
    #parts: readonly (Circle | Polygon)[] | undefined;

    /** @param pose where the piece's cover lies in the frame the test is made in */
    constructor(
        readonly piece: PlacedPiece,
        readonly pose: Pose,
    ) {
        const { x, y } = toFrame(pose, piece);
        this.x = x;
        this.y = y;
        const isRound = piece.shape === 'round';
        this.reach = isRound ? piece.length / 2 : Math.hypot(piece.length, piece.width) / 2;
        const turn = ((piece.degrees + pose.degrees) * Math.PI) / 180;
        const [sine, cosine] = [Math.abs(Math.sin(turn)), Math.abs(Math.cos(turn))];
        this.halfAcross = isRound ? this.reach : (piece.width * cosine + piece.length * sine) / 2;
        this.halfUp = isRound ? this.reach : (piece.length * cosine + piece.width * sine) / 2;
    }

    /** Made when two pieces are near enough to meet: most never are. */
    get parts(): readonly (Circle | Polygon)[] {
        return (this.#parts ??= outline(this.piece).map((part) => toSat(partIn(this.pose, part))));
    }
}

/** The frame of the cover itself. */
export const OWN = poseAt(0, 0, 0);

function toSat(part: Part): Circle | Polygon {
    return 'radius' in part
        ? new sat.Circle(new sat.Vector(part.middle.x, part.middle.y), part.radius)
        : new sat.Polygon(
              new sat.Vector(0, 0),
              part.corners.map(({ x, y }) => new sat.Vector(x, y)),
          );
}

const response = new sat.Response();

/** How far one of two pieces would have to move so that they no longer lie on each other, mm; 0 where they don't. */
export function overlapOf(one: Solid, other: Solid): number {
    if (
        Math.abs(one.x - other.x) >= one.halfAcross + other.halfAcross ||
        Math.abs(one.y - other.y) >= one.halfUp + other.halfUp
    ) {
        return 0;
    }
    let deepest = 0;
    for (const part of one.parts) {
        for (const another of other.parts) {
            if (meets(part, another)) {
                deepest = Math.max(deepest, response.overlap);
            }
        }
    }
    return deepest > NOISE ? deepest : 0;
}

function meets(one: Circle | Polygon, other: Circle | Polygon): boolean {
    response.clear();
    if (one instanceof sat.Circle) {
        return other instanceof sat.Circle
            ? sat.testCircleCircle(one, other, response)
            : sat.testPolygonCircle(other, one, response);
    }
    return other instanceof sat.Circle
        ? sat.testPolygonCircle(one, other, response)
        : sat.testPolygonPolygon(one, other, response);
}

/** Pieces that are meant to lie on each other: on a plate, on the saucer, on the napkin. */
export function belongTogether(one: PlacedPiece, other: PlacedPiece): boolean {
    return BELONG.some(([a, b]) => (isIn(one, a) && isIn(other, b)) || (isIn(other, a) && isIn(one, b)));
}

const BELONG = [
    ['centre', 'centre'],
    ['bread', 'bread'],
    ['saucer', 'saucer'],
    ['napkin', 'card'],
] as const;

function isIn(piece: PlacedPiece, what: (typeof BELONG)[number][number]): boolean {
    return what === 'napkin' || what === 'card' ? piece.shape === what : piece.row === what;
}
