import type { Element } from 'hast';
import { s } from 'hastscript';
import { round } from '../svg.js';

/** 12 points: sixteen units of a page on which 96 make an inch. */
export const LETTERS = 16;
/** Most letters of a sans-serif face are narrower than this share of their height. */
const LETTER_WIDTH = 0.56;

export const widthOf = (words: string, size = LETTERS): number => words.length * size * LETTER_WIDTH;

/** As much of it as there is room for; nothing where that would say nothing. */
export function fitting(words: string, room: number): string | undefined {
    if (widthOf(words) <= room) {
        return words;
    }
    const letters = Math.floor(room / (LETTERS * LETTER_WIDTH)) - 1;
    return letters < 3 ? undefined : `${words.slice(0, letters).replace(/[\s,]+$/, '')}…`;
}

/** Words, their baseline at `y`. */
export function text(words: string, x: number, y: number, properties: Readonly<Record<string, string>> = {}): Element {
    return s('text', { x: `${round(x)}`, y: `${round(y)}`, ...properties }, words);
}

export const BOLD = { 'font-weight': 'bold' } as const;
export const TO_THE_LEFT = { 'text-anchor': 'end' } as const;
