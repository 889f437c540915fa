/** A finding as the editor shows it. */
export interface Shown {
    readonly severity: 'error' | 'warning' | 'info' | 'hint';
    /** The words that are underlined. */
    readonly words: string;
}

/** The lines in sight by their numbers. */
export function visibleLines(): readonly (readonly [number, string])[];
/** The words in sight that are underlined: what stands over each squiggle. */
export function underlined(): readonly Shown[];
/** The colour of words in sight, and how it stands out from what is behind them (1 to 21). */
export function colourOf(words: string): { readonly ink: string; readonly contrast: number };
/** Whether a picture of the page is drawn, and whether it reaches out of the hover it is in. @param image an element of the page */
export function drawnImage(image: unknown): { readonly isDrawn: boolean; readonly isCut: boolean };
