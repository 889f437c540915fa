import type { Element } from 'hast';
import { s } from 'hastscript';
import { round, widthOfWords } from '../svg.js';
import { linesWithin } from '../words-on-page.js';

/** Most letters of a sans-serif face are narrower than this share of their height; bold ones are wider. */
const LETTER_WIDTH = 0.58;
const BOLD_WIDTH = 0.66;

/** Less is the noise of the figures. */
const NOISE = 0.01;

export const widthOf = (words: string, size: number): number => words.length * size * LETTER_WIDTH;
export const widthOfBold = (words: string, size: number): number => words.length * size * BOLD_WIDTH;

/** Words in as many lines as there is room for, by the same measure as `fitting`; a longer word has a line of its own. */
export const linesOf = (words: string, room: number, size: number): string[] =>
    linesWithin(words, (room + NOISE) * (widthOfWords('x', 1) / LETTER_WIDTH), size);
export const linesOfBold = (words: string, room: number, size: number): string[] =>
    linesWithin(words, (room + NOISE) * (widthOfWords('x', 1) / BOLD_WIDTH), size);

/** As much of it as there is room for; nothing where that would say nothing. */
export function fitting(words: string, room: number, size: number): string | undefined {
    if (widthOf(words, size) <= room + NOISE) {
        return words;
    }
    const letters = Math.floor(room / (size * LETTER_WIDTH)) - 1;
    return letters < 3 ? undefined : `${words.slice(0, letters).replace(/[\s,]+$/, '')}…`;
}

/** Words, their baseline at `y`. */
export function text(words: string, x: number, y: number, properties: Readonly<Record<string, string>> = {}): Element {
    return s('text', { x: `${round(x)}`, y: `${round(y)}`, ...properties }, words);
}

export const BOLD = { 'font-weight': 'bold' } as const;
export const TO_THE_LEFT = { 'text-anchor': 'end' } as const;
