/** What is written at the seats of a table, each seat's words apart from the others' and off the table. */
import { cornersOf, lieOver, linesWithin, type WordsOnPage } from './words-on-page.js';
import type { DrawnPlace, Seat } from './table-top.js';
import type { TableToPlace } from '../../service/room/types.js';

/** From the table's edge to the words of a seat, mm. */
export const FROM_EDGE = 90;
/** Kept free between table and words, mm. */
const CLEAR = 20;
/** From one baseline to the next, and down to the first, in heights of letters. */
const [LEADING, ASCENT] = [1.18, 0.8];

/** Heights of letters, mm, and how wide a line of them may get. */
export interface SeatLetters {
    /** Of the number. */
    readonly size: number;
    /** Of what stands below it. */
    readonly small: number;
    readonly across: number;
    /** Whether it is said of a place that a wheelchair has room there. */
    readonly tellsAccess: boolean;
}

/**
 * The words of each seat on a page whose origin is the table's middle, y downward: behind the seat, further away where others
 * stand in the way.
 */
export function placeSeatWords(
    table: TableToPlace,
    places: readonly DrawnPlace[],
    letters: SeatLetters,
): WordsOnPage[] {
    const taken: WordsOnPage[] = [];
    for (const seat of table.seats) {
        const lines = linesOf(
            seat,
            places.find((place) => place.seat === seat.number),
            letters,
        );
        const isFree = (words: readonly WordsOnPage[]): boolean =>
            words.every((each) => !isOnTable(table, each) && !taken.some((other) => lieOver(each, other)));
        let far = FROM_EDGE;
        let words = wordsAt(seat, far, lines, letters);
        while (!isFree(words) && far < FROM_EDGE + letters.size * 40) {
            far += letters.size / 2;
            words = wordsAt(seat, far, lines, letters);
        }
        taken.push(...words);
    }
    return taken;
}

interface SeatLines {
    readonly number: string;
    readonly rest: readonly string[];
}

function linesOf(seat: Seat, place: DrawnPlace | undefined, { across, small, tellsAccess }: SeatLetters): SeatLines {
    const said = [...(place?.needs ? [place.needs] : []), ...(place?.marks ?? [])];
    return {
        number: `${seat.number}${seat.accessible && tellsAccess ? ' accessible' : ''}`,
        rest: said.flatMap((line) => linesWithin(line, across, small)),
    };
}

/** Behind the guest: beside the table, below it or above it. */
function wordsAt(
    { x, y, degrees }: Seat,
    far: number,
    { number, rest }: SeatLines,
    { size, small }: SeatLetters,
): WordsOnPage[] {
    const look = (degrees * Math.PI) / 180;
    const [sideways, down] = [-Math.cos(look), Math.sin(look)];
    const at = { x: x + far * sideways, y: -y + far * down };
    const anchor = sideways > 0.4 ? 'start' : sideways < -0.4 ? 'end' : 'middle';
    const high = size * LEADING + rest.length * small * LEADING;
    const top = at.y - high / 2 + (down * high) / 2;
    return [
        { lines: [number], x: at.x, y: top + size * ASCENT, size, anchor, isBold: true },
        ...(rest.length > 0
            ? [{ lines: rest, x: at.x, y: top + size * LEADING + small * ASCENT, size: small, anchor } as const]
            : []),
    ];
}

/** Whether a word reaches over the table, to within what is kept free. */
function isOnTable({ shape, width, depth }: TableToPlace, words: WordsOnPage): boolean {
    const corners = cornersOf(words);
    const [halfWidth, halfDepth] = [width / 2 + CLEAR, depth / 2 + CLEAR];
    const isInside = ({ x, y }: { readonly x: number; readonly y: number }): boolean =>
        shape === 'round' || shape === 'oval'
            ? (x / halfWidth) ** 2 + (y / halfDepth) ** 2 < 1
            : Math.abs(x) < halfWidth && Math.abs(y) < halfDepth;
    return corners.some((from, index) => {
        const to = corners[(index + 1) % corners.length]!;
        return [0, 0.25, 0.5, 0.75].some((part) =>
            isInside({ x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part }),
        );
    });
}
