/** Fills that tell sorts of work apart in black and white, and what they mean. */
import type { Element } from 'hast';
import { s } from 'hastscript';
import { INK, PAPER } from '../svg.js';
import type { Fill } from './lane.js';

const HATCH = 'evening-hatch';
const DOTS = 'evening-dots';

export const FILL: Readonly<Record<Fill, string>> = {
    bring: '#8c8c8c',
    clear: `url(#${HATCH})`,
    pour: `url(#${DOTS})`,
    lay: PAPER,
    eat: PAPER,
    talk: '#d9d9d9',
    course: '#d9d9d9',
    call: INK,
    task: '#d9d9d9',
    critical: INK,
};

/** In the order of an evening. */
export const MEANING: readonly (readonly [look: Fill, words: string])[] = [
    ['task', 'set up, struck'],
    ['critical', 'of that, what can’t slip'],
    ['call', 'called, free to go'],
    ['lay', 'seated, laid, eaten'],
    ['bring', 'plated, carried, set down'],
    ['pour', 'poured'],
    ['clear', 'cleared'],
    ['talk', 'toast, speech, whole course'],
];

/** The bands of temperatures and the stripe of a bottleneck are hatched too. */
export const HATCHED = FILL.clear;

export function patterns(): Element {
    const paper = (size: number): Element =>
        s('rect', { class: 'paper', width: `${size}`, height: `${size}`, fill: PAPER });
    const sized = (id: string, size: number, content: readonly Element[]): Element =>
        s('pattern', { id, width: `${size}`, height: `${size}`, patternUnits: 'userSpaceOnUse' }, [
            paper(size),
            ...content,
        ]);
    return s('defs', [
        sized(HATCH, 6, [
            s('path', {
                class: 'ink',
                d: 'M -1 1 L 1 -1 M 0 6 L 6 0 M 5 7 L 7 5',
                stroke: INK,
                'stroke-width': '1.4',
                fill: 'none',
            }),
        ]),
        sized(DOTS, 5, [s('circle', { class: 'dot', cx: '2.5', cy: '2.5', r: '1.1', fill: INK })]),
    ]);
}
