import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import { widthOfWords } from './svg.js';
import { aboutMiddle, cornersOf, lieOver, linesWithin, within, type WordsOnPage } from './words-on-page.js';

/** Plates at least this wide have room for a name on their rim, mm. */
const LARGE = 230;

/** What names are written on. */
export interface NamedPage {
    readonly width: number;
    /** Where the table's edge runs. */
    readonly edge: number;
    /** Height of a name, and of that of a small thing, mm. */
    readonly size: number;
    readonly small: number;
    /** Where a piece's middle is on the page. */
    readonly at: (piece: PlacedPiece) => { readonly x: number; readonly y: number };
}

/**
 * Where the name of each piece stands: in the first of its places that is free. Those with fewest places choose first, and of a
 * stack what lies on top. A name without a free place is left out; the drawing tells it to who points at the piece.
 * @param taken words that stand on the page already
 * @returns in the order of the pieces
 */
export function placeNames(
    pieces: readonly PlacedPiece[],
    page: NamedPage,
    taken: readonly WordsOnPage[],
): WordsOnPage[] {
    const wanted = pieces
        .map((piece, index) => ({ index, places: placesOf(piece, pieces.slice(index + 1), page) }))
        .toReversed()
        .toSorted((a, b) => a.places.length - b.places.length);
    const standing = [...taken];
    const named = new Map<number, WordsOnPage>();
    for (const { index, places } of wanted) {
        const free = places.find((place) => !standing.some((other) => lieOver(place, other)));
        if (free) {
            standing.push(free);
            named.set(index, free);
        }
    }
    return pieces.flatMap((_, index) => named.get(index) ?? []);
}

/** The name of what lies beside the plate slants below the table's edge. */
export const isSlanting = ({ row, shape }: PlacedPiece): boolean =>
    (row === 'left' || row === 'right') && shape !== 'napkin';

/** Down from the table's edge to where slanting names end. */
export function depthOfSlanting(pieces: readonly PlacedPiece[], page: NamedPage): number {
    const corners = pieces.filter(isSlanting).flatMap((piece) => cornersOf(slanting(piece, page)));
    return Math.max(page.edge, ...corners.map(({ y }) => y)) - page.edge;
}

function slanting(piece: PlacedPiece, { at, edge, size }: NamedPage): WordsOnPage {
    return { lines: [piece.label], x: at(piece).x - 3, y: edge + size + 1, size, anchor: 'start', turn: 60 };
}

/** Places for a piece's name, the best first. @param onTop what is drawn over it */
function placesOf(piece: PlacedPiece, onTop: readonly PlacedPiece[], page: NamedPage): WordsOnPage[] {
    const places = isSlanting(piece) ? [slanting(piece, page)] : lyingPlaces(piece, onTop, page);
    return places.map((place) => within(place, page.width));
}

function lyingPlaces(piece: PlacedPiece, onTop: readonly PlacedPiece[], page: NamedPage): WordsOnPage[] {
    const { label, length, width, shape } = piece;
    const { size, small } = page;
    const { x, y } = page.at(piece);
    const line = (left: number, down: number, high = size): WordsOnPage => ({
        lines: [label],
        x: left,
        y: down,
        size: high,
    });
    const inside = (across: number, high = small): WordsOnPage =>
        aboutMiddle(linesWithin(label, across, high), x, y, high);
    if (shape === 'napkin') {
        // Along a piece that lies with its tip away from the guest.
        return [{ lines: [label], x: x + 5, y, size, turn: 270 }, ...around(piece, page)];
    }
    switch (piece.row) {
        case 'above': {
            if (shape === 'card') {
                return [inside(width), ...around(piece, page)];
            }
            // Along the narrow handle, away from the next piece: below the fork's, above the others'.
            const below = line(x - length * 0.14, y + width * 0.3 + size);
            const above = line(x + length * 0.14, y - width * 0.3 - 3);
            return [...(shape === 'fork' ? [below, above] : [above, below]), ...around(piece, page)];
        }
        case 'glasses':
            return [inside(length), ...around(piece, page)];
        case 'bread':
            return shape === 'round'
                ? [
                      aboutMiddle(linesWithin(label, length, small), x, y + length * 0.2, small),
                      ...around(piece, page),
                      inside(length),
                  ]
                : [line(x, y - width / 2 - 5), ...around(piece, page)];
        case 'middle':
            return around(piece, page);
        case 'saucer':
        case 'centre':
            if (shape !== 'round') {
                return [line(x, y + 4, small), ...around(piece, page)];
            }
            return inStack(piece, onTop, page);
        default:
            return around(piece, page);
    }
}

/** Below a piece, above it, to its right and to its left; in one line, then in several. */
function around(piece: PlacedPiece, { at, size }: NamedPage): WordsOnPage[] {
    const { x, y } = at(piece);
    const lies = piece.degrees % 180 === 90;
    const [across, up] = piece.shape === 'round' || !lies ? [piece.width, piece.length] : [piece.length, piece.width];
    const inLines = (lines: readonly string[]): WordsOnPage[] => {
        const high = lines.length * size * 1.18;
        const beside = aboutMiddle(lines, x, y, size);
        return [
            aboutMiddle(lines, x, y + up / 2 + high / 2, size),
            aboutMiddle(lines, x, y - up / 2 - high / 2, size),
            { ...beside, x: x + across / 2 + 4, anchor: 'start' },
            { ...beside, x: x - across / 2 - 4, anchor: 'end' },
        ];
    };
    const broken = linesWithin(piece.label, widthOfWords(piece.label, size) * 0.6, size);
    return [...inLines([piece.label]), ...(broken.length > 1 ? inLines(broken) : [])];
}

/** Places on a round thing that others may stand on: in its middle, else on what is to be seen of it, else beside it. */
function inStack(piece: PlacedPiece, onTop: readonly PlacedPiece[], page: NamedPage): WordsOnPage[] {
    const { label, length } = piece;
    const { size, small } = page;
    const { x, y } = page.at(piece);
    const radius = length / 2;
    const covered = Math.max(
        0,
        ...onTop
            .filter((other) => other.shape === 'round' && Math.hypot(other.x - piece.x, other.y - piece.y) < 1)
            .map((other) => other.length / 2),
    );
    const middle = aboutMiddle(linesWithin(label, length, small), x, y, small);
    const rim = (way: 1 | -1): WordsOnPage => aboutMiddle([label], x, y + way * (length * 0.44 - size * 0.36), size);
    // Between the rims, seen where it is at least as wide as the words are high.
    const ring = (way: 1 | -1): WordsOnPage => aboutMiddle([label], x, y + (way * (radius + covered)) / 2, size);
    if (covered === 0) {
        // Across the middle of a small plate, along the rim of a large one.
        return length < LARGE
            ? [middle, rim(1), rim(-1), ...around(piece, page)]
            : [rim(1), rim(-1), middle, ...around(piece, page)];
    }
    return radius - covered < size
        ? [...around(piece, page), rim(1), rim(-1)]
        : [rim(1), ring(1), rim(-1), ring(-1), ...around(piece, page)];
}
