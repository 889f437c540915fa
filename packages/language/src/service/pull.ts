/** What is fetched from the store: pieces for the covers that are set, with the house's spares, against what it owns. */
import type { Plan } from '../plan/types.js';
import type { PieceCount, PullLine, Variation } from './types.js';

/** 5 % of 60 is 3, not 3.0000000000000004. */
const NOISE = 1e-9;

/**
 * The pull list in the order of the alphabet.
 * Rule: needed pieces of the guests expected, plus those of the covers set beyond them, plus the spare share of both, rounded up
 * for each piece. Without washing between courses.
 */
export function pullList(
    plan: Plan,
    counts: readonly PieceCount[],
    variations: readonly Variation[],
    guests: number,
    setFor: number,
): PullLine[] {
    const { house } = plan;
    const common = variations[0];
    const commonCount = common?.count ?? 0;
    const oversetCovers = Math.max(0, setFor - guests);
    return counts.map(({ piece, needed }) => {
        const atCommon = common && commonCount > 0 ? laidAt(common, piece) : 0;
        const overset = oversetCovers * atCommon;
        const share =
            house.spares.find((spare) => spare.piece?.name === piece)?.share ??
            house.spares.find((spare) => !spare.piece)?.share;
        const spare = Math.ceil((share?.value ?? 0) * (needed + overset) - NOISE);
        const pull = needed + overset + spare;
        const owned =
            house.stock.length === 0
                ? undefined
                : house.stock
                      .filter((stock) => stock.piece.name === piece)
                      .reduce((sum, stock) => sum + stock.count.count, 0);
        return {
            piece,
            needed,
            overset,
            spare,
            pull,
            owned,
            short: owned === undefined ? 0 : Math.max(0, pull - owned),
        };
    });
}

/** How many of a piece lie at one cover when guests sit: an overset cover is laid, not served. */
function laidAt({ cover }: Variation, piece: string): number {
    const flatware = [...cover.left, ...cover.right, ...cover.above, ...cover.breadPlate].filter(
        (each) => each.piece.name === piece,
    ).length;
    const glasses = cover.glasses.filter((each) => each.piece.name === piece).length;
    const plates = [cover.servicePlate?.name, cover.bread?.name, 'napkin'].filter((name) => name === piece).length;
    return flatware + glasses + plates;
}
