/** The inverse questions of the heat model: how warm the bowl, how hot from the pass, by when on the table (temperature 13). */
import { emptyAfter } from './journey.js';
import { pourFor, vesselFor, type Liquid, type Vessel } from './liquid.js';

/** What has to be in the vessel just after the pour, and what it is poured into. */
export interface Ask {
    /** A hot dish is wanted as hot or hotter, a cold one as cold or colder. */
    readonly side: 'hot' | 'cold';
    readonly liquid: Liquid;
    readonly vessel: Vessel;
    /** In the vessel just after the pour, °C, so that it is as wanted at the last guest: its way run backwards. */
    readonly inVessel: number;
    /** At the first guest then, °C. */
    readonly atFirst: number;
    /** Minutes that the vessel goes empty before it is filled. */
    readonly emptyFor: number;
    /** The room, °C: what a vessel has that nobody warms or chills. */
    readonly room: number;
}

export interface Limits {
    /** No vessel warmer than this stands before a guest, °C (temperature 4.2). */
    readonly touch: number;
    /** The local code's: a hot dish is kept at this or hotter, a cold one at this or colder, °C; absent where nobody says. */
    readonly holding?: number;
    /** No guest gets it hotter than this, °C (temperature D11). */
    readonly scald: number;
}

export type Refusal = 'touch-limit' | 'boiling' | 'freezing' | 'scalds' | 'holding';

/** An answer, or why there is none that may be given, with what it would have been and the limit it breaks. */
export type Answer =
    { readonly celsius: number } | { readonly refused: Refusal; readonly needed: number; readonly limit: number };

/** No liquid is asked to leave the kitchen hotter than this, °C (temperature 13), and none colder than ice. */
export const HOTTEST_LIQUID = 95;
export const COLDEST_LIQUID = 0;
/** No vessel is asked to be colder than a freezer makes it, °C. */
const COLDEST_VESSEL = -18;

/** How warm (or cold) the vessel has to be, as it is taken, for something poured at `poured`. */
export function vesselNeeded(ask: Ask, poured: number, limits: Limits): Answer {
    const { side, liquid, vessel, inVessel, atFirst, emptyFor, room } = ask;
    const needed = emptyAfter(vesselFor(inVessel, liquid, poured, vessel), room, -emptyFor);
    if (side === 'hot' ? needed <= room : needed >= room) {
        return { celsius: room };
    }
    if (side === 'hot' && needed > limits.touch) {
        return { refused: 'touch-limit', needed, limit: limits.touch };
    }
    if (needed < COLDEST_VESSEL) {
        return { refused: 'freezing', needed, limit: COLDEST_VESSEL };
    }
    return scalding(atFirst, needed, limits) ?? { celsius: needed };
}

/** How hot (or cold) it has to be as it is poured, into a vessel taken at `empty`. */
export function pourNeeded(ask: Ask, empty: number, limits: Limits): Answer {
    const { side, liquid, vessel, inVessel, atFirst, emptyFor, room } = ask;
    const needed = pourFor(inVessel, liquid, vessel, emptyAfter(empty, room, emptyFor));
    if (needed > HOTTEST_LIQUID) {
        return { refused: 'boiling', needed, limit: HOTTEST_LIQUID };
    }
    if (needed < COLDEST_LIQUID) {
        return { refused: 'freezing', needed, limit: COLDEST_LIQUID };
    }
    const { holding } = limits;
    if (holding !== undefined && (side === 'hot' ? needed < holding : needed > holding)) {
        return { refused: 'holding', needed, limit: holding };
    }
    return scalding(atFirst, needed, limits) ?? { celsius: needed };
}

function scalding(atFirst: number, needed: number, { scald }: Limits): Answer | undefined {
    return atFirst > scald ? { refused: 'scalds', needed, limit: scald } : undefined;
}

/** Longest wait looked at, min. */
const LONGEST_WAIT = 120;

/**
 * Minutes after the pour until a hot thing falls below what is wanted, or a cold one rises above it: 0 where it never was,
 * 120 where it still is then. Within a minute it is taken to change evenly.
 * @param poured °C
 * @param minuteLater °C a minute after it was so warm
 */
export function minutesKept(
    side: 'hot' | 'cold',
    wanted: number,
    poured: number,
    minuteLater: (celsius: number) => number,
): number {
    const isKept = (celsius: number): boolean => (side === 'hot' ? celsius >= wanted : celsius <= wanted);
    if (!isKept(poured)) {
        return 0;
    }
    let now = poured;
    for (let minute = 0; minute < LONGEST_WAIT; minute++) {
        const next = minuteLater(now);
        if (!isKept(next)) {
            return minute + (now - wanted) / (now - next);
        }
        now = next;
    }
    return LONGEST_WAIT;
}
