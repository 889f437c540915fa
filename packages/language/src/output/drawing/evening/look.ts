/** How large the parts of the drawn evening are: as on paper, or so that all of it is in sight at once. */
export interface Look {
    /** Height of letters. */
    readonly letters: number;
    readonly margin: number;
    /** Names at the left. */
    readonly names: number;
    /** To the right of the last minute, for words. */
    readonly after: number;
    readonly bar: number;
    /** From one lane to the next. */
    readonly lane: number;
    /** Whether what is done stands under the bars, and what is said of a lane under its name. */
    readonly tellsWork: boolean;
    /** Whether temperatures are drawn, or told alone. */
    readonly drawsHeat: boolean;
    /** Of the page, where it is given; else as the evening is long. */
    readonly width?: number;
}

/** Letters are 12 points: sixteen units of a page on which 96 make an inch. */
export const FULL: Look = {
    letters: 16,
    margin: 16,
    names: 230,
    after: 80,
    bar: 16,
    lane: 44,
    tellsWork: true,
    drawsHeat: true,
};

/** Units of the page to a minute, where the page is as wide as the evening is long. */
export const PER_MINUTE = 12;

/** The whole evening on a page so wide, in dots of a screen. Its words are as large as such a screen's; those without room are left out. */
export const overview = (width: number): Look => ({
    letters: 12,
    margin: 8,
    names: Math.max(122, Math.min(180, width * 0.22)),
    after: 16,
    bar: 11,
    lane: 17,
    tellsWork: false,
    drawsHeat: false,
    width,
});
