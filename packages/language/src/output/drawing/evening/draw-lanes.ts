import type { Element } from 'hast';
import { s } from 'hastscript';
import { PAPER, path, round } from '../svg.js';
import type { ClockLine } from './clock-line.js';
import type { Bar, Caption, Lane, LaneGroup } from './lane.js';
import { BOLD, fitting, linesOfBold, text, widthOf, widthOfBold } from './lettering.js';
import type { Look } from './look.js';
import { FILL, HATCHED } from './patterns.js';
import type { Section, Sink } from './section.js';

/** Over and under a heading, in heights of letters. */
const [ABOVE_HEADING, BELOW_HEADING] = [0.9, 0.7];
/** From one line of words to the next. */
const LEADING = 1.2;
/** Down from the top of a lane to its bars. */
const TO_BAR = 5;
/** No bar is narrower, so that a moment can be seen. */
const LEAST = 3;
const STRIPE = 8;

/** Lanes under a heading, one under the other. */
export function drawLanes(group: LaneGroup, line: ClockLine, look: Look, sink: Sink): Section {
    const head = headed(group, line, look);
    const words: Element[] = [...head.words];
    const isTold = look.tellsWork || group.isNamedBelow === true;
    const height = group.isNamedBelow ? Math.max(look.lane, look.bar + look.letters * 1.7) : look.lane;
    const ink = group.lanes.map((lane, index) => {
        const top = head.height + index * height;
        const toWords = top + barTop(look) + look.bar + look.letters - 1;
        words.push(...named(lane, top, line, look));
        if (isTold) {
            words.push(...captioned(lane.captions, toWords, line, look));
        }
        return drawnLane(lane, group, { top, height }, line, look, sink);
    });
    return { height: head.height + group.lanes.length * height, ink, words };
}

const barTop = ({ tellsWork }: Look): number => (tellsWork ? TO_BAR : TO_BAR / 2);

/** The heading, and what is said of the bottleneck: beside it where there is room, else under it. */
function headed({ title, bottleneck }: LaneGroup, line: ClockLine, look: Look): Section {
    const { letters, margin } = look;
    const first = letters * (1 + ABOVE_HEADING);
    const beside = Math.max(line.x(line.from), margin + widthOfBold(title, letters) + margin);
    const right = line.x(line.to) + look.after - margin;
    const isBeside = bottleneck !== undefined && beside + widthOfBold(bottleneck, letters) <= right;
    const lines = [title, ...(bottleneck === undefined || isBeside ? [] : [bottleneck])].flatMap((words) =>
        linesOfBold(words, right - margin, letters),
    );
    return {
        height: first + letters * BELOW_HEADING + (lines.length - 1) * letters * LEADING,
        ink: [],
        words: [
            ...lines.map((words, index) => text(words, margin, first + index * letters * LEADING, BOLD)),
            ...(isBeside ? [text(bottleneck, beside, first, BOLD)] : []),
        ],
    };
}

interface Strip {
    readonly top: number;
    readonly height: number;
}

function drawnLane(
    lane: Lane,
    { bottleneck }: LaneGroup,
    { top, height }: Strip,
    line: ClockLine,
    look: Look,
    sink: Sink,
): Element {
    const [left, right] = [round(line.x(line.from)), round(line.x(line.to))];
    return s(
        'g',
        { class: bottleneck ? 'lane bottleneck' : 'lane', 'data-lane': lane.name, 'data-at': sink.at(lane.origin) },
        [
            ...(lane.name === '' ? [] : [s('title', `${lane.name}${lane.note ? `: ${lane.note}` : ''}`)]),
            s('path', { d: path`M ${look.margin} ${top} H ${right}`, 'stroke-width': '0.5' }),
            ...(bottleneck
                ? [
                      s('rect', {
                          class: 'stripe',
                          x: `${round(left - STRIPE - 4)}`,
                          y: `${round(top + 2)}`,
                          width: `${STRIPE}`,
                          height: `${round(height - 4)}`,
                          fill: HATCHED,
                      }),
                  ]
                : []),
            ...lane.bars.map((bar) => drawnBar(bar, lane, top + barTop(look), line, look, sink)),
        ],
    );
}

function drawnBar(bar: Bar, lane: Lane, y: number, line: ClockLine, look: Look, sink: Sink): Element {
    sink.fills.add(bar.look);
    const x = line.x(bar.start);
    const properties = {
        class: `bar ${bar.look}`,
        'data-at': sink.at(bar.origin),
        'data-lane': lane.name,
        'data-course': `${bar.course}`,
    };
    const title = s('title', bar.says);
    if (bar.look === 'call') {
        const half = look.bar / 2;
        const d = path`M ${x - half} ${y} H ${x + half} L ${x} ${y + look.bar} Z`;
        return s('g', properties, [title, s('path', { d, fill: FILL.call })]);
    }
    return s('g', properties, [
        title,
        s('rect', {
            x: `${round(x)}`,
            y: `${round(y)}`,
            width: `${round(Math.max(LEAST, line.x(bar.end) - x))}`,
            height: `${look.bar}`,
            fill: FILL[bar.look] ?? PAPER,
        }),
    ]);
}

function named({ name, note }: Lane, top: number, line: ClockLine, look: Look): Element[] {
    const { letters, margin, bar } = look;
    const room = line.x(line.from) - margin * 2 - STRIPE;
    const y = top + barTop(look) + bar;
    return [
        ...(name === '' ? [] : [text(fitting(name, room, letters) ?? name, margin, y - (look.tellsWork ? 3 : 1))]),
        ...(note && look.tellsWork
            ? [text(fitting(note, room, letters) ?? note, margin, y + letters - 1, { class: 'note' })]
            : []),
    ];
}

/** Each as far as the next one lets it be said; the last one moved to the left, as far as the margin, where it would be cut. */
function captioned(captions: readonly Caption[], y: number, line: ClockLine, look: Look): Element[] {
    const { letters } = look;
    let free = look.margin;
    return captions.flatMap(({ start, words, times }, index) => {
        const next = captions[index + 1];
        const right = next ? line.x(next.start) - 6 : line.x(line.to) + look.after - look.margin;
        const behind = times === undefined ? '' : ` ${times}`;
        const from = Math.max(line.x(start), free);
        const x = next ? from : Math.max(free, Math.min(from, right - widthOf(words + behind, letters)));
        const shown = fitting(words, right - x - widthOf(behind, letters), letters);
        if (shown === undefined) {
            return [];
        }
        free = x + widthOf(shown + behind, letters) + 6;
        return [text(shown + behind, x, y)];
    });
}
