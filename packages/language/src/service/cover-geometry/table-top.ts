import { outline, partIn, poseAt, toFrame, type Part, type Point, type Pose } from './outline.js';
import type { PlacedPiece } from './types.js';

/** The top of a table in its own frame, origin in its middle; for a round one `width` and `depth` are both its diameter. */
export interface TableTop {
    readonly shape: 'round' | 'square' | 'rectangle' | 'oval';
    readonly width: number;
    readonly depth: number;
    /** Middle of the table edge in front of each guest, and where the guest looks: 90 is along y. */
    readonly seats: readonly (Point & { readonly number: number; readonly degrees: number })[];
}

export type SeatPlace = TableTop['seats'][number];

/** Seats that a cover tells apart: at a round table all are alike. */
export const differentSeats = ({ shape, seats }: TableTop): TableTop['seats'] =>
    shape === 'round' ? seats.slice(0, 1) : seats;

/** How the cover at a seat lies on the table. */
export const poseOf = ({ x, y, degrees }: SeatPlace): Pose => poseAt(x, y, degrees - 90);

/** Radius of the table edge at a seat, mm; absent where it is straight. At an oval it is that of the circle that fits the edge there. */
export function edgeRadius({ shape, width, depth }: TableTop, { x, y }: SeatPlace): number | undefined {
    if (shape === 'square' || shape === 'rectangle') {
        return undefined;
    }
    const [a, b] = [width / 2, depth / 2];
    if (shape === 'round') {
        return a;
    }
    return (a * b) ** 2 * ((x / a ** 2) ** 2 + (y / b ** 2) ** 2) ** 1.5;
}

/** How far a piece reaches over the table edge, mm; 0 where it lies on the table. */
export function overEdge(top: TableTop, piece: PlacedPiece, pose: Pose): number {
    const reach = piece.shape === 'round' ? piece.length / 2 : Math.hypot(piece.length, piece.width) / 2;
    const middle = beyond(top, toFrame(pose, piece)) + reach;
    if (middle <= 0 || piece.shape === 'round') {
        return Math.max(0, middle);
    }
    const over = outline(piece).map((part) => {
        const placed = partIn(pose, part);
        return 'radius' in placed
            ? beyond(top, placed.middle) + placed.radius
            : Math.max(...placed.corners.map((corner) => beyond(top, corner)));
    });
    return Math.max(0, ...over);
}

/** How far a point lies beyond the edge; negative on the table. */
function beyond({ shape, width, depth }: TableTop, { x, y }: Point): number {
    if (shape === 'square' || shape === 'rectangle') {
        return Math.max(Math.abs(x) - width / 2, Math.abs(y) - depth / 2);
    }
    const reach = Math.hypot(x, y);
    // Along the line from the middle; exact for a round table.
    const out = Math.hypot(x / (width / 2), y / (depth / 2));
    return out === 0 ? -Math.min(width, depth) / 2 : reach - reach / out;
}

/**
 * The width left in the middle between the covers, mm: across the strip between two long sides, or across the largest circle
 * about the middle of any other table. Negative where covers reach past each other.
 */
export function centreLeft(
    top: TableTop,
    covers: readonly { readonly seat: SeatPlace; readonly pieces: readonly PlacedPiece[] }[],
): number {
    const parts = covers.flatMap(({ seat, pieces }) =>
        pieces.flatMap((piece) => outline(piece).map((part) => ({ seat, part: partIn(poseOf(seat), part) }))),
    );
    if (top.shape !== 'rectangle') {
        return 2 * Math.min(Math.min(top.width, top.depth) / 2, ...parts.map(({ part }) => nearest(part)));
    }
    // The long sides lie along x. Guests at the ends do not narrow the strip.
    const near = parts.filter(({ seat }) => isAlong(seat, 90)).map(({ part }) => highest(part));
    const far = parts.filter(({ seat }) => isAlong(seat, 270)).map(({ part }) => -highest(mirrored(part)));
    return Math.min(top.depth / 2, ...far) - Math.max(-top.depth / 2, ...near);
}

const isAlong = ({ degrees }: SeatPlace, way: number): boolean => Math.abs((((degrees - way) % 360) + 360) % 360) < 1;

function mirrored(part: Part): Part {
    return 'radius' in part
        ? { ...part, middle: { x: part.middle.x, y: -part.middle.y } }
        : { corners: part.corners.map(({ x, y }) => ({ x, y: -y })) };
}

const highest = (part: Part): number =>
    'radius' in part ? part.middle.y + part.radius : Math.max(...part.corners.map(({ y }) => y));

/** How near a part comes to the origin. */
function nearest(part: Part): number {
    if ('radius' in part) {
        return Math.hypot(part.middle.x, part.middle.y) - part.radius;
    }
    const { corners } = part;
    return Math.min(
        ...corners.map((from, index) => {
            const to = corners[(index + 1) % corners.length]!;
            const [dx, dy] = [to.x - from.x, to.y - from.y];
            const along = Math.min(1, Math.max(0, -(from.x * dx + from.y * dy) / (dx ** 2 + dy ** 2 || 1)));
            return Math.hypot(from.x + along * dx, from.y + along * dy);
        }),
    );
}
