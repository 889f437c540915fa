import { s } from 'hastscript';
import type { TableToPlace } from '../../service/room/types.js';
import { LINE, SAID } from './draw-cover.js';
import { top, type DrawnPlace } from './draw-table.js';
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
    type Drawing,
    type Lettering,
} from './svg.js';

/** Height of the words, mm. */
const SIZE = 24;
/** How far the picture reaches over the table, mm. */
const OVER_TABLE = 640;
/** And in front of it, where seats and words are, in heights of the words. */
const LINES_IN_FRONT = 6.5;
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
    const size = letterSize(SIZE, width, lettering);
    const band = lettering.printedWidth === undefined ? size * 3.5 : 0;
    const edge = band + OVER_TABLE;
    const height = edge + size * LINES_IN_FRONT;
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
        y: `${round(band)}`,
        width: `${round(width)}`,
        height: `${round(height - band)}`,
        viewBox: `0 ${round(band)} ${round(width)} ${round(height - band)}`,
    };
    return picture({ width, height }, drawing, [
        s('svg', inSight, [
            inked(
                [
                    s(
                        'g',
                        {
                            class: 'table',
                            transform: `translate(${round(centre.x)} ${round(centre.y)}) rotate(${round(from.degrees - 90)})`,
                        },
                        [top(table, { x: 0, y: 0 })],
                    ),
                ],
                { 'stroke-width': '3' },
            ),
            inked(
                seats.flatMap(({ seat, place }) =>
                    (place?.pieces ?? []).map((piece) => {
                        const away = (seat.degrees * Math.PI) / 180;
                        const at = toPage({
                            x: seat.x + piece.y * Math.cos(away) + piece.x * Math.sin(away),
                            y: seat.y + piece.y * Math.sin(away) - piece.x * Math.cos(away),
                        });
                        const properties = {
                            'data-piece': piece.id,
                            'data-seat': `${seat.number}`,
                            'data-at': piece.at,
                        };
                        return s('g', { class: `piece ${piece.state}`, ...properties, ...LINE[piece.state] }, [
                            s('title', `${piece.label}, seat ${seat.number}${SAID[piece.state]}`),
                            outline(piece, at, from.degrees - seat.degrees),
                        ]);
                    }),
                ),
            ),
        ]),
        lettered(
            [
                ...seats.flatMap(({ seat, at, place }) => {
                    const lines = [
                        `seat ${seat.number}${seat.accessible ? ', accessible' : ''}`,
                        ...(place?.needs ? [place.needs] : []),
                        ...(place && place.marks.length > 0 ? [`plate ${place.marks.join(' ')}`] : []),
                    ];
                    const isInSight =
                        at.x > size * 2 && at.x < width - size * 2 && at.y > edge - 400 && at.y < height - size;
                    return isInSight
                        ? lines.map((line, index) => centred(line, at.x, at.y + size * (1.5 + index * 1.1), size))
                        : [];
                }),
                ...(band > 0 ? heading(drawing, size, size * 1.5, size * 1.2) : []),
                ...scaleBar(width - size, height - size / 2, { length: 200, name: '200 mm', size: size * 0.9 }),
            ],
            size,
            lettering.printedWidth !== undefined,
        ),
    ]);
}
