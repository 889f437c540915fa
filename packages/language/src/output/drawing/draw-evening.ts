/** The evening as it is computed: who does what at which table over the clock, and how warm it arrives. */
import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Origin } from '../../plan/origin.js';
import type { Run } from '../../service/run/types.js';
import { counted } from '../../rules/wording.js';
import { courseTitle, faces } from '../sheets/evening.js';
import { clockLine, type ClockLine } from './evening/clock-line.js';
import { drawHeat } from './evening/draw-heat.js';
import { drawLanes } from './evening/draw-lanes.js';
import { heatRows, type HeatRow } from './evening/heat-rows.js';
import { BOLD, LETTERS, text, widthOf } from './evening/lettering.js';
import { FILL, MEANING, patterns } from './evening/patterns.js';
import { bottleneckInWords, peopleLanes } from './evening/people-lanes.js';
import { Sink, type Section } from './evening/section.js';
import { courseLanes, tableLanes } from './evening/table-lanes.js';
import type { Drawable } from './pictures.js';
import { heading } from './heading.js';
import { inked, lettered, PAPER, path, picture, round, type Drawing } from './svg.js';
import { written } from './words-on-page.js';

/** A drawing of the evening, and where in the plan its parts come from. */
export interface DrawnEvening {
    /**
     * SVG text. Bars, lanes and temperatures carry `data-at`, the index of their place in `places`; `data-lane`, the person, table
     * or dish; `data-course`, the index in the menu (-1 before the first course, the number of courses for coffee).
     */
    readonly drawing: string;
    readonly places: readonly Origin[];
}

/** Names at the left. */
const NAMES = 230;
const MARGIN = 16;
/** Room to the right of the last minute, for words. */
const AFTER = 80;
const PER_MINUTE = 12;
const TITLE = 64;
const CLOCK = 30;
const KEY = 44;

/** @returns `undefined` where nothing tells the times: the plan names no guests, room or team */
export function drawEvening(drawable: Drawable): DrawnEvening | undefined {
    const { run } = drawable.service;
    if (!run) {
        return undefined;
    }
    const { plan } = drawable;
    const line = clockLine(plan.event, spanOf(run), NAMES, PER_MINUTE);
    const sink = new Sink();
    const rows = heatRows(drawable, run);
    const clock = drawClock(drawable, line);
    const sections = [
        clock,
        drawLanes(
            courseLanes(drawable, run, (words) => widthOf(words) / PER_MINUTE + 1),
            line,
            sink,
        ),
        ...peopleLanes(drawable, run).map((group) => drawLanes(group, line, sink)),
        clock,
        drawLanes(tableLanes(drawable, run), line, sink),
        clock,
        ...(rows.length > 0 ? [drawHeat(rows, line, sink), clock] : []),
    ];
    const width = line.x(line.to) + AFTER;
    const height = TITLE + sections.reduce((sum, section) => sum + section.height, 0) + KEY;
    const drawing = about(drawable, run, rows);
    const placed = stacked(sections, TITLE);
    const svg = picture({ width, height }, drawing, [
        patterns(),
        inked([...grid(line, TITLE + CLOCK, height - KEY), ...placed.ink], { 'stroke-width': '1' }),
        lettered(
            heading(drawing, { x: MARGIN, y: 28, size: LETTERS + 6, width: width - MARGIN * 2 }).words.flatMap(written),
            LETTERS,
        ),
        // Lines of the clock stop short of words.
        s('g', { class: 'halo', stroke: PAPER, 'stroke-width': '4', 'paint-order': 'stroke' }, [
            lettered(placed.words, LETTERS),
        ]),
        ...key(height - KEY / 2),
    ]);
    return { drawing: svg, places: sink.places };
}

function spanOf(run: Run): { from: number; to: number } {
    const moments = [
        ...run.tasks.flatMap(({ start, end }) => [start, end]),
        ...run.courses.flatMap(({ fired, finished, cleared }) => [fired, finished.last, cleared.last]),
        0,
        run.over,
    ];
    return {
        from: moments.reduce((least, moment) => Math.min(least, moment)),
        to: moments.reduce((most, moment) => Math.max(most, moment)),
    };
}

function about({ plan, service }: Drawable, run: Run, rows: readonly HeatRow[]): Drawing {
    const face = faces(plan);
    const courses = run.courses.map(
        ({ course, fired, served, cleared }) =>
            `${courseTitle(plan, course)} called ${face(fired)}, set down ${face(served.first)} to ${face(served.last)}, cleared by ${face(cleared.last)}.`,
    );
    const heat = rows.map(
        ({ title, says, verdict }) => `${title}: ${[...says, ...(verdict ? [verdict] : [])].join(', ')}.`,
    );
    return {
        title: `${plan.event?.title ?? plan.file}: the evening`,
        subtitle: `${counted(service.guestCount, 'guest')}, ${counted(run.tables.length, 'table')}; guests sit ${face(0)}, service over ${face(run.over)}`,
        description: [
            ...courses,
            ...(run.bottleneck ? [`${run.bottleneck.role}, ${bottleneckInWords(run.bottleneck)}.`] : []),
            ...heat,
        ].join(' '),
    };
}

/** Each under the one before. */
function stacked(sections: readonly Section[], from: number): Pick<Section, 'ink' | 'words'> {
    let top = from;
    const [ink, words]: [Element[], Element[]] = [[], []];
    for (const section of sections) {
        const moved = { transform: `translate(0 ${round(top)})` };
        ink.push(s('g', moved, [...section.ink]));
        words.push(s('g', moved, [...section.words]));
        top += section.height;
    }
    return { ink, words };
}

function drawClock({ plan }: Drawable, line: ClockLine): Section {
    const face = faces(plan);
    const words = line.ticks.map((minutes) =>
        text(face(minutes), line.x(minutes), CLOCK - 10, { 'text-anchor': 'middle' }),
    );
    return { height: CLOCK, ink: [], words: [text('Clock', MARGIN, CLOCK - 10, BOLD), ...words] };
}

/** Lines of the clock through all lanes; a thick one where guests sit. */
function grid(line: ClockLine, top: number, bottom: number): Element[] {
    const through = (minutes: number, properties: Readonly<Record<string, string>>): Element =>
        s('path', { d: path`M ${line.x(minutes)} ${top} V ${bottom}`, fill: 'none', ...properties });
    return [
        ...line.ticks.map((minutes) => through(minutes, { class: 'grid', stroke: '#b5b5b5', 'stroke-width': '0.7' })),
        through(0, { class: 'seated', 'stroke-width': '2' }),
    ];
}

/** What the fills mean. */
function key(y: number): Element[] {
    const swatch = { width: 26, height: 14 };
    let x = MARGIN;
    return MEANING.flatMap(([look, words]) => {
        const at = x;
        x += swatch.width + 8 + widthOf(words) + 26;
        const shape =
            look === 'call'
                ? s('path', { d: path`M ${at + 4} ${y - 7} h 16 l -8 14 Z`, fill: FILL.call })
                : s('rect', {
                      x: `${round(at)}`,
                      y: `${round(y - swatch.height / 2)}`,
                      width: `${swatch.width}`,
                      height: `${swatch.height}`,
                      fill: FILL[look],
                  });
        return [
            inked([s('g', { class: `bar ${look}` }, [shape])], { 'stroke-width': '1' }),
            lettered([text(words, at + swatch.width + 8, y + 6)], LETTERS),
        ];
    });
}
