import type { Figure } from '../plan/cupboard.js';
import type { CustomSpec } from '../plan/customs.js';
import { DISPLAY_UNIT, fromComputing, show, toComputing, UNITS, type UnitName } from '../plan/quantity.js';
import { readNumber } from '../plan/read-written.js';
import { wordsOf } from './page.js';

/** The unit that a figure is also shown in, and to how many decimals. */
const OTHER: Partial<Record<UnitName, readonly [UnitName, number]>> = {
    '°C': ['°F', 0],
    '°F': ['°C', 1],
    mm: ['inch', 2],
    cm: ['inch', 1],
    m: ['ft', 1],
    inch: ['mm', 0],
    ft: ['m', 2],
    ml: ['fl oz', 1],
    cl: ['fl oz', 1],
    l: ['fl oz', 1],
    'fl oz': ['ml', 0],
    'imp fl oz': ['ml', 0],
    g: ['oz', 1],
    kg: ['lb', 1],
    oz: ['g', 0],
    lb: ['g', 0],
};

/** Any unit as a whole word, in a regular expression with the flag `u`: the longer ones first. */
export const A_UNIT = `(${Object.keys(UNITS)
    .sort((a, b) => b.length - a.length)
    .join('|')})(?![\\p{L}\\p{N}-])`;
const FIGURE = new RegExp(`[-\u2212]?\\d+(?:[.,]\\d+)?\\s*${A_UNIT}`, 'gu');

/** A figure with its unit in a text. */
export interface WrittenFigure {
    readonly written: string;
    /** In the other system of units, rounded as a cook reads it. */
    readonly other: string;
    /** The same, in as many decimals as it takes to say what is written: rounded, a limit may be passed. */
    readonly exact: string;
    readonly start: number;
    readonly end: number;
}

/** The figure at an offset with what it is in the other system: `64 °C is 147 °F.` */
export function aboutFigure(
    text: string,
    offset: number,
): { readonly words: string; readonly start: number; readonly end: number } | undefined {
    const figure = figureAt(text, offset);
    return figure && { words: `${figure.written} is ${figure.other}.`, start: figure.start, end: figure.end };
}

export function figureAt(text: string, offset: number): WrittenFigure | undefined {
    const start = text.lastIndexOf('\n', offset - 1) + 1;
    const lineEnd = text.indexOf('\n', offset);
    const line = text.slice(start, lineEnd < 0 ? text.length : lineEnd);
    for (const match of line.matchAll(FIGURE)) {
        const from = start + match.index;
        const to = from + match[0].length;
        const unit = match[1] as UnitName;
        const [other, digits] = OTHER[unit] ?? [];
        const { value } = readNumber(match[0].slice(0, -unit.length).trim());
        if (from <= offset && offset <= to && other !== undefined && value !== undefined && !isInText(text, from)) {
            const written = match[0].replace(/\s+/g, ' ');
            const computing = toComputing(value, unit);
            return {
                written,
                other: show(computing, other, digits),
                exact: show(computing, other, decimalsFor(fromComputing(computing, other), other)),
                start: from,
                end: to,
            };
        }
    }
    return undefined;
}

/** How far a figure may be from what it is converted from: degrees for temperatures, a share of it for all else. */
const OFF = { degrees: 0.05, share: 0.0001 };
const MOST_DECIMALS = 3;

function decimalsFor(value: number, unit: UnitName): number {
    const most = UNITS[unit].dimension === 'temperature' ? OFF.degrees : OFF.share * Math.abs(value);
    let decimals = 0;
    while (decimals < MOST_DECIMALS && Math.abs(Number(value.toFixed(decimals)) - value) > most) {
        decimals++;
    }
    return decimals;
}

/** Inside quotes or a comment nothing is a figure. */
function isInText(text: string, offset: number): boolean {
    const word = wordsOf(text).find(({ start, end }) => start <= offset && offset < end);
    return word !== undefined && (word.sort === 'comment' || /^["“„]/.test(text.slice(word.start)));
}

/** A temperature as kitchens on both sides of the ocean read it: `64 °C (147 °F)`. @param value °C */
export function bothScales(value: number): string {
    return `${Number(value.toFixed(1))} °C (${Math.round(fromComputing(value, '°F'))} °F)`;
}

/** A figure as written, with its upper end where it has one. */
export function figureText({ low, high, size }: Figure): string {
    const unit = size.unit ?? (size.dimension === 'count' ? undefined : DISPLAY_UNIT[size.dimension]);
    if (unit === undefined) {
        return String(low);
    }
    const upper = show(high, unit, 1);
    return low === high ? upper : `${show(low, unit, 1).slice(0, -unit.length - 1)} to ${upper}`;
}

/** What a custom is set to, as it is written. */
export function valueText(spec: CustomSpec, value: string | number): string {
    const dimension = spec.figure?.dimension;
    return typeof value === 'string' || dimension === undefined || dimension === 'count'
        ? String(value)
        : show(value, DISPLAY_UNIT[dimension], 1);
}
