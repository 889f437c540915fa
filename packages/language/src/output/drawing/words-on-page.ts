/** Words with a place on the page, and whether they lie over others. */
import type { Element } from 'hast';
import { s } from 'hastscript';
// A CommonJS package in whose one export Node finds no names.
import sat from 'sat';
import { round, widthOfWords } from './svg.js';

export interface WordsOnPage {
    /** Under one another. */
    readonly lines: readonly string[];
    /** Where the first line is anchored, on its baseline. */
    readonly x: number;
    readonly y: number;
    readonly size: number;
    /** The middle where absent. */
    readonly anchor?: 'start' | 'middle' | 'end';
    /** Clockwise about the anchor; of one line only. */
    readonly turn?: number;
    readonly isBold?: boolean;
}

/** From one baseline to the next, and how far letters reach above and below theirs, in heights of letters. */
const [LEADING, ASCENT, DESCENT] = [1.18, 0.76, 0.22];
/** Kept free to the left and right of words, in heights of letters: some letters are wider than most. */
const BESIDE = 0.12;
/** Overlaps smaller than this are the noise of the figures, mm. */
const NOISE = 0.1;

/** Words in as many lines as keep each within a width; a longer word has a line of its own. */
export function linesWithin(words: string, width: number, size: number): string[] {
    return words.split(' ').reduce<string[]>((all, word) => {
        const longer = `${all.at(-1) ?? ''} ${word}`.trim();
        return all.length > 0 && widthOfWords(longer, size) <= width ? [...all.slice(0, -1), longer] : [...all, word];
    }, []);
}

/** The corners of the box that words take up, clockwise from the one before their first letter. */
export function cornersOf({ lines, x, y, size, anchor = 'middle', turn = 0 }: WordsOnPage): { x: number; y: number }[] {
    const width = Math.max(...lines.map((line) => widthOfWords(line, size)));
    const from = anchor === 'start' ? 0 : anchor === 'end' ? -width : -width / 2;
    const [left, right] = [from - BESIDE * size, from + width + BESIDE * size];
    const [top, bottom] = [-ASCENT * size, (DESCENT + (lines.length - 1) * LEADING) * size];
    const [sine, cosine] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
    return (
        [
            [left, top],
            [right, top],
            [right, bottom],
            [left, bottom],
        ] as const
    ).map(([across, down]) => ({ x: x + across * cosine - down * sine, y: y + across * sine + down * cosine }));
}

/** Whether some words lie over others. */
export function lieOver(one: WordsOnPage, other: WordsOnPage): boolean {
    const response = new sat.Response();
    const [a, b] = [one, other].map(
        (words) =>
            new sat.Polygon(
                new sat.Vector(0, 0),
                cornersOf(words).map(({ x, y }) => new sat.Vector(x, y)),
            ),
    );
    return sat.testPolygonPolygon(a!, b!, response) && response.overlap > NOISE;
}

/** Words that stick out of the page at a side, moved into it; `across` wide at most. */
export function within(words: WordsOnPage, across: number): WordsOnPage {
    const sides = cornersOf(words).map(({ x }) => x);
    const [left, right] = [Math.min(...sides), Math.max(...sides)];
    const moved = left < 0 ? -left : right > across ? across - right : 0;
    return moved === 0 ? words : { ...words, x: words.x + moved };
}

/** As many lines as fit about a middle. */
export function aboutMiddle(lines: readonly string[], x: number, y: number, size: number): WordsOnPage {
    return { lines, x, y: y + size * 0.36 - ((lines.length - 1) / 2) * size * LEADING, size };
}

export function written({ lines, x, y, size, anchor = 'middle', turn, isBold }: WordsOnPage): Element[] {
    const look = {
        'text-anchor': anchor === 'start' ? undefined : anchor,
        'font-size': `${round(size)}`,
        'font-weight': isBold ? 'bold' : undefined,
    };
    return lines.map((line, index) =>
        turn === undefined
            ? s('text', { x: `${round(x)}`, y: `${round(y + index * size * LEADING)}`, ...look }, line)
            : s('text', { transform: `translate(${round(x)} ${round(y)}) rotate(${turn})`, ...look }, line),
    );
}
