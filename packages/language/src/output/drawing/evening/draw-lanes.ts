import type { Element } from 'hast';
import { s } from 'hastscript';
import { PAPER, path, round } from '../svg.js';
import type { ClockLine } from './clock-line.js';
import type { Bar, Caption, Lane, LaneGroup } from './lane.js';
import { BOLD, fitting, LETTERS, text } from './lettering.js';
import { FILL, HATCHED } from './patterns.js';
import type { Section, Sink } from './section.js';

const HEADING = 34;
const BAR = 16;
const LANE = 44;
/** Down from the top of a lane. */
const [TO_BAR, TO_CAPTION] = [5, 5 + BAR + LETTERS - 1];
/** No bar is narrower, so that a moment can be seen. */
const LEAST = 3;
/** Left and right of the names. */
const MARGIN = 16;
const STRIPE = 8;

/** Lanes under a heading, one under the other. */
export function drawLanes(group: LaneGroup, line: ClockLine, sink: Sink): Section {
    const headed = text(group.title, MARGIN, HEADING - 10, BOLD);
    const about = group.bottleneck ? [text(group.bottleneck, line.x(line.from), HEADING - 10, BOLD)] : [];
    const words: Element[] = [headed, ...about];
    const ink = group.lanes.map((lane, index) => {
        const top = HEADING + index * LANE;
        words.push(...named(lane, top, line), ...captioned(lane.captions, top + TO_CAPTION, line));
        return drawnLane(lane, group, top, line, sink);
    });
    return { height: HEADING + group.lanes.length * LANE, ink, words };
}

function drawnLane(lane: Lane, { bottleneck }: LaneGroup, top: number, line: ClockLine, sink: Sink): Element {
    const [left, right] = [round(line.x(line.from)), round(line.x(line.to))];
    return s(
        'g',
        { class: bottleneck ? 'lane bottleneck' : 'lane', 'data-lane': lane.name, 'data-at': sink.at(lane.origin) },
        [
            ...(lane.name === '' ? [] : [s('title', `${lane.name}${lane.note ? `: ${lane.note}` : ''}`)]),
            s('path', { d: path`M ${MARGIN} ${top} H ${right}`, 'stroke-width': '0.5' }),
            ...(bottleneck
                ? [
                      s('rect', {
                          class: 'stripe',
                          x: `${round(left - STRIPE - 4)}`,
                          y: `${round(top + 2)}`,
                          width: `${STRIPE}`,
                          height: `${LANE - 4}`,
                          fill: HATCHED,
                      }),
                  ]
                : []),
            ...lane.bars.map((bar) => drawnBar(bar, lane, top + TO_BAR, line, sink)),
        ],
    );
}

function drawnBar(bar: Bar, lane: Lane, y: number, line: ClockLine, sink: Sink): Element {
    const x = line.x(bar.start);
    const properties = {
        class: `bar ${bar.look}`,
        'data-at': sink.at(bar.origin),
        'data-lane': lane.name,
        'data-course': `${bar.course}`,
    };
    const title = s('title', bar.says);
    if (bar.look === 'call') {
        const half = BAR / 2;
        const d = path`M ${x - half} ${y} H ${x + half} L ${x} ${y + BAR} Z`;
        return s('g', properties, [title, s('path', { d, fill: FILL.call })]);
    }
    return s('g', properties, [
        title,
        s('rect', {
            x: `${round(x)}`,
            y: `${round(y)}`,
            width: `${round(Math.max(LEAST, line.x(bar.end) - x))}`,
            height: `${BAR}`,
            fill: FILL[bar.look] ?? PAPER,
        }),
    ]);
}

function named({ name, note }: Lane, top: number, line: ClockLine): Element[] {
    const room = line.x(line.from) - MARGIN * 2 - STRIPE;
    return [
        ...(name === '' ? [] : [text(fitting(name, room) ?? name, MARGIN, top + TO_BAR + BAR - 3)]),
        ...(note ? [text(fitting(note, room) ?? note, MARGIN, top + TO_CAPTION, { class: 'note' })] : []),
    ];
}

/** Each as far as the next one lets it be said. */
function captioned(captions: readonly Caption[], y: number, line: ClockLine): Element[] {
    let free = -Infinity;
    return captions.flatMap(({ start, words }, index) => {
        const next = captions[index + 1];
        const x = Math.max(line.x(start), free);
        const right = next ? line.x(next.start) - 6 : line.x(line.to) + MARGIN * 4;
        const shown = fitting(words, right - x);
        if (shown === undefined) {
            return [];
        }
        free = x;
        return [text(shown, x, y)];
    });
}
