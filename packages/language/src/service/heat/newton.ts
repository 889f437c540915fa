/**
 * Newton's law of cooling, T = Tb + (T0 − Tb)·e^(−t/τ) (temperature H1): for bottles in a bath, thin metal, and liquids below
 * 50 °C. Not alone for a liquid above 60 °C over more than 10 min: it is 2–9 °C out there (temperature 12).
 */

/** @param tau time constant, min @param minutes ≥ 0 @returns °C between `start` and `bath` */
export function approach(start: number, bath: number, tau: number, minutes: number): number {
    return bath + (start - bath) * Math.exp(-minutes / tau);
}

/** Minutes from `start` to `end` in a bath; `undefined` where the bath never brings it there. */
export function minutesTo(start: number, end: number, bath: number, tau: number): number | undefined {
    const left = (start - bath) / (end - bath);
    return left >= 1 && Number.isFinite(left) ? tau * Math.log(left) : undefined;
}

/** The time constant, min, of something seen to go from `start` to `end` in `minutes`. */
export function tauFrom(start: number, end: number, bath: number, minutes: number): number {
    return minutes / Math.log((start - bath) / (end - bath));
}

export interface Bath {
    readonly celsius: number;
    /** Time constant of a 750 ml bottle, min: usual, and the ends of the published range. */
    readonly tau: { readonly usual: number; readonly low: number; readonly high: number };
}

/** Ways to chill or warm a 750 ml bottle standing upright (temperature DS4, defaults below its table). */
export const BATHS = {
    fridge: { celsius: 4, tau: { usual: 160, low: 120, high: 220 } },
    freezer: { celsius: -18, tau: { usual: 120, low: 90, high: 180 } },
    'ice-water': { celsius: 0, tau: { usual: 22, low: 18, high: 30 } },
    'ice-water-unstirred': { celsius: 0, tau: { usual: 50, low: 18, high: 53 } },
    counter: { celsius: 20, tau: { usual: 100, low: 80, high: 120 } },
} as const satisfies Record<string, Bath>;

/** A time with its range, min: −30 % and +70 % of the usual at least (temperature 12): never a single figure. */
export interface TimeRange {
    readonly soonest: number;
    readonly usual: number;
    readonly latest: number;
}

/** How long a bottle takes to come from `start` to `end`; `undefined` where the bath never brings it there. */
export function chillTime(start: number, end: number, bath: Bath): TimeRange | undefined {
    const usual = minutesTo(start, end, bath.celsius, bath.tau.usual);
    if (usual === undefined) {
        return undefined;
    }
    const scale = (tau: number): number => (usual * tau) / bath.tau.usual;
    return {
        soonest: Math.min(usual * 0.7, scale(bath.tau.low)),
        usual,
        latest: Math.max(usual * 1.7, scale(bath.tau.high)),
    };
}

/** Time constant of a thin metal piece in still air, min: ρcδ/2h (temperature 13, utensils). @param thickness mm @param transfer W/m²K */
export function metalTau(density: number, heatCapacity: number, thickness: number, transfer: number): number {
    return (density * heatCapacity * 1000 * (thickness / 1000)) / (2 * transfer) / 60;
}

/** Temperature at the touch of two bodies, first instant, °C (temperature 4.2). @param effusivity of the object, W·s½/(m²K) */
export function contactTemperature(object: number, effusivity: number): number {
    const skin = { celsius: 33, effusivity: Math.sqrt(0.37 * 1100 * 3400) };
    return (skin.effusivity * skin.celsius + effusivity * object) / (skin.effusivity + effusivity);
}
