/** Where sets of salt and pepper stand that two guests share. */
import { poseAt } from './outline.js';
import { overlapOf, Solid } from './overlap.js';
import { poseOf, type SeatPlace, type TableTop } from './table-top.js';
import type { PlacedPiece } from './types.js';

/** A set on the table: in the frame of a cover whose guest would sit between the two that share it. */
export interface SetBetween {
    /** Of the first of the two guests. */
    readonly seat: number;
    readonly from: { readonly x: number; readonly y: number; readonly degrees: number };
    readonly piece: PlacedPiece;
}

interface CoverAt {
    readonly seat: SeatPlace;
    readonly pieces: readonly PlacedPiece[];
}

/** How far a set is moved at a time in search of a free place, mm. */
const STEP = 10;
/** How far it may be moved to either side where the line between its covers is full, mm. */
const ASIDE = [0, 40, -40, 80, -80, 120, -120, 160, -160, 200, -200];
/** No set stands nearer to the edge, mm. */
const NEAREST = 100;

/**
 * Each set between two covers, as far from the edge as the house puts it or, where something lies there, the next free place
 * toward the middle, toward the edge or to a side. It is on nothing of any cover, laid or brought later; where all is full, where least of
 * it is.
 * @param covers in the order of their seats, each with everything that lies there over the evening
 * @param count one for every two covers; more go between the others
 */
export function setsBetween(top: TableTop, covers: readonly CoverAt[], count: number): SetBetween[] {
    const next = (index: number): CoverAt => covers[(index + 1) % covers.length]!;
    const gaps = covers.map((first, index) => ({ first, second: next(index), index }));
    const inOrder = [...gaps.filter(({ index }) => index % 2 === 0), ...gaps.filter(({ index }) => index % 2 === 1)];
    const taken = covers.flatMap(({ seat, pieces }) =>
        pieces.filter(({ row }) => row !== 'middle').map((piece) => new Solid(piece, poseOf(seat))),
    );
    return inOrder.slice(0, count).flatMap(({ first, second }): SetBetween[] => {
        const set = first.pieces.find(({ row }) => row === 'middle');
        if (!set) {
            return [];
        }
        const from = between(first.seat, second.seat);
        const pose = poseAt(from.x, from.y, from.degrees - 90);
        const far = distances(top, from, set.y);
        let best: { readonly piece: PlacedPiece; readonly solid: Solid; readonly by: number } | undefined;
        for (const x of ASIDE) {
            for (const y of far) {
                if (best?.by !== 0) {
                    const piece = { ...set, x, y };
                    const solid = new Solid(piece, pose);
                    const by = taken.reduce((sum, other) => sum + overlapOf(solid, other), 0);
                    best = best && best.by <= by ? best : { piece, solid, by };
                }
            }
        }
        if (!best) {
            return [];
        }
        taken.push(best.solid);
        return [{ seat: first.seat.number, from, piece: best.piece }];
    });
}

/** Between two places at the edge, looking the way that their guests look together. */
function between(a: SeatPlace, b: SeatPlace): SetBetween['from'] {
    const [one, other] = [a, b].map(({ degrees }) => (degrees * Math.PI) / 180) as [number, number];
    const [x, y] = [Math.cos(one) + Math.cos(other), Math.sin(one) + Math.sin(other)];
    // Guests who face each other have it between them.
    const degrees = Math.hypot(x, y) < 1e-6 ? a.degrees : (Math.atan2(y, x) * 180) / Math.PI;
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, degrees };
}

/** From where the house puts it to the middle of the table, then back to the edge, mm. */
function distances(top: TableTop, { x, y, degrees }: SetBetween['from'], usual: number): number[] {
    const look = (degrees * Math.PI) / 180;
    const toMiddle = Math.max(0, -(x * Math.cos(look) + y * Math.sin(look)));
    const start = Math.min(usual, toMiddle);
    const steps = (length: number): number => Math.max(0, Math.floor(length / STEP));
    return [
        ...Array.from({ length: steps(toMiddle - start) + 1 }, (_, step) => start + step * STEP),
        ...Array.from({ length: steps(start - NEAREST) }, (_, step) => start - (step + 1) * STEP),
    ].filter((far) => far <= Math.max(top.width, top.depth));
}
