/** The inverse questions of the heat model: how warm the bowl, how hot the ladle, by when on the table. Solved by bisection. */
import { coolFor, pourInto, type Liquid, type Surroundings, type Vessel } from './liquid.js';

export interface Ask {
    readonly liquid: Liquid;
    readonly vessel: Vessel;
    readonly room: Surroundings;
    /** Wanted in front of the guest, °C. */
    readonly wanted: number;
    /** Between pour and guest, min. */
    readonly minutes: number;
}

/** An answer, or why there is none that may be given. */
export type Answer =
    | { readonly celsius: number }
    | { readonly refused: 'touch-limit' | 'boiling' | 'out-of-reach'; readonly needed?: number };

/** No liquid is asked to leave the kitchen hotter than this, °C (temperature 13). */
export const HOTTEST_LIQUID = 95;

const CLOSE_ENOUGH = 0.01;

/** The lowest input between `low` and `high` whose result reaches `wanted`; the result rises with the input. */
function bisect(low: number, high: number, wanted: number, result: (input: number) => number): number | undefined {
    if (result(low) >= wanted) {
        return low;
    }
    if (result(high) < wanted) {
        return undefined;
    }
    let [below, above] = [low, high];
    while (above - below > CLOSE_ENOUGH) {
        const middle = (below + above) / 2;
        if (result(middle) >= wanted) {
            above = middle;
        } else {
            below = middle;
        }
    }
    return above;
}

/**
 * How warm the vessel must be, °C, so that a liquid poured at `poured` is still as hot as wanted.
 * Refused above `touchLimit` (temperature 4.2), whatever that would give the guest.
 */
export function vesselNeeded(ask: Ask, poured: number, touchLimit: number): Answer {
    const arrives = (vessel: number): number =>
        coolFor(pourInto(ask.liquid, poured, ask.vessel, vessel), ask.minutes, ask.liquid, ask.vessel, ask.room);
    const needed = bisect(ask.room.celsius, poured, ask.wanted, arrives);
    if (needed === undefined) {
        return { refused: 'out-of-reach' };
    }
    return needed > touchLimit ? { refused: 'touch-limit', needed } : { celsius: needed };
}

/** How hot the liquid must be poured, °C, into a vessel at `vessel`; refused above 95 °C. */
export function pourNeeded(ask: Ask, vessel: number): Answer {
    const arrives = (poured: number): number =>
        coolFor(pourInto(ask.liquid, poured, ask.vessel, vessel), ask.minutes, ask.liquid, ask.vessel, ask.room);
    const needed = bisect(ask.wanted, 100, ask.wanted, arrives);
    if (needed === undefined) {
        return { refused: 'out-of-reach' };
    }
    return needed > HOTTEST_LIQUID ? { refused: 'boiling', needed } : { celsius: needed };
}

/** Longest wait looked at, min. */
const LONGEST_WAIT = 120;

/** Minutes after the pour until the liquid falls below what is wanted; 0 where it is poured too cold. */
export function minutesAbove(ask: Omit<Ask, 'minutes'>, poured: number, vessel: number): number {
    const start = pourInto(ask.liquid, poured, ask.vessel, vessel);
    const stillHot = bisect(
        0,
        LONGEST_WAIT,
        -ask.wanted,
        (minutes) => -coolFor(start, minutes, ask.liquid, ask.vessel, ask.room),
    );
    return start < ask.wanted ? 0 : (stillHot ?? LONGEST_WAIT);
}
