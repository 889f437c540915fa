/** How far a computed temperature can be out, as temperature 12 demands; every figure is shown with its band. */

export interface Band {
    readonly low: number;
    /** Absent where the source gives a range and no middle. */
    readonly celsius?: number;
    readonly high: number;
    /** What the band rests on, for the reader. */
    readonly because: string;
}

/** What is known of the vessel and of the liquid. */
export interface Known {
    /** The width of the liquid is stated in a cupboard rather than assumed. */
    readonly geometry: boolean;
    /** The start was computed from a pour and not measured. */
    readonly poured?: boolean;
    /** A thermometer reading, so many minutes after the pour. */
    readonly readingAfter?: number;
}

/** What a vessel takes up is known to this, °C (temperature 12). */
export const POUR_ERROR = 2;

/**
 * The band of an open or covered liquid: the larger of ± 1.5 °C and ± 35 % of its change, ± 50 % where the width is guessed,
 * together with the ± 2 °C of a computed pour as independent errors are. A reading at 10 min or later makes it ± 1.5 °C and an
 * earlier one ± 3 °C, and never wider than without it.
 * @param start in the vessel, °C
 */
export function bandOf(start: number, celsius: number, known: Known): Band & { readonly celsius: number } {
    const share = known.geometry ? 0.35 : 0.5;
    const cooling = Math.max(1.5, share * Math.abs(start - celsius));
    const { readingAfter } = known;
    const measured = readingAfter === undefined ? Infinity : readingAfter >= 10 ? 1.5 : 3;
    const computed = Math.hypot(cooling, known.poured && readingAfter === undefined ? POUR_ERROR : 0);
    const half = Math.min(measured, computed);
    const because = [
        ...(readingAfter === undefined
            ? []
            : [`a thermometer reading ${readingAfter >= 10 ? 'after 10 min or more' : 'before 10 min'}`]),
        ...(half === computed
            ? [
                  known.geometry
                      ? 'the larger of 1.5 °C and 35 % of the change in the vessel'
                      : 'half of the change in the vessel, the width of the liquid being guessed',
                  ...(known.poured && readingAfter === undefined ? ['2 °C for what the vessel takes up'] : []),
              ]
            : []),
    ];
    return {
        low: celsius - half,
        celsius,
        high: celsius + half,
        because: `${because.join(', and ')} (temperature 12)`,
    };
}
