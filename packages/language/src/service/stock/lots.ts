/** The one rule by which amounts become things: up. */

/** 5 % of 60 is 3, not 3.0000000000000004. */
const NOISE = 1e-9;

/** The rule in words, as the plan and the sheets state it. */
export const ROUNDING_RULE =
    'Every share and every amount is rounded up: to a whole piece for each line, and then to whole lots, racks, bags and batches.';

/** The whole number that is enough. */
export function up(amount: number): number {
    return Math.ceil(amount - NOISE);
}

/** How many lots (dozens, racks, bags, batches) are enough. @param lot > 0 */
export function lotsOf(amount: number, lot: number): number {
    return lot > 0 ? up(amount / lot) : 0;
}

/** The pieces that are kept for `inUse` at so many of each. */
export function parOf(inUse: number, par: number): number {
    return up(inUse * par);
}
