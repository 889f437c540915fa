import type { Element } from 'hast';
import { s } from 'hastscript';
import type { TableToPlace } from '../../service/room/types.js';
import { LINE, SAID, type DrawnPiece } from './draw-cover.js';
import { outline } from './outline.js';
import {
    centred,
    heading,
    inked,
    lettered,
    letterSize,
    picture,
    round,
    scaleBar,
    widthOfWords,
    type Drawing,
    type Lettering,
} from './svg.js';

/** One place of a table: what lies there, and what is said of who sits there. */
export interface DrawnPlace {
    readonly seat: number;
    readonly pieces: readonly DrawnPiece[];
    /** Marks of plates that must not be confused, such as `A1`. */
    readonly marks: readonly string[];
    /** `without gluten`; absent for guests without needs. */
    readonly needs?: string;
}

/** Room round the table for chairs and words, mm. */
const AROUND = 330;
/** From the table's edge to the words of a seat, mm. */
const FROM_EDGE = 90;
/** Height of the words, mm. */
const SIZE = 34;
/** A mark longer than this may be cut. */
const MOST_LETTERS = 18;

/** A table from above with every cover on it, to scale, its seats numbered. One millimetre is one unit. */
export function drawTable(
    table: TableToPlace,
    places: readonly DrawnPlace[],
    drawing: Drawing,
    lettering: Lettering = {},
): string {
    const isPrinted = lettering.printedWidth !== undefined;
    const width = Math.max(table.width + AROUND * 2, isPrinted ? widthFor(table, places, lettering) : 0);
    const size = letterSize(SIZE, width, lettering);
    // Beyond the seats, words stand two lines high.
    const above = isPrinted ? FROM_EDGE + size * 2.5 : AROUND + size * 2;
    const below = isPrinted ? FROM_EDGE + size * 3.5 : AROUND + size;
    const height = table.depth + above + below;
    const middle = { x: width / 2, y: above + table.depth / 2 };
    const toPage = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: middle.x + x, y: middle.y - y });
    const seats = table.seats.map((seat) => ({ seat, place: places.find((each) => each.seat === seat.number) }));
    return picture({ width, height }, drawing, [
        inked([top(table, middle)], { 'stroke-width': '4' }),
        inked(
            seats.flatMap(({ seat, place }) =>
                (place?.pieces ?? []).map((piece) => {
                    const at = toPage(onTable(seat, piece));
                    // A guest who looks away from the near wall sees the cover as the page shows it.
                    const properties = { 'data-piece': piece.id, 'data-seat': `${seat.number}`, 'data-at': piece.at };
                    return s('g', { class: `piece ${piece.state}`, ...properties, ...LINE[piece.state] }, [
                        s('title', `${piece.label}, seat ${seat.number}${SAID[piece.state]}`),
                        outline(piece, at, 90 - seat.degrees),
                    ]);
                }),
            ),
        ),
        lettered(
            [
                ...(isPrinted ? [] : heading(drawing, size, size * 1.6, size * 1.2)),
                ...seats.flatMap(({ seat, place }) =>
                    words(toPage(behind(seat, FROM_EDGE)), seat, place, {
                        size,
                        small: isPrinted ? size : size * 0.75,
                    }),
                ),
                ...scaleBar(width - size, height - size / 2, {
                    length: 500,
                    name: '500 mm',
                    size: isPrinted ? size : size * 0.8,
                }),
            ],
            size,
            isPrinted,
        ),
    ]);
}

/** So wide that the marks have room on both sides of the table, whose letters grow with the width: solved for it. */
function widthFor(table: TableToPlace, places: readonly DrawnPlace[], lettering: Lettering): number {
    const longest = Math.min(MOST_LETTERS, Math.max(...places.map(({ marks }) => marks.join(' ').length), 0));
    const perWidth = 2 * widthOfWords('x'.repeat(longest), letterSize(0, 1000, lettering) / 1000);
    return (table.width + FROM_EDGE * 2) / (1 - perWidth);
}

/** The table top, its middle at a point of the page. */
export function top(
    { shape, width, depth }: Pick<TableToPlace, 'shape' | 'width' | 'depth'>,
    { x, y }: { readonly x: number; readonly y: number },
): Element {
    const at = { cx: `${round(x)}`, cy: `${round(y)}` };
    switch (shape) {
        case 'round':
            return s('circle', { ...at, r: `${round(width / 2)}` });
        case 'oval':
            return s('ellipse', { ...at, rx: `${round(width / 2)}`, ry: `${round(depth / 2)}` });
        default:
            return s('rect', {
                x: `${round(x - width / 2)}`,
                y: `${round(y - depth / 2)}`,
                width: `${round(width)}`,
                height: `${round(depth)}`,
            });
    }
}

type Seat = TableToPlace['seats'][number];

/** From the cover's own frame to the table's: x to the guest's right, y where the guest looks. */
function onTable({ x, y, degrees }: Seat, piece: Pick<DrawnPiece, 'x' | 'y'>): { x: number; y: number } {
    const look = (degrees * Math.PI) / 180;
    return {
        x: x + piece.y * Math.cos(look) + piece.x * Math.sin(look),
        y: y + piece.y * Math.sin(look) - piece.x * Math.cos(look),
    };
}

function behind({ x, y, degrees }: Seat, far: number): { x: number; y: number } {
    const look = (degrees * Math.PI) / 180;
    return { x: x - far * Math.cos(look), y: y - far * Math.sin(look) };
}

function words(
    { x, y }: { x: number; y: number },
    seat: Seat,
    place: DrawnPlace | undefined,
    { size, small }: { readonly size: number; readonly small: number },
): Element[] {
    const lines = [
        // Where letters are large the list beside the picture says it.
        `${seat.number}${seat.accessible && small < size ? ' accessible' : ''}`,
        ...(place?.needs ? [place.needs] : []),
        ...(place && place.marks.length > 0 ? [place.marks.join(' ')] : []),
    ];
    // Away from the table: to its side where the guest sits beside it.
    const [sideways, down] = [-Math.cos((seat.degrees * Math.PI) / 180), Math.sin((seat.degrees * Math.PI) / 180)];
    const anchor = sideways > 0.4 ? 'start' : sideways < -0.4 ? 'end' : 'middle';
    const first = y + size * 0.35 + (down > 0 ? 0 : (1 - lines.length) * size) * Math.abs(down);
    return lines.map((line, index) => {
        const element = centred(line, x, first + index * size, index === 0 ? size : small);
        return { ...element, properties: { ...element.properties, textAnchor: anchor } };
    });
}
