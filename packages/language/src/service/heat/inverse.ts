/** The inverse questions of the heat model: how warm the bowl, how hot from the pass, by when on the table (temperature 13). */

/** A dish or drink seen from its guest: the temperature there as a function of what may be changed. */
export interface Ask {
    /** A hot dish is wanted at `wanted` or hotter, a cold one at `wanted` or colder. */
    readonly side: 'hot' | 'cold';
    /** In front of the last guest, °C. */
    readonly wanted: number;
    /** The room, °C: what a vessel has that nobody warms or chills. */
    readonly room: number;
    /** At the last guest, °C; rises with either. */
    readonly last: (poured: number, vessel: number) => number;
    /** At the first guest, °C. */
    readonly first: (poured: number, vessel: number) => number;
}

export interface Limits {
    /** No vessel warmer than this stands before a guest, °C (temperature 4.2). */
    readonly touch: number;
    /** The local code's: a hot dish is kept at this or hotter, a cold one at this or colder, °C; absent where nobody says. */
    readonly holding?: number;
    /** No guest gets it hotter than this, °C (temperature D11). */
    readonly scald: number;
}

export type Refusal = 'touch-limit' | 'boiling' | 'freezing' | 'scalds' | 'holding' | 'out-of-reach';

/** An answer, or why there is none that may be given, with what it would have been and the limit it breaks. */
export type Answer =
    { readonly celsius: number } | { readonly refused: Refusal; readonly needed?: number; readonly limit?: number };

/** No liquid is asked to leave the kitchen hotter than this, °C (temperature 13), and none colder than ice. */
export const HOTTEST_LIQUID = 95;
export const COLDEST_LIQUID = 0;
/** No vessel is asked to be colder than a freezer makes it, °C. */
const COLDEST_VESSEL = -18;

/** How warm (or cold) the vessel has to be for something poured at `poured`. */
export function vesselNeeded(ask: Ask, poured: number, limits: Limits): Answer {
    const [low, high] = ask.side === 'hot' ? [ask.room, poured] : [COLDEST_VESSEL, ask.room];
    const needed = reach(ask, low, high, (vessel) => ask.last(poured, vessel));
    if (needed === undefined) {
        return { refused: 'out-of-reach' };
    }
    if (ask.side === 'hot' && needed > limits.touch) {
        return { refused: 'touch-limit', needed, limit: limits.touch };
    }
    return scalding(ask.first(poured, needed), needed, limits) ?? { celsius: needed };
}

/** How hot (or cold) it has to leave the pass, in a vessel at `vessel`. */
export function pourNeeded(ask: Ask, vessel: number, limits: Limits): Answer {
    const isHot = ask.side === 'hot';
    const [low, high] = isHot ? [ask.wanted, 100] : [-18, ask.wanted];
    const needed = reach(ask, low, high, (poured) => ask.last(poured, vessel));
    if (needed === undefined) {
        return { refused: 'out-of-reach' };
    }
    if (needed > HOTTEST_LIQUID) {
        return { refused: 'boiling', needed, limit: HOTTEST_LIQUID };
    }
    if (needed < COLDEST_LIQUID) {
        return { refused: 'freezing', needed, limit: COLDEST_LIQUID };
    }
    const { holding } = limits;
    if (holding !== undefined && (isHot ? needed < holding : needed > holding)) {
        return { refused: 'holding', needed, limit: holding };
    }
    return scalding(ask.first(needed, vessel), needed, limits) ?? { celsius: needed };
}

function scalding(atFirst: number, needed: number, { scald }: Limits): Answer | undefined {
    return atFirst > scald ? { refused: 'scalds', needed, limit: scald } : undefined;
}

/** The input between `low` and `high` that just gives what is wanted; an end of the range where that does it already. */
function reach(
    { side, wanted }: Ask,
    low: number,
    high: number,
    result: (input: number) => number,
): number | undefined {
    const [easy, hard] = side === 'hot' ? [low, high] : [high, low];
    const isEnough = (celsius: number): boolean => (side === 'hot' ? celsius >= wanted : celsius <= wanted);
    if (isEnough(result(easy))) {
        return easy;
    }
    return isEnough(result(hard)) ? crossing(low, high, (input) => result(input) - wanted) : undefined;
}

const CLOSE_ENOUGH = 0.005;
const MOST_ROUNDS = 60;

/**
 * Where a rising function crosses zero, by regula falsi with the Illinois halving: few steps, as these functions are nearly
 * straight. @param low where it is negative @param high where it is not
 */
export function crossing(low: number, high: number, rising: (input: number) => number): number {
    let [below, above] = [low, high];
    let [under, over] = [rising(low), rising(high)];
    let last = 0;
    for (let round = 0; round < MOST_ROUNDS && above - below > CLOSE_ENOUGH; round++) {
        const middle = (below * over - above * under) / (over - under);
        const value = rising(middle);
        if (Math.abs(value) < CLOSE_ENOUGH) {
            return middle;
        }
        if (value < 0) {
            [below, under] = [middle, value];
            over = last < 0 ? over / 2 : over;
        } else {
            [above, over] = [middle, value];
            under = last > 0 ? under / 2 : under;
        }
        last = value;
    }
    return above;
}

/** Longest wait looked at, min. */
const LONGEST_WAIT = 120;

/**
 * Minutes after the pour until a hot thing falls below what is wanted, or a cold one rises above it: 0 where it never was,
 * 120 where it still is then.
 * @param after °C so many minutes after the pour
 */
export function minutesKept(side: 'hot' | 'cold', wanted: number, after: (minutes: number) => number): number {
    const lack = (minutes: number): number => (side === 'hot' ? wanted - after(minutes) : after(minutes) - wanted);
    if (lack(0) > 0) {
        return 0;
    }
    return lack(LONGEST_WAIT) <= 0 ? LONGEST_WAIT : crossing(0, LONGEST_WAIT, lack);
}
