import { ticks } from 'd3-array';
import type { Element } from 'hast';
import { s } from 'hastscript';
import { fromComputing } from '../../../plan/quantity.js';
import type { Band } from '../../../service/heat/band.js';
import { path, round } from '../svg.js';
import type { ClockLine } from './clock-line.js';
import type { HeatRow } from './heat-rows.js';
import { BOLD, fitting, linesOf, linesOfBold, text, TO_THE_LEFT, widthOf } from './lettering.js';
import type { Look } from './look.js';
import { HATCHED } from './patterns.js';
import type { Section, Sink } from './section.js';

const TITLE = 'Temperature at the first and at the last guest';
/** Height of the heading and of a line of words, in heights of letters. */
const [HEADING, LEADING] = [2.2, 1.25];
/** Height of a row with a band. */
const BANDED = 112;
/** Above and below the band. */
const PADDING = 14;
/** No band is narrower. */
const LEAST = 30;
/** The line of the limit goes on so far beyond the band. */
const BEYOND = 14;

/** What hot and cold dishes are like before their first and their last guest, where they are set down on the clock. */
export function drawHeat(rows: readonly HeatRow[], line: ClockLine, look: Look, sink: Sink): Section {
    const { letters, margin } = look;
    const title = linesOfBold(TITLE, line.x(line.to) + look.after - margin * 2, letters);
    const heading = letters * (HEADING + (title.length - 1) * LEADING);
    const first = letters * (HEADING - 0.6);
    const words = title.map((each, index) => text(each, margin, first + index * letters * LEADING, BOLD));
    const ink: Element[] = [];
    let top = heading;
    for (const row of rows) {
        const drawn = look.drawsHeat ? drawnRow(row, top, line, look) : toldRow(row, top, line, look);
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
                    s('path', { d: path`M ${margin} ${top} H ${right}`, 'stroke-width': '0.5' }),
                    ...drawn.ink,
                ],
            ),
        );
        top += drawn.height;
    }
    return { height: top, ink, words };
}

/** What is said of a row, its verdict last. */
const saidOf = ({ says, verdict }: HeatRow): { words: string; style: Readonly<Record<string, string>> }[] => [
    ...says.map((words) => ({ words, style: {} })),
    ...(verdict ? [{ words: verdict, style: BOLD }] : []),
];

/** In words alone, each in as many lines as there is room for. */
function toldRow(row: HeatRow, top: number, line: ClockLine, { letters, margin, after }: Look): Section {
    const left = line.x(line.from);
    const names = linesOf(row.title, left - margin * 2, letters);
    const right = line.x(line.to) + after - margin;
    const said = saidOf(row).flatMap(({ words, style }) =>
        (style === BOLD ? linesOfBold : linesOf)(words, right - left, letters).map((each) => ({ words: each, style })),
    );
    const down = (index: number): number => top + letters * (1.1 + index * LEADING);
    return {
        height: letters * (0.5 + LEADING * Math.max(said.length, names.length)),
        ink: [],
        words: [
            ...names.map((words, index) =>
                text(fitting(words, left - margin * 2, letters) ?? words, margin, down(index)),
            ),
            ...said.map(({ words, style }, index) => text(words, left, down(index), style)),
        ],
    };
}

function drawnRow(row: HeatRow, top: number, line: ClockLine, { letters, margin, after }: Look): Section {
    const { title, bands, served } = row;
    const name = text(fitting(title, line.x(line.from) - margin * 2, letters) ?? title, margin, top + letters + 4);
    const said = saidOf(row);
    const middle = (line.x(served.first) + line.x(served.last)) / 2;
    const half = Math.max(LEAST, line.x(served.last) - line.x(served.first)) / 2;
    const height = bands ? BANDED : letters * (1.5 + LEADING);
    const scaleRoom = bands ? 60 : 0;
    const from = { left: middle - half - BEYOND - scaleRoom, right: middle + half + BEYOND + 8 };
    const isRight =
        from.right + Math.max(...said.map(({ words }) => widthOf(words, letters))) <= line.x(line.to) + after - margin;
    const first = top + (height - said.length * letters * LEADING) / 2 + letters;
    const lines = said.map(({ words, style }, index) =>
        text(words, isRight ? from.right : from.left - 8, first + index * letters * LEADING, {
            ...style,
            ...(isRight ? {} : TO_THE_LEFT),
        }),
    );
    if (!bands) {
        return { height, ink: [], words: [name, ...lines] };
    }
    const drawn = drawnBand(bands, row, { left: middle - half, right: middle + half, top });
    return { height, ink: drawn.ink, words: [name, ...drawn.words, ...lines] };
}

interface Box {
    readonly left: number;
    readonly right: number;
    readonly top: number;
}

function drawnBand(
    { first, last }: { readonly first: Band; readonly last: Band },
    { limit, scale }: Pick<HeatRow, 'limit' | 'scale'>,
    { left, right, top }: Box,
): Pick<Section, 'ink' | 'words'> {
    const inScale = (celsius: number): number => fromComputing(celsius, scale);
    const all = [first.low, first.high, last.low, last.high, ...(limit === undefined ? [] : [limit])].map(inScale);
    const [low, high] = [Math.floor(Math.min(...all)) - 1, Math.ceil(Math.max(...all)) + 1];
    const heightOf = (degrees: number): number =>
        top + PADDING + ((high - degrees) / (high - low)) * (BANDED - PADDING * 2);
    const y = (celsius: number): number => heightOf(inScale(celsius));
    const marks = ticks(low, high, 3);
    const likely = first.celsius !== undefined && last.celsius !== undefined;
    const axis = left - BEYOND;
    return {
        ink: [
            s('path', { class: 'axis', d: path`M ${axis} ${heightOf(high)} V ${heightOf(low)}`, 'stroke-width': '1' }),
            ...marks.map((degrees) =>
                s('path', { d: path`M ${axis - 5} ${heightOf(degrees)} h ${5}`, 'stroke-width': '1' }),
            ),
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
        words: marks.map((degrees) => text(`${degrees} ${scale}`, axis - 8, heightOf(degrees) + 5, TO_THE_LEFT)),
    };
}
