import type { PieceShape, PlacedPiece } from './types.js';

export interface Point {
    readonly x: number;
    readonly y: number;
}

/** A convex part of a piece: a circle, or its corners counter-clockwise. */
export type Part = { readonly middle: Point; readonly radius: number } | { readonly corners: readonly Point[] };

/** How one frame lies in another: first turned by `degrees` counter-clockwise, then moved. */
export interface Pose extends Point {
    readonly degrees: number;
    /** Of the turn: they are asked for at every corner. */
    readonly sine: number;
    readonly cosine: number;
}

export function poseAt(x: number, y: number, degrees: number): Pose {
    const turn = (degrees * Math.PI) / 180;
    return { x, y, degrees, sine: Math.sin(turn), cosine: Math.cos(turn) };
}

/**
 * Where the outline of flatware runs, half its width to the left and right of the line along it, in shares: how far from the
 * tip in lengths, and how far from the middle in half widths. Head, neck and the widened end of the handle
 * (common practice, no source: patterns differ).
 */
const PROFILES = {
    fork: [
        [
            [0, 0.9],
            [0.22, 1],
            [0.3, 0.75],
            [0.36, 0.25],
        ],
        [
            [0.36, 0.25],
            [1, 0.5],
        ],
    ],
    spoon: [
        [
            [0, 0.35],
            [0.05, 0.75],
            [0.13, 1],
            [0.22, 0.85],
            [0.3, 0.25],
        ],
        [
            [0.3, 0.25],
            [1, 0.45],
        ],
    ],
    knife: [
        [
            [0, 0.4],
            [0.1, 1],
            [0.55, 1],
        ],
        [
            [0.55, 0.75],
            [1, 0.75],
        ],
    ],
} as const;

/** The convex parts that make up a piece, in the frame of its cover. */
export function outline(piece: PlacedPiece): readonly Part[] {
    const middle = { x: piece.x, y: piece.y };
    if (piece.shape === 'round') {
        return [{ middle, radius: piece.length / 2 }];
    }
    const pose = poseAt(piece.x, piece.y, piece.degrees);
    if (piece.shape === 'pair') {
        const apart = (piece.length - piece.width) / 2;
        return [-apart, apart].map((y) => ({ middle: toFrame(pose, { x: 0, y }), radius: piece.width / 2 }));
    }
    return localCorners(piece.shape, piece.length, piece.width).map((corners) => ({
        corners: corners.map((corner) => toFrame(pose, corner)),
    }));
}

/** About the middle of the piece, tip up. */
function localCorners(shape: Exclude<PieceShape, 'round' | 'pair'>, length: number, width: number): readonly Point[][] {
    if (shape === 'napkin' || shape === 'card') {
        const [x, y] = [width / 2, length / 2];
        return [
            [
                { x: -x, y: -y },
                { x, y: -y },
                { x, y },
                { x: -x, y },
            ],
        ];
    }
    return PROFILES[shape].map((profile) => {
        const right = profile.map(([along, beside]) => ({
            x: (beside * width) / 2,
            y: length / 2 - along * length,
        }));
        const left = right.map(({ x, y }) => ({ x: -x, y }));
        return [...right.toReversed(), ...left];
    });
}

/** A point of the posed frame in the frame around it. */
export function toFrame({ x, y, sine, cosine }: Pose, point: Point): Point {
    return { x: x + point.x * cosine - point.y * sine, y: y + point.x * sine + point.y * cosine };
}

/** How `other` lies in the frame of `pose`, where both are given in one frame around them. */
export function seenFrom(pose: Pose, other: Pose): Pose {
    const [dx, dy] = [other.x - pose.x, other.y - pose.y];
    const [x, y] = [dx * pose.cosine + dy * pose.sine, dy * pose.cosine - dx * pose.sine];
    return poseAt(x, y, other.degrees - pose.degrees);
}

export function partIn(pose: Pose, part: Part): Part {
    return 'radius' in part
        ? { middle: toFrame(pose, part.middle), radius: part.radius }
        : { corners: part.corners.map((corner) => toFrame(pose, corner)) };
}
