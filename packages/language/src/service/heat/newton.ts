/**
 * Newton's law of cooling, T = Tb + (T0 − Tb)·e^(−t/τ) (temperature H1): for bottles in a bath, thin pieces, and liquids below
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

/** Time constant of a thin piece in still air, min: ρcδ/2h (temperature 13, utensils). @param thickness mm @param transfer W/m²K */
export function thinTau(density: number, heatCapacity: number, thickness: number, transfer: number): number {
    return (density * heatCapacity * 1000 * (thickness / 1000)) / (2 * transfer) / 60;
}

/** Temperature at the touch of two bodies, first instant, °C (temperature 4.2). @param effusivity of the object, W·s½/(m²K) */
export function contactTemperature(object: number, effusivity: number): number {
    const skin = { celsius: 33, effusivity: Math.sqrt(0.37 * 1100 * 3400) };
    return (skin.effusivity * skin.celsius + effusivity * object) / (skin.effusivity + effusivity);
}
