import type { Drawing } from './svg.js';
import { linesWithin, type WordsOnPage } from './words-on-page.js';

/** Bold letters are wider than others by so much. */
const BOLDER = 1.16;

export interface Heading {
    readonly words: readonly WordsOnPage[];
    /** How much higher it is than a title and a line under it, because it is broken into more lines. */
    readonly more: number;
}

/** The title, its first baseline at `y`, and the line under it; broken into as many lines as keep it within `width`. */
export function heading(
    { title, subtitle }: Drawing,
    { x, y, size, width }: { readonly x: number; readonly y: number; readonly size: number; readonly width: number },
): Heading {
    const titles = linesWithin(title, width / BOLDER, size);
    const subtitles = subtitle ? linesWithin(subtitle, width, size * 0.85) : [];
    const under = y + (titles.length - 1) * size * 1.18 + size * 1.15;
    return {
        words: [
            { lines: titles, x, y, size, anchor: 'start', isBold: true },
            ...(subtitles.length > 0
                ? [{ lines: subtitles, x, y: under, size: size * 0.85, anchor: 'start' } as const]
                : []),
        ],
        more: (titles.length - 1) * size * 1.18 + Math.max(0, subtitles.length - 1) * size,
    };
}
