import type { Element } from 'hast';
import { s } from 'hastscript';
import { extent } from '../../service/cover-geometry/place-cover.js';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import { label, type NameSize } from './cover-labels.js';
import { outline } from './outline.js';
import {
    heading,
    inked,
    lettered,
    letterSize,
    picture,
    round,
    scaleBar,
    TEXT,
    widthOfWords,
    type Drawing,
    type Lettering,
} from './svg.js';

const MARGIN = 30;
/** Height of the band below the table's edge that holds the names of the pieces, in heights of their letters. */
const LABELS = 11.5;

/** As high as words get in a picture that is printed, mm. */
const LARGE = 20;

/** What a step of the evening does with a piece: told by its line, not by colour. */
export type PieceState = 'standing' | 'brought' | 'used' | 'cleared';

export interface DrawnPiece extends PlacedPiece {
    readonly state: PieceState;
    /** Written on the piece as `data-at`, for who keeps a list of the places that pieces come from. */
    readonly at?: number;
}

/** How each state is drawn. */
export const LINE: Record<PieceState, Readonly<Record<string, string>>> = {
    standing: {},
    brought: { 'stroke-width': '3.4' },
    used: { fill: '#d9d9d9' },
    cleared: { 'stroke-dasharray': '6 5', 'fill-opacity': '0' },
};

/** And told, after the name of the piece. */
export const SAID: Record<PieceState, string> = {
    standing: '',
    brought: ', brought now',
    used: ', in use',
    cleared: ', cleared now',
};

/**
 * A plain picture of one cover, to scale, as SVG text: one millimetre of table is one unit. Every piece is named and carries its
 * id as `data-piece`. The same cover gives the same bytes.
 * @param around what the picture is to have room for, where several steps are to be of one size
 */
export function drawCover(
    pieces: readonly DrawnPiece[],
    drawing: Drawing,
    around: readonly PlacedPiece[] = pieces,
    lettering: Lettering = {},
): string {
    const isPrinted = lettering.printedWidth !== undefined;
    const half = (piece: PlacedPiece): number =>
        Math.max(
            extent(piece).across / 2,
            isPrinted && piece.row === 'middle' ? widthOfWords(piece.label, LARGE) / 2 - MARGIN : 0,
        );
    const left = Math.min(...around.map((piece) => piece.x - half(piece)), -200) - MARGIN;
    const right = Math.max(...around.map((piece) => piece.x + half(piece)), 200) + MARGIN;
    const width = round(right - left);
    const size = letterSize(TEXT, width, lettering);
    const names: NameSize = { size, small: isPrinted ? size : size - 2 };
    const top =
        Math.max(...around.map((piece) => piece.y + extent(piece).up / 2), 250) + MARGIN * (isPrinted ? 0.5 : 2);
    const height = round(top + (isPrinted ? bandOf(around, size) : LABELS * size));
    const toPage = ({ x, y }: PlacedPiece): { x: number; y: number } => ({ x: round(x - left), y: round(top - y) });
    const edge = round(top);
    return picture({ width, height }, drawing, [
        inked([
            s('line', { x1: '0', y1: `${edge}`, x2: `${width}`, y2: `${edge}`, 'stroke-width': '3' }),
            ...pieces.map((piece) => drawn(piece, toPage(piece))),
        ]),
        lettered(
            [
                ...(isPrinted ? [] : heading(drawing, MARGIN / 2, MARGIN * 0.8, size + 3)),
                ...pieces.flatMap((piece) => label(piece, toPage(piece), edge, names)),
                ...scaleBar(width - MARGIN, height - MARGIN / 2, { length: 100, name: '100 mm', size }),
            ],
            size,
            isPrinted,
        ),
        ...key(pieces, height),
    ]);
}

/** As high as the longest name that slants there, and the bar of the scale under it. */
function bandOf(pieces: readonly PlacedPiece[], size: number): number {
    const beside = pieces.filter(({ row, shape }) => (row === 'left' || row === 'right') && shape !== 'napkin');
    const longest = Math.max(0, ...beside.map((piece) => widthOfWords(piece.label, size)));
    return longest * Math.sin(Math.PI / 3) + size * 2.5;
}

function drawn(piece: DrawnPiece, at: { readonly x: number; readonly y: number }): Element {
    return s(
        'g',
        { class: `piece ${piece.state}`, 'data-piece': piece.id, 'data-at': piece.at, ...LINE[piece.state] },
        [s('title', `${piece.label}${SAID[piece.state]}`), outline(piece, at)],
    );
}

/** What the lines mean, where a step is shown. */
function key(pieces: readonly DrawnPiece[], height: number): Element[] {
    const shown = (['brought', 'used', 'cleared'] as const).filter((state) =>
        pieces.some((piece) => piece.state === state),
    );
    const meaning = { brought: 'brought now', used: 'in use', cleared: 'cleared now' } as const;
    return shown.flatMap((state, index) => {
        const x = MARGIN / 2 + index * 120;
        const y = height - MARGIN / 2 - 12;
        return [
            inked([
                s('g', { class: state, ...LINE[state] }, [
                    s('rect', { x: `${x}`, y: `${round(y)}`, width: '18', height: '12' }),
                ]),
            ]),
            lettered([s('text', { x: `${x + 24}`, y: `${round(y + 11)}` }, meaning[state])]),
        ];
    });
}
