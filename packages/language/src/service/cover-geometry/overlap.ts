// A CommonJS package in whose one export Node finds no names.
import sat, { type Circle, type Polygon } from 'sat';
import { outline, partIn, type Part, type Pose } from './outline.js';
import type { PlacedPiece } from './types.js';

/** Overlaps smaller than this are the noise of the figures, mm. */
const NOISE = 0.01;

/** A piece as the tests for overlap take it, with a circle round it that rules most pairs out. */
export interface Solid {
    readonly piece: PlacedPiece;
    readonly parts: readonly (Circle | Polygon)[];
    readonly x: number;
    readonly y: number;
    readonly reach: number;
}

/** @param pose where the piece's cover lies in the frame the test is made in; its own where absent */
export function solid(piece: PlacedPiece, pose: Pose = { x: 0, y: 0, degrees: 0 }): Solid {
    const parts = outline(piece).map((part) => partIn(pose, part));
    const { middle } = partIn(pose, { middle: piece, radius: 0 }) as { middle: { x: number; y: number } };
    const reach = piece.shape === 'round' ? piece.length / 2 : Math.hypot(piece.length, piece.width) / 2;
    return { piece, parts: parts.map(toSat), x: middle.x, y: middle.y, reach };
}

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
    if (Math.hypot(one.x - other.x, one.y - other.y) >= one.reach + other.reach) {
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
