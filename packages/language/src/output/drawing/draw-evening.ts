/** The evening as it is computed: who does what at which table over the clock, and how warm it arrives. */
import { s } from 'hastscript';
import type { Origin } from '../../plan/origin.js';
import type { Run } from '../../service/run/types.js';
import { counted } from '../../rules/wording.js';
import { courseTitle, faces, overCalled } from '../sheets/evening.js';
import { heatRows, type HeatRow } from './evening/heat-rows.js';
import { drawKey } from './evening/key.js';
import { FULL, overview } from './evening/look.js';
import { stacked } from './evening/part.js';
import {
    drawService,
    drawSetUp,
    drawStrike,
    partsOf,
    serviceLine,
    type EveningPart,
    type Page,
} from './evening/parts.js';
import { patterns } from './evening/patterns.js';
import { bottleneckInWords } from './evening/people-lanes.js';
import { Sink, type Section } from './evening/section.js';
import { heading } from './heading.js';
import type { Drawable } from './pictures.js';
import { inked, lettered, PAPER, picture, type Drawing } from './svg.js';
import { written } from './words-on-page.js';

/** A drawing of the evening, and where in the plan its parts come from. */
export interface DrawnEvening {
    /**
     * SVG text. Bars, lanes and temperatures carry `data-at`, the index of their place in `places`; `data-lane`, the person, table,
     * dish or task; `data-course`, the index in the menu (-1 before the first course, the number of courses for coffee).
     */
    readonly drawing: string;
    readonly places: readonly Origin[];
}

/** What of the evening is drawn, and how large. */
export interface EveningView {
    /**
     * The whole on a page so wide, in dots of a screen, its letters 12 dots high, words that do not fit left out; where absent, twelve
     * units to a minute of the service and letters of 12 pt.
     */
    readonly width?: number;
    /** Everything where absent. */
    readonly part?: EveningPart;
}

/** No page is narrower. */
const NARROWEST = 240;

/** @returns `undefined` where nothing tells the times: the plan names no guests, room or team */
export function drawEvening(drawable: Drawable, { width, part }: EveningView = {}): DrawnEvening | undefined {
    const { run } = drawable.service;
    if (!run) {
        return undefined;
    }
    const look = width === undefined ? FULL : overview(Math.max(NARROWEST, width));
    const rows = heatRows(drawable, run);
    const line = serviceLine(drawable, run, look);
    const page: Page = { look, width: look.width ?? line.x(line.to) + look.after, sink: new Sink() };
    const parts = partsOf(drawable).filter((each) => part === undefined || each === part);
    const drawing = about(drawable, run, rows);
    const { letters, margin } = look;
    const headed = heading(drawing, {
        x: margin,
        y: letters * 1.75,
        size: letters * 1.35,
        width: page.width - margin * 2,
    });
    const draw: Readonly<Record<EveningPart, () => Section>> = {
        'set-up': () => drawSetUp(drawable, page),
        service: () => drawService(drawable, run, rows, page, parts.length > 1 ? 'Service' : undefined),
        strike: () => drawStrike(drawable, page),
    };
    const sections = parts.map((each) => draw[each]());
    const placed = stacked([...sections, drawKey(page)], letters * 3.6 + headed.more);
    const svg = picture({ width: page.width, height: placed.height }, drawing, [
        patterns(),
        inked(placed.ink, { 'stroke-width': '1' }),
        lettered(headed.words.flatMap(written), letters),
        // Lines of the clock stop short of words.
        s('g', { class: 'halo', stroke: PAPER, 'stroke-width': '4', 'paint-order': 'stroke' }, [
            lettered(placed.words, letters),
        ]),
    ]);
    return { drawing: svg, places: page.sink.places };
}

function about({ plan, service }: Drawable, run: Run, rows: readonly HeatRow[]): Drawing {
    const face = faces(plan);
    const { setUp: before, strike: after, doors } = service.preparations ?? {};
    const courses = run.courses.map(
        ({ course, fired, served, cleared }) =>
            `${courseTitle(plan, course)} called ${face(fired)}, set down ${face(served.first)} to ${face(served.last)}, cleared by ${face(cleared.last)}.`,
    );
    const heat = rows.map(
        ({ title, says, verdict }) => `${title}: ${[...says, ...(verdict ? [verdict] : [])].join(', ')}.`,
    );
    return {
        title: `${plan.event?.title ?? plan.file}: the evening`,
        subtitle: `${counted(service.guestCount, 'guest')}, ${counted(run.tables.length, 'table')}; guests sit ${face(0)}, ${overCalled({ service })} ${face(run.over)}`,
        description: [
            ...(before?.begins === undefined
                ? []
                : [`Set-up from ${face(before.begins)} to ${face(before.over)}, ready for ${face(doors)}.`]),
            ...courses,
            ...(run.bottleneck ? [`${run.bottleneck.role}, ${bottleneckInWords(run.bottleneck)}.`] : []),
            ...heat,
            ...(after && after.tasks.length > 0
                ? [`Strike from ${face(after.guestsGone)} to ${face(after.over)}.`]
                : []),
        ].join(' '),
    };
}
