import { s } from 'hastscript';
import type { TableToPlace } from '../../service/room/types.js';
import { LINE, SAID } from './draw-cover.js';
import { top, type DrawnPlace } from './draw-table.js';
import { outline } from './outline.js';
import { centred, heading, inked, lettered, picture, round, scaleBar, type Drawing } from './svg.js';

/** Height of the words, mm. */
const SIZE = 24;
/** How far the picture reaches over the table, and in front of it for seats and words, mm. */
const OVER_TABLE = 760;
const IN_FRONT = 210;
/** How far it reaches to either side, in widths of a place. */
const TO_THE_SIDE = 1.75;

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
): string | undefined {
    const from = table.seats.find((seat) => seat.number === middle);
    if (!from) {
        return undefined;
    }
    const half = Math.max(from.pitch, 500) * TO_THE_SIDE;
    const [width, edge] = [half * 2, OVER_TABLE + SIZE * 4];
    const height = edge + IN_FRONT;
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
    return picture({ width, height }, drawing, [
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
                    const properties = { 'data-piece': piece.id, 'data-seat': `${seat.number}`, 'data-at': piece.at };
                    return s('g', { class: `piece ${piece.state}`, ...properties, ...LINE[piece.state] }, [
                        s('title', `${piece.label}, seat ${seat.number}${SAID[piece.state]}`),
                        outline(piece, at, from.degrees - seat.degrees),
                    ]);
                }),
            ),
        ),
        lettered(
            [
                ...seats.flatMap(({ seat, at, place }) => {
                    const lines = [
                        `seat ${seat.number}${seat.accessible ? ', accessible' : ''}`,
                        ...(place?.needs ? [place.needs] : []),
                        ...(place && place.marks.length > 0 ? [place.marks.join(' ')] : []),
                    ];
                    const isInSight = at.x > 0 && at.x < width && at.y > edge - 400 && at.y < height - SIZE;
                    return isInSight
                        ? lines.map((line, index) => centred(line, at.x, at.y + SIZE * (1.7 + index * 1.2), SIZE))
                        : [];
                }),
                ...heading(drawing, SIZE, SIZE * 1.5, SIZE * 1.2),
                ...scaleBar(width - SIZE, height - SIZE / 2, { length: 200, name: '200 mm', size: SIZE * 0.9 }),
            ],
            SIZE,
        ),
    ]);
}
