/** What one thermometer reading says of a liquid's cooling (temperature 12). */
export interface Reading {
    readonly celsius: number;
    /** After the pour. */
    readonly minutes: number;
}

export interface Calibration {
    /** In the vessel, just after the pour, °C. */
    readonly start: number;
    /** Multiplies the loss. */
    readonly scale: number;
}

/** An earlier reading tells more of the pour than of the cooling, min. */
const EARLY = 4;
/** No vessel loses less or more than this against the model; a reading that asks for it tells of another start. */
const [LEAST_SCALE, MOST_SCALE] = [0.3, 3];
/** Hottest start looked at, °C. */
const HOTTEST = 100;

/**
 * The start and the rate that pass through a reading: a late reading sets the rate, an early one, or one that no rate reaches,
 * the start.
 * @param start in the vessel as computed, °C; absent where the plan states none
 * @param after °C from a start, after minutes, at a scale
 */
export function calibrate(
    start: number | undefined,
    { celsius, minutes }: Reading,
    after: (start: number, minutes: number, scale: number) => number,
): Calibration {
    if (start !== undefined && minutes >= EARLY) {
        const lack = (scale: number): number => celsius - after(start, minutes, scale);
        const [slow, fast] = [lack(LEAST_SCALE), lack(MOST_SCALE)];
        if (slow * fast < 0) {
            const sign = Math.sign(fast);
            return { start, scale: crossing(LEAST_SCALE, MOST_SCALE, (scale) => sign * lack(scale)) };
        }
    }
    return { start: Math.min(HOTTEST, after(celsius, -minutes, 1)), scale: 1 };
}

const CLOSE_ENOUGH = 0.005;
const MOST_ROUNDS = 60;

/**
 * Where a rising function crosses zero, by regula falsi with the Illinois halving.
 * @param low where it is negative
 * @param high where it is not
 */
function crossing(low: number, high: number, rising: (input: number) => number): number {
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
