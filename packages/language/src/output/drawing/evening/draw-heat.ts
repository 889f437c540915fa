import { ticks } from 'd3-array';
import type { Element } from 'hast';
import { s } from 'hastscript';
import { degrees } from '../../sheets/evening.js';
import type { Band } from '../../../service/heat/band.js';
import { path, round } from '../svg.js';
import type { ClockLine } from './clock-line.js';
import type { HeatRow } from './heat-rows.js';
import { BOLD, fitting, LETTERS, text, TO_THE_LEFT, widthOf } from './lettering.js';
import { HATCHED } from './patterns.js';
import type { Section, Sink } from './section.js';

const HEADING = 34;
const MARGIN = 16;
/** Of a row with a band, and of one that has words only. */
const [BANDED, WORDED] = [112, 44];
/** Above and below the band. */
const PADDING = 14;
/** No band is narrower. */
const LEAST = 30;
/** The line of the limit goes on so far beyond the band. */
const BEYOND = 14;

/** What hot and cold dishes are like before their first and their last guest, where they are set down on the clock. */
export function drawHeat(rows: readonly HeatRow[], line: ClockLine, sink: Sink): Section {
    const words: Element[] = [text('Temperature at the first and at the last guest', MARGIN, HEADING - 10, BOLD)];
    const ink: Element[] = [];
    let top = HEADING;
    for (const row of rows) {
        const drawn = drawnRow(row, top, line);
        const right = round(line.x(line.to));
        words.push(...drawn.words);
        ink.push(
            s(
                'g',
                {
                    class: 'heat',
                    'data-lane': row.title,
                    'data-course': `${row.course}`,
                    'data-at': sink.at(row.origin),
                },
                [
                    s('title', [row.title, ...row.says, ...(row.verdict ? [row.verdict] : [])].join(', ')),
                    s('path', { d: path`M ${MARGIN} ${top} H ${right}`, 'stroke-width': '0.5' }),
                    ...drawn.ink,
                ],
            ),
        );
        top += drawn.height;
    }
    return { height: top, ink, words };
}

function drawnRow(row: HeatRow, top: number, line: ClockLine): Section {
    const { title, bands, limit, served, says, verdict } = row;
    const name = text(fitting(title, line.x(line.from) - MARGIN * 2) ?? title, MARGIN, top + LETTERS + 4);
    const said = [
        ...says.map((words) => ({ words, style: {} })),
        ...(verdict ? [{ words: verdict, style: BOLD }] : []),
    ];
    const middle = (line.x(served.first) + line.x(served.last)) / 2;
    const half = Math.max(LEAST, line.x(served.last) - line.x(served.first)) / 2;
    const height = bands ? BANDED : WORDED;
    const scaleRoom = bands ? 60 : 0;
    const from = { left: middle - half - BEYOND - scaleRoom, right: middle + half + BEYOND + 8 };
    const isRight = from.right + Math.max(...said.map(({ words }) => widthOf(words))) <= line.x(line.to) + MARGIN * 4;
    const first = top + (height - said.length * LETTERS * 1.25) / 2 + LETTERS;
    const lines = said.map(({ words, style }, index) =>
        text(words, isRight ? from.right : from.left - 8, first + index * LETTERS * 1.25, {
            ...style,
            ...(isRight ? {} : TO_THE_LEFT),
        }),
    );
    if (!bands) {
        return { height, ink: [], words: [name, ...lines] };
    }
    const drawn = drawnBand(bands, limit, { left: middle - half, right: middle + half, top });
    return { height, ink: drawn.ink, words: [name, ...drawn.words, ...lines] };
}

interface Box {
    readonly left: number;
    readonly right: number;
    readonly top: number;
}

function drawnBand(
    { first, last }: { readonly first: Band; readonly last: Band },
    limit: number | undefined,
    { left, right, top }: Box,
): Pick<Section, 'ink' | 'words'> {
    const all = [first.low, first.high, last.low, last.high, ...(limit === undefined ? [] : [limit])];
    const [low, high] = [Math.floor(Math.min(...all)) - 1, Math.ceil(Math.max(...all)) + 1];
    const y = (celsius: number): number => top + PADDING + ((high - celsius) / (high - low)) * (BANDED - PADDING * 2);
    const scale = ticks(low, high, 3);
    const likely = first.celsius !== undefined && last.celsius !== undefined;
    const axis = left - BEYOND;
    return {
        ink: [
            s('path', { class: 'axis', d: path`M ${axis} ${y(high)} V ${y(low)}`, 'stroke-width': '1' }),
            ...scale.map((celsius) => s('path', { d: path`M ${axis - 5} ${y(celsius)} h ${5}`, 'stroke-width': '1' })),
            s('path', {
                class: 'band',
                d: path`M ${left} ${y(first.high)} L ${right} ${y(last.high)} L ${right} ${y(last.low)} L ${left} ${y(first.low)} Z`,
                fill: HATCHED,
            }),
            ...(likely
                ? [
                      s('path', {
                          class: 'likely',
                          d: path`M ${left} ${y(first.celsius)} L ${right} ${y(last.celsius)}`,
                          'stroke-width': '3',
                          fill: 'none',
                      }),
                  ]
                : []),
            ...(limit === undefined
                ? []
                : [
                      s('path', {
                          class: 'limit',
                          d: path`M ${axis} ${y(limit)} H ${right + BEYOND}`,
                          'stroke-width': '2.4',
                          'stroke-dasharray': '7 4',
                          fill: 'none',
                      }),
                  ]),
        ],
        words: scale.map((celsius) => text(degrees(celsius), axis - 8, y(celsius) + 5, TO_THE_LEFT)),
    };
}
