/** What the evening consists of: set-up, service, strike. */
import type { Run } from '../../../service/run/types.js';
import { faces } from '../../sheets/evening.js';
import type { Drawable } from '../pictures.js';
import { clockLine, type ClockLine } from './clock-line.js';
import { drawHeat } from './draw-heat.js';
import { drawLanes } from './draw-lanes.js';
import type { HeatRow } from './heat-rows.js';
import type { LaneGroup } from './lane.js';
import { widthOf } from './lettering.js';
import { PER_MINUTE, type Look } from './look.js';
import { drawPart } from './part.js';
import { peopleLanes } from './people-lanes.js';
import { callLane, taskLanes, type Stretch } from './preparation-lanes.js';
import type { Section, Sink } from './section.js';
import { courseLanes, tableLanes } from './table-lanes.js';

/** Before the doors; from the first guest seated to the last cover cleared; after the guests. */
export type EveningPart = 'set-up' | 'service' | 'strike';

/** The parts that an evening has, in their order. */
export function partsOf({ service: { run, preparations } }: Pick<Drawable, 'service'>): EveningPart[] {
    const { setUp, strike } = preparations ?? {};
    return [
        ...(setUp?.begins === undefined ? [] : (['set-up'] as const)),
        ...(run ? (['service'] as const) : []),
        ...(strike && strike.tasks.length > 0 ? (['strike'] as const) : []),
    ];
}

/** What a part is drawn on. */
export interface Page {
    readonly look: Look;
    readonly width: number;
    readonly sink: Sink;
}

/** Minutes between ticks, about, where there is room; and the least room between their words, in heights of letters. */
const [APART, TICK] = [15, 4.2];

/** The clock of a part: as long as its page allows, and a minute no longer than it is in full. */
function lineOf({ plan }: Drawable, { from, to }: Stretch, look: Look, width = look.width): ClockLine {
    const minutes = Math.max(1, to - from);
    const room = width === undefined ? Infinity : width - look.names - look.after;
    const perMinute = Math.min(look.width === undefined ? PER_MINUTE : Infinity, room / minutes);
    const apart = Math.max(Math.min(APART, minutes / 4), (TICK * look.letters) / perMinute);
    return clockLine(plan.event, { from, to }, look.names, perMinute, apart);
}

/** The clock of the service, which says how wide a page is that is not given its width. */
export function serviceLine(drawable: Drawable, run: Run, look: Look): ClockLine {
    const moments = [
        ...run.tasks.flatMap(({ start, end }) => [start, end]),
        ...run.courses.flatMap(({ fired, finished, cleared }) => [fired, finished.last, cleared.last]),
        0,
        run.over,
    ];
    const from = moments.reduce((least, moment) => Math.min(least, moment));
    const to = moments.reduce((most, moment) => Math.max(most, moment));
    return lineOf(drawable, { from, to }, look);
}

/** @param title where it is one of several parts */
export function drawService(
    drawable: Drawable,
    run: Run,
    rows: readonly HeatRow[],
    { look, width, sink }: Page,
    title: string | undefined,
): Section {
    const line = serviceLine(drawable, run, look);
    const lanes = (group: LaneGroup): Section => drawLanes(group, line, look, sink);
    const perMinute = line.x(1) - line.x(0);
    const roomFor = (words: string): number => (widthOf(words, look.letters) + look.letters) / perMinute;
    const last = line.to + (look.after - look.margin) / perMinute;
    const groups = [
        [lanes(courseLanes(drawable, run, roomFor, last)), ...peopleLanes(drawable, run).map(lanes)],
        [lanes(tableLanes(drawable, run))],
        ...(rows.length > 0 ? [[drawHeat(rows, line, look, sink)]] : []),
    ];
    return drawPart(drawable.plan, line, look, width, groups, { title, marks: [0] });
}

export function drawSetUp(drawable: Drawable, { look, width, sink }: Page): Section {
    const { plan, service } = drawable;
    const { setUp, doors } = service.preparations!;
    const starts = [...setUp.tasks.map(({ start }) => start), ...setUp.calls.map(({ at }) => at)];
    const span = widened({ from: Math.min(...starts, doors), to: Math.max(setUp.over, doors) });
    const moments = [
        ['Crew’s meal', setUp.staffMeal],
        ['Briefing', setUp.briefing],
        ['Line-up', setUp.lineUp],
    ] as const;
    const { lanes, ...group } = taskLanes(plan, { title: 'What is set up', tasks: setUp.tasks, moments }, span);
    const calls = callLane(plan, 'Called in', 'called in', setUp.calls, span);
    const line = lineOf(drawable, span, look, width);
    const section = drawLanes({ ...group, lanes: [...calls, ...lanes] }, line, look, sink);
    return drawPart(plan, line, look, width, [[section]], {
        title: `Set-up, ready for ${faces(plan)(doors)}`,
        marks: [doors],
    });
}

export function drawStrike(drawable: Drawable, { look, width, sink }: Page): Section {
    const { plan, service } = drawable;
    const { guestsGone, over, by, tasks, leaves } = service.preparations!.strike;
    const face = faces(plan);
    // The dish machine has been at work since the first course: that lies in the service.
    const span = widened({ from: guestsGone, to: Math.max(over, by ?? over) });
    const { lanes, ...group } = taskLanes(plan, { title: 'What is struck', tasks }, span);
    const calls = callLane(plan, 'Free to go', 'free to go', leaves, span);
    const line = lineOf(drawable, span, look, width);
    const section = drawLanes({ ...group, lanes: [...lanes, ...calls] }, line, look, sink);
    const clear = by === undefined ? '' : `, to be clear by ${face(by)}`;
    return drawPart(plan, line, look, width, [[section]], {
        title: `Strike, from the last guest gone at ${face(guestsGone)}${clear}`,
        marks: [guestsGone, ...(by === undefined ? [] : [by])],
    });
}

/** Shown of what lies before and after a part, as a share of it. */
const BEYOND = 0.02;

function widened({ from, to }: Stretch): Stretch {
    const more = Math.max(1, (to - from) * BEYOND);
    return { from: from - more, to: to + more };
}
