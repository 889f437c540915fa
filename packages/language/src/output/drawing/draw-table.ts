import type { TableToPlace } from '../../service/room/types.js';
import { drawnPiece } from './drawn-piece.js';
import { FROM_EDGE, placeSeatWords } from './seat-words.js';
import { inked, widthOfWords, type Drawing, type Lettering } from './svg.js';
import { onTable, tableTop, type DrawnPlace, type SharedPiece } from './table-top.js';
import { frameOf, toScale, type Frame } from './to-scale.js';
import { cornersOf, written, type WordsOnPage } from './words-on-page.js';

/** Room round the table for chairs, mm. */
const AROUND = 330;
/** Height of the words, mm. */
const SIZE = 34;
/** Letters of one line at a seat, where words are as small as the picture likes. */
const USUAL_LINE = 24;
/** The share of a printed picture's width that a line at a seat may take. */
const LINE_SHARE = 0.2;
/** The share of the picture's width that is left to the table at least. */
const LEAST_TABLE = 0.4;
/** Words grow with the picture, and the picture with the words: so often it is tried to bring both together. */
const MOST_TRIES = 12;

/** A table from above with every cover on it, to scale, its seats numbered. One millimetre is one unit. */
export function drawTable(
    table: TableToPlace,
    places: readonly DrawnPlace[],
    shared: readonly SharedPiece[],
    drawing: Drawing,
    lettering: Lettering = {},
): string {
    const { frame, words, across, above, below } = layOut(table, places, drawing, lettering);
    const middle = { x: across / 2, y: above };
    const toPage = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: middle.x + x, y: middle.y - y });
    const covers = table.seats.flatMap((seat) =>
        (places.find((each) => each.seat === seat.number)?.pieces ?? []).map((piece) => ({
            piece,
            from: seat,
            seat: seat.number,
        })),
    );
    return toScale(
        frame,
        above + below,
        { length: 500, name: '500 mm' },
        [
            inked([tableTop(table, middle)], { 'stroke-width': '4' }),
            inked(
                [...covers, ...shared].map(({ piece, from, seat }) =>
                    // A guest who looks away from the near wall sees the cover as the page shows it.
                    drawnPiece(piece, toPage(onTable(from, piece)), { seat, turn: 90 - from.degrees }),
                ),
            ),
        ],
        words.flatMap((each) => written({ ...each, x: middle.x + each.x, y: middle.y + each.y })),
    );
}

interface LaidOut {
    readonly frame: Frame;
    /** About the table's middle. */
    readonly words: readonly WordsOnPage[];
    /** Width of the page, and what it has above and below the table's middle. */
    readonly across: number;
    readonly above: number;
    readonly below: number;
}

/**
 * The words of all seats, and a page that holds them with the table. A narrow picture, whose words would leave the table no room,
 * goes without the marks, and without the needs too where that is not enough.
 */
function layOut(table: TableToPlace, places: readonly DrawnPlace[], drawing: Drawing, lettering: Lettering): LaidOut {
    const unmarked = places.map((place) => ({ ...place, marks: [] }));
    const numbered = unmarked.map((place) => ({ ...place, needs: undefined }));
    for (const said of [places, unmarked]) {
        const laid = layOutAll(table, said, drawing, lettering);
        if (laid.needed <= laid.across + 1 && table.width >= laid.across * LEAST_TABLE) {
            return laid;
        }
    }
    return layOutAll(table, numbered, drawing, lettering);
}

function layOutAll(
    table: TableToPlace,
    places: readonly DrawnPlace[],
    drawing: Drawing,
    lettering: Lettering,
): LaidOut & { readonly needed: number } {
    const isPrinted = lettering.printedWidth !== undefined;
    const around = isPrinted ? FROM_EDGE : AROUND;
    const attempt = (width: number): LaidOut & { readonly needed: number } => {
        const frame = frameOf(drawing, width, SIZE, lettering);
        const { size } = frame;
        const small = isPrinted ? size : size * 0.75;
        const line = isPrinted ? width * LINE_SHARE : widthOfWords('x'.repeat(USUAL_LINE), small);
        const words = placeSeatWords(table, places, { size, small, across: line, tellsAccess: !isPrinted });
        const corners = words.flatMap(cornersOf);
        const reach = (halfTable: number, reaches: readonly number[]): number =>
            Math.max(halfTable + around, ...reaches.map((each) => each + size / 2));
        const needed =
            2 *
            reach(
                table.width / 2,
                corners.map(({ x }) => Math.abs(x)),
            );
        const above =
            reach(
                table.depth / 2,
                corners.map(({ y }) => -y),
            ) + frame.above;
        const below =
            reach(
                table.depth / 2,
                corners.map(({ y }) => y),
            ) + (isPrinted ? frame.below : size);
        return { frame, words, across: width, above, below, needed };
    };
    let laid = attempt(table.width + around * 2);
    for (let tries = 0; laid.needed > laid.across + 1 && tries < MOST_TRIES; tries++) {
        laid = attempt(laid.needed);
    }
    return laid;
}
