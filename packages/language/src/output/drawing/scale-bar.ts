import type { Element } from 'hast';
import { s } from 'hastscript';
import { INK, round, TEXT } from './svg.js';
import { written, type WordsOnPage } from './words-on-page.js';

/** How long the bar is, in units of the picture, and what stands over it. */
export interface Scale {
    readonly length: number;
    readonly name: string;
    readonly size?: number;
}

/** The name of a bar whose right end is at `right`, where it stands. */
export function nameOfScale(right: number, y: number, { length, name, size = TEXT }: Scale): WordsOnPage {
    return { lines: [name], x: round(right - length) + length / 2, y: y - size * 0.5, size };
}

/** A bar of a round length with its name, its right end at `right`. */
export function scaleBar(right: number, y: number, scale: Scale): Element[] {
    const { length, size = TEXT } = scale;
    const from = round(right - length);
    return [
        s('path', {
            class: 'ink',
            d: `M ${from} ${round(y - size * 0.4)} v ${round(size * 0.4)} h ${round(length)} v ${round(-size * 0.4)}`,
            stroke: INK,
            'stroke-width': `${round(size * 0.12)}`,
            fill: 'none',
        }),
        ...written(nameOfScale(right, y, scale)),
    ];
}
