/** How far a computed temperature can be out, as temperature 12 demands; every figure is shown with its band. */

export interface Band {
    readonly low: number;
    readonly celsius: number;
    readonly high: number;
    /** What the band rests on, for the reader. */
    readonly because: string;
}

/** What is known of the vessel and of the liquid. */
export interface Known {
    /** The vessel's diameter is stated in a cupboard rather than assumed. */
    readonly geometry: boolean;
    /** A thermometer reading, so many minutes after the pour. */
    readonly readingAfter?: number;
}

/**
 * The band of an open or covered liquid: the larger of ± 1.5 °C and ± 35 % of its drop, ± 50 % where the geometry is guessed;
 * ± 1.5 °C after a reading at 10 min or later, ± 3 °C after an earlier one.
 */
export function bandOf(start: number, celsius: number, known: Known): Band {
    const drop = Math.abs(start - celsius);
    const [half, because] =
        known.readingAfter !== undefined
            ? known.readingAfter >= 10
                ? ([1.5, 'one thermometer reading after 10 min or more (temperature 12)'] as const)
                : ([3, 'one early thermometer reading (temperature 12)'] as const)
            : known.geometry
              ? ([Math.max(1.5, 0.35 * drop), 'the larger of 1.5 °C and 35 % of the drop (temperature 12)'] as const)
              : ([
                    Math.max(1.5, 0.5 * drop),
                    'half of the drop, the vessel’s size being guessed (temperature 12)',
                ] as const);
    return { low: celsius - half, celsius, high: celsius + half, because };
}
