/** What is fetched from the store and comes with the van, against what the house owns and the event rents. */
import type { House, Plan } from '../../plan/types.js';
import { up } from './lots.js';
import type { WashCount } from './turnarounds.js';
import type { PieceCount, PullLine } from './types.js';

/**
 * The pull list in the order of the alphabet.
 * Rule: needed pieces of the guests expected, plus those of the covers set beyond them, less those that a stated wash gives back,
 * plus the spare share of all that, rounded up for each piece. The general share is for what stands at the covers; gear has
 * spares only where the house names it.
 * @param washes those the plan states
 */
export function pullList(plan: Plan, counts: readonly PieceCount[], washes: readonly WashCount[]): PullLine[] {
    return counts.map(({ piece, needed, by }) => {
        const overset = by.reduce((sum, use) => sum + use.overset, 0);
        const washed = washes.reduce((sum, wash) => sum + (wash.piece === piece ? wash.saves : 0), 0);
        const inUse = Math.max(0, needed + overset - washed);
        const spare = up(spareShare(plan, piece) * inUse);
        const pull = inUse + spare;
        const owned = ownedOf(plan.house, piece);
        const rented = rentedOf(plan, piece);
        const isCounted = owned !== undefined || rented > 0;
        const short = isCounted ? Math.max(0, pull - (owned ?? 0) - rented) : 0;
        return { piece, needed, overset, washed, spare, pull, owned, rented, short };
    });
}

/** The house's spare share of a piece, 0–1. */
export function spareShare({ house, cupboard }: Plan, piece: string): number {
    const own = house.spares.find((spare) => spare.piece?.name === piece)?.share;
    const general =
        cupboard.pieces.get(piece)?.family === 'gear' ? undefined : house.spares.find((spare) => !spare.piece)?.share;
    return (own ?? general)?.value ?? 0;
}

/** How many of a piece the house owns; `undefined` where it does not list it. */
export function ownedOf(house: House, piece: string): number | undefined {
    const lines = house.stock.filter((stock) => stock.piece.name === piece);
    return lines.length === 0 ? undefined : lines.reduce((sum, stock) => sum + stock.count.count, 0);
}

export function rentedOf(plan: Plan, piece: string): number {
    const lines = (plan.event?.rents ?? []).filter((rent) => rent.piece.name === piece);
    return lines.reduce((sum, rent) => sum + rent.count.count, 0);
}
