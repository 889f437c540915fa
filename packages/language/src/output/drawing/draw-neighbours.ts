import { s } from 'hastscript';
import type { TableToPlace } from '../../service/room/types.js';
import { drawnPiece } from './drawn-piece.js';
import { centred, inked, round, type Drawing, type Lettering } from './svg.js';
import { linesWithin } from './words-on-page.js';
import { onTable, tableTop, type DrawnPlace, type Seat, type SharedPiece } from './table-top.js';
import { frameOf, toScale } from './to-scale.js';

/** Height of the words, mm. */
const SIZE = 24;
/** How far the picture reaches over the table, mm. */
const OVER_TABLE = 640;
/** And in front of it, where seats and words are, in heights of the words: beside the lines of a seat. */
const LINES_IN_FRONT = 4.3;
/** From one line of a seat to the next, in heights of the words. */
const LEADING = 1.1;
/** How far it reaches to either side, in widths of a place. */
const TO_THE_SIDE = 1.4;

/**
 * A cover with those beside it, as the guest in the middle sees the table, to scale. One millimetre is one unit.
 * @param middle number of the seat that the picture is drawn from
 * @returns nothing where the table has no such seat
 */
export function drawNeighbours(
    table: TableToPlace,
    places: readonly DrawnPlace[],
    shared: readonly SharedPiece[],
    middle: number,
    drawing: Drawing,
    lettering: Lettering = {},
): string | undefined {
    const from = table.seats.find((seat) => seat.number === middle);
    if (!from) {
        return undefined;
    }
    const half = Math.max(from.pitch, 500) * TO_THE_SIDE;
    const width = half * 2;
    const frame = frameOf(drawing, width, SIZE, lettering);
    const { size, above } = frame;
    const edge = above + OVER_TABLE;
    const linesOf = ({ number, accessible }: Seat): string[] => {
        const place = places.find((each) => each.seat === number);
        const said = [...(place?.needs ? [place.needs] : []), ...(place?.marks ?? [])];
        return [
            `seat ${number}${accessible ? ', accessible' : ''}`,
            ...said.flatMap((line) => linesWithin(line, from.pitch, size)),
        ];
    };
    const most = Math.max(...table.seats.map((seat) => linesOf(seat).length));
    const height = edge + size * (LINES_IN_FRONT + most * LEADING);
    const look = (from.degrees * Math.PI) / 180;
    /** From the table's frame to that of the guest in the middle, and on to the page. */
    const toPage = ({ x, y }: { readonly x: number; readonly y: number }) => {
        const [right, ahead] = [x - from.x, y - from.y];
        return {
            x: half + right * Math.sin(look) - ahead * Math.cos(look),
            y: edge - (right * Math.cos(look) + ahead * Math.sin(look)),
        };
    };
    const seats = table.seats.flatMap((seat) => {
        const at = toPage(seat);
        const isNear = at.x > -half && at.x < half * 3 && at.y > -OVER_TABLE;
        return isNear ? [{ seat, at, place: places.find((each) => each.seat === seat.number) }] : [];
    });
    const centre = toPage({ x: 0, y: 0 });
    /** Covers and table that reach into the title are cut off. */
    const inSight = {
        x: '0',
        y: `${round(above)}`,
        width: `${round(width)}`,
        height: `${round(height - above)}`,
        viewBox: `0 ${round(above)} ${round(width)} ${round(height - above)}`,
    };
    const turned = `translate(${round(centre.x)} ${round(centre.y)}) rotate(${round(from.degrees - 90)})`;
    const ink = s('svg', inSight, [
        inked([s('g', { class: 'table', transform: turned }, [tableTop(table, { x: 0, y: 0 })])], {
            'stroke-width': '3',
        }),
        inked(
            [
                ...seats.flatMap(({ seat, place }) =>
                    (place?.pieces ?? []).map((piece) => ({ piece, from: seat, seat: seat.number })),
                ),
                ...shared,
            ].map(({ piece, from: own, seat }) =>
                drawnPiece(piece, toPage(onTable(own, piece)), { seat, turn: from.degrees - own.degrees }),
            ),
        ),
    ]);
    const words = seats.flatMap(({ seat, at }) => {
        const lines = linesOf(seat);
        const isInSight = at.x > size * 2 && at.x < width - size * 2 && at.y > edge - 400 && at.y < height - size;
        return isInSight
            ? lines.map((line, index) => centred(line, at.x, at.y + size * (1.5 + index * LEADING), size))
            : [];
    });
    return toScale(frame, height, { length: 200, name: '200 mm' }, [ink], words);
}
