/** A part of the evening on its own stretch of clock: set-up, service, strike. */
import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Plan } from '../../../plan/types.js';
import { faces } from '../../sheets/evening.js';
import { path, round } from '../svg.js';
import { linesWithin } from '../words-on-page.js';
import type { ClockLine } from './clock-line.js';
import { BOLD, text, widthOf } from './lettering.js';
import type { Look } from './look.js';
import type { Section } from './section.js';

/** Height of the clock and of a part's title, in heights of letters. */
const [CLOCK, TITLE] = [1.9, 2.6];

/**
 * The clock above and below each of some groups of sections, its lines through all of them.
 * @param page how wide it is
 * @param title what part it is, where there are several
 * @param marks moments that a thick line marks
 */
export function drawPart(
    plan: Plan,
    line: ClockLine,
    look: Look,
    page: number,
    groups: readonly (readonly Section[])[],
    { title, marks }: { readonly title?: string; readonly marks: readonly number[] },
): Section {
    const clock = drawClock(plan, line, look);
    const { letters, margin } = look;
    const size = letters + 2;
    const titles = title === undefined ? [] : linesWithin(title, (page - margin * 2) * 0.88, size);
    const titled = titles.length === 0 ? 0 : letters * TITLE + (titles.length - 1) * size * 1.2;
    const placed = stacked([clock, ...groups.flatMap((group) => [...group, clock])], titled);
    const baseline = (index: number): number => titled - letters * 0.5 - (titles.length - 1 - index) * size * 1.2;
    return {
        height: placed.height,
        ink: [...grid(line, marks, titled + clock.height, placed.height - clock.height), ...placed.ink],
        words: [
            ...titles.map((words, index) => text(words, margin, baseline(index), { ...BOLD, 'font-size': `${size}` })),
            ...placed.words,
        ],
    };
}

/** Each under the one before. */
export function stacked(sections: readonly Section[], from: number): Section {
    let top = from;
    const [ink, words]: [Element[], Element[]] = [[], []];
    for (const section of sections) {
        const moved = { transform: `translate(0 ${round(top)})` };
        ink.push(s('g', moved, [...section.ink]));
        words.push(s('g', moved, [...section.words]));
        top += section.height;
    }
    return { height: top, ink, words };
}

/** The hours, as many as have room. */
function drawClock(plan: Plan, line: ClockLine, { letters, margin, after }: Look): Section {
    const face = faces(plan);
    const height = letters * CLOCK;
    const y = height - letters * 0.6;
    let free = margin + widthOf('Clock', letters) * 1.2;
    const words = line.ticks.flatMap((minutes) => {
        const [said, x] = [face(minutes), line.x(minutes)];
        const half = widthOf(said, letters) / 2;
        if (x - half < free + letters / 2 || x + half > line.x(line.to) + after) {
            return [];
        }
        free = x + half;
        return [text(said, x, y, { 'text-anchor': 'middle' })];
    });
    return { height, ink: [], words: [text('Clock', margin, y, BOLD), ...words] };
}

/** Lines of the clock through all lanes; thick ones at what is marked. */
function grid(line: ClockLine, marks: readonly number[], top: number, bottom: number): Element[] {
    const through = (minutes: number, properties: Readonly<Record<string, string>>): Element =>
        s('path', { d: path`M ${line.x(minutes)} ${top} V ${bottom}`, fill: 'none', ...properties });
    return [
        ...line.ticks.map((minutes) => through(minutes, { class: 'grid', stroke: '#b5b5b5', 'stroke-width': '0.7' })),
        ...marks.map((minutes) => through(minutes, { class: 'mark', 'stroke-width': '2' })),
    ];
}
