import type { Element } from 'hast';
import type { TableToPlace } from '../../service/room/types.js';
import { drawnPiece } from './drawn-piece.js';
import { centred, inked, letterSize, widthOfWords, type Drawing, type Lettering } from './svg.js';
import { onTable, tableTop, type DrawnPlace, type Seat } from './table-top.js';
import { frameOf, toScale } from './to-scale.js';

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
    const isLarge = lettering.printedWidth !== undefined;
    const width = Math.max(table.width + AROUND * 2, isLarge ? widthFor(table, places, lettering) : 0);
    const frame = frameOf(drawing, width, SIZE, lettering);
    const { size } = frame;
    // Beyond the seats, words stand two lines high.
    const above = isLarge ? FROM_EDGE + size * 2.5 : AROUND + frame.above;
    const below = isLarge ? FROM_EDGE + size * 3.5 : AROUND + size;
    const middle = { x: width / 2, y: above + table.depth / 2 };
    const toPage = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: middle.x + x, y: middle.y - y });
    const seats = table.seats.map((seat) => ({ seat, place: places.find((each) => each.seat === seat.number) }));
    return toScale(
        frame,
        table.depth + above + below,
        { length: 500, name: '500 mm' },
        [
            inked([tableTop(table, middle)], { 'stroke-width': '4' }),
            inked(
                seats.flatMap(({ seat, place }) =>
                    (place?.pieces ?? []).map((piece) =>
                        // A guest who looks away from the near wall sees the cover as the page shows it.
                        drawnPiece(piece, toPage(onTable(seat, piece)), {
                            seat: seat.number,
                            turn: 90 - seat.degrees,
                        }),
                    ),
                ),
            ),
        ],
        seats.flatMap(({ seat, place }) =>
            words(toPage(behind(seat, FROM_EDGE)), seat, place, { size, small: isLarge ? size : size * 0.75 }),
        ),
    );
}

/** So wide that the marks have room on both sides of the table, whose letters grow with the width: solved for it. */
function widthFor(table: TableToPlace, places: readonly DrawnPlace[], lettering: Lettering): number {
    const longest = Math.min(MOST_LETTERS, Math.max(...places.map(({ marks }) => marks.join(' ').length), 0));
    const perWidth = 2 * widthOfWords('x'.repeat(longest), letterSize(0, 1000, lettering) / 1000);
    return (table.width + FROM_EDGE * 2) / (1 - perWidth);
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
