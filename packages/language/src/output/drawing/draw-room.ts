import { s } from 'hastscript';
import type { PlacedTable, RoomLayout } from '../../service/room/types.js';
import { centred, inked, round, widthOfWords, type Drawing, type Lettering } from './svg.js';
import { tableTop } from './table-top.js';
import { frameOf, toScale } from './to-scale.js';
import { cornersOf, lieOver, type WordsOnPage } from './words-on-page.js';

const SIZE = 260;
const MARGIN = 500;
/** From the middle of the pass to its name, mm. */
const BESIDE_PASS = 260;
/** A chair pushed in, mm. */
const CHAIR = 420;

/** What is written on a table. */
export interface TableWords {
    readonly name: string;
    /** Under the name, where they have room on the table. */
    readonly lines: readonly string[];
    /** Written on the table as `data-at`, for who keeps a list of the places that tables come from. */
    readonly at?: number;
}

/** The room from above, to scale: walls, pass, tables with their chairs and names. One millimetre is one unit. */
export function drawRoom(
    room: RoomLayout,
    words: readonly TableWords[],
    drawing: Drawing,
    lettering: Lettering = {},
): string {
    const frame = frameOf(drawing, room.width + MARGIN * 2, SIZE, lettering);
    const { size, isPrinted } = frame;
    const small = isPrinted ? size : size * 0.8;
    const above = MARGIN * 0.5 + frame.above;
    const toPage = ({ x, y }: { readonly x: number; readonly y: number }) => ({
        x: MARGIN + x,
        y: above + room.depth - y,
    });
    const placed = room.tables.filter((table): table is PlacedTable & { at: object } => table.at !== undefined);
    const pass = toPage(room.pass);
    const isOnRight = room.pass.x > room.width / 2;
    const standing = placed.map((table) => ({ ...table, at: { ...table.at, ...toPage(table.at) } }));
    const passName = placePassName(pass, isOnRight, size, standing);
    return toScale(
        frame,
        room.depth + above + frame.below,
        { length: 2000, name: '2 m' },
        [
            inked(
                [
                    s('rect', {
                        x: `${MARGIN}`,
                        y: `${above}`,
                        width: `${round(room.width)}`,
                        height: `${round(room.depth)}`,
                        'stroke-width': '60',
                    }),
                    s('circle', {
                        class: 'pass',
                        cx: `${round(pass.x)}`,
                        cy: `${round(pass.y)}`,
                        r: '160',
                        'stroke-width': '40',
                    }),
                    ...placed.map((table) => {
                        const at = toPage(table.at);
                        const turn = round(360 - table.at.degrees);
                        return s(
                            'g',
                            {
                                class: 'table',
                                'data-table': table.name,
                                'data-at': words.find(({ name }) => name === table.name)?.at,
                                transform: `translate(${round(at.x)} ${round(at.y)}) rotate(${turn})`,
                            },
                            [
                                s('title', `${table.name}, ${table.seats.length} seats`),
                                ...table.seats.map((seat) => {
                                    const look = (seat.degrees * Math.PI) / 180;
                                    const [x, y] = [
                                        seat.x - (CHAIR / 2) * Math.cos(look),
                                        -(seat.y - (CHAIR / 2) * Math.sin(look)),
                                    ];
                                    return s('circle', {
                                        cx: `${round(x)}`,
                                        cy: `${round(y)}`,
                                        r: `${CHAIR * 0.42}`,
                                        'stroke-width': seat.accessible ? '50' : '16',
                                    });
                                }),
                                tableTop(table, { x: 0, y: 0 }),
                            ],
                        );
                    }),
                ],
                { 'stroke-width': '26' },
            ),
        ],
        [
            s(
                'text',
                {
                    x: `${round(passName.x)}`,
                    y: `${round(passName.y)}`,
                    'text-anchor': passName.anchor,
                },
                'pass',
            ),
            ...placed.flatMap((table) => {
                const at = toPage(table.at);
                const lines = (words.find(({ name }) => name === table.name)?.lines ?? []).filter(
                    (line) => !isPrinted || widthOfWords(line, small) < Math.min(table.width, table.depth),
                );
                return [table.name, ...lines].map((line, index, all) =>
                    centred(
                        line,
                        at.x,
                        at.y + (index - (all.length - 1) / 2) * size * 1.1 + size * 0.35,
                        index === 0 ? size : small,
                    ),
                );
            }),
        ],
    );
}

type Standing = PlacedTable & { readonly at: NonNullable<PlacedTable['at']> };

/** Beside the pass, or a few lines above or below that: off the tables with their chairs, at least off their names. */
function placePassName(
    pass: { readonly x: number; readonly y: number },
    isOnRight: boolean,
    size: number,
    tables: readonly Standing[],
): WordsOnPage {
    const x = pass.x + (isOnRight ? -BESIDE_PASS : BESIDE_PASS);
    const y = pass.y + size * 0.35;
    const places = [0, -1, 1, -2, 2, -3, 3].map((lines): WordsOnPage => ({
        lines: ['pass'],
        x,
        y: y + lines * size,
        size,
        anchor: isOnRight ? 'end' : 'start',
    }));
    const isOffNames = (words: WordsOnPage): boolean =>
        !tables.some(({ name, at }) => lieOver(words, { lines: [name], x: at.x, y: at.y + size * 0.35, size }));
    const isOffTables = (words: WordsOnPage): boolean => !tables.some((table) => reaches(table, words));
    return places.find((words) => isOffNames(words) && isOffTables(words)) ?? places.find(isOffNames) ?? places[0]!;
}

/** Whether a table with its chairs, or the box around it, lies under words. */
function reaches({ at, width, depth }: Standing, words: WordsOnPage): boolean {
    const turn = (at.degrees * Math.PI) / 180;
    const [cosine, sine] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
    const across = (width * cosine + depth * sine) / 2 + CHAIR;
    const down = (width * sine + depth * cosine) / 2 + CHAIR;
    const corners = cornersOf(words);
    const [left, top] = [corners[0]!.x, corners[0]!.y];
    const [right, bottom] = [corners[2]!.x, corners[2]!.y];
    return left < at.x + across && right > at.x - across && top < at.y + down && bottom > at.y - down;
}
