/** What every picture is made of: plain SVG, black on white, that a panel may colour by its classes. */
import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { s } from 'hastscript';

export const INK = '#1a1a1a';
export const PAPER = '#ffffff';
export const TEXT = 13;

export interface Drawing {
    readonly title: string;
    /** A line under the title. */
    readonly subtitle?: string;
    /** One sentence for who can't see the picture. */
    readonly description: string;
}

/** Millimetres, one unit each; one decimal, so that the same picture gives the same bytes. */
export const round = (value: number): number => {
    const rounded = Math.round(value * 10) / 10;
    return Object.is(rounded, -0) ? 0 : rounded;
};

/** How a picture is lettered. */
export interface Lettering {
    /** How wide it is printed, mm: its words are then at least 12 pt, and its title is left to what stands beside it. */
    readonly printedWidth?: number;
}

/** 12 pt, mm. */
const READABLE = (12 / 72) * 25.4;

/** The height of words in a picture so wide. @param usual where it is not said how wide it is printed */
export function letterSize(usual: number, width: number, { printedWidth }: Lettering): number {
    return printedWidth === undefined
        ? usual
        : Math.max(usual, Math.ceil(((READABLE * width) / printedWidth) * 10) / 10);
}

/** About how wide words are in the usual letters. */
export const widthOfWords = (words: string, size: number): number => words.length * size * 0.56;

/** A whole picture as SVG text, with its title and description for screen readers. */
export function picture(
    { width, height }: { readonly width: number; readonly height: number },
    { title, subtitle, description }: Drawing,
    content: readonly Element[],
): string {
    const size = { width: `${round(width)}`, height: `${round(height)}` };
    const drawn = s(
        'svg',
        {
            xmlns: 'http://www.w3.org/2000/svg',
            viewBox: `0 0 ${size.width} ${size.height}`,
            ...size,
            role: 'img',
            'aria-label': `${title}. ${subtitle ? `${subtitle}. ` : ''}${description}`,
        },
        [
            s('title', title),
            s('desc', description),
            s('rect', { class: 'paper', x: '0', y: '0', ...size, fill: PAPER }),
            ...content,
        ],
    );
    return `${toHtml(drawn, { space: 'svg' })}\n`;
}

/** Lines and outlines. */
export function inked(content: readonly Element[], properties: Readonly<Record<string, string>> = {}): Element {
    return s(
        'g',
        {
            class: 'ink',
            stroke: INK,
            'stroke-width': '1.6',
            fill: PAPER,
            'stroke-linejoin': 'round',
            'stroke-linecap': 'round',
            ...properties,
        },
        [...content],
    );
}

/** Words. @param isPrinted words so large lie over lines: these leave room for them */
export function lettered(content: readonly Element[], size = TEXT, isPrinted = false): Element {
    const clear = { stroke: PAPER, 'stroke-width': `${round(size * 0.22)}`, 'paint-order': 'stroke' };
    return s(
        'g',
        {
            class: 'words',
            fill: INK,
            'font-family': 'sans-serif',
            'font-size': `${size}`,
            ...(isPrinted ? clear : {}),
        },
        [...content],
    );
}

export function centred(words: string, x: number, y: number, size = TEXT): Element {
    return s(
        'text',
        { x: `${round(x)}`, y: `${round(y)}`, 'text-anchor': 'middle', 'font-size': `${round(size)}` },
        words,
    );
}

/** SVG path data whose figures are rounded. */
export function path(words: TemplateStringsArray, ...numbers: readonly number[]): string {
    return words.reduce(
        (text, word, index) => `${text}${word}${index < numbers.length ? round(numbers[index]!) : ''}`,
        '',
    );
}
