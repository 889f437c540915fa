import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { s } from 'hastscript';
import { extent } from '../service/cover-geometry/place-cover.js';
import type { PlacedPiece } from '../service/cover-geometry/types.js';

const INK = '#1a1a1a';
const MARGIN = 30;
/** Height of the band below the table's edge that holds the names of the pieces, mm. */
const LABELS = 150;
const TEXT = 13;

export interface Drawing {
    readonly title: string;
    /** One sentence for who can't see the picture. */
    readonly description: string;
}

/**
 * A plain picture of one laid cover, to scale, as SVG text: one millimetre of table is one unit. Black on white, every piece
 * named, with a scale bar. The same cover gives the same bytes.
 */
export function drawCover(pieces: readonly PlacedPiece[], { title, description }: Drawing): string {
    const left = Math.min(...pieces.map((piece) => piece.x - extent(piece).across / 2)) - MARGIN;
    const right = Math.max(...pieces.map((piece) => piece.x + extent(piece).across / 2)) + MARGIN;
    const top = Math.max(...pieces.map((piece) => piece.y + extent(piece).up / 2)) + MARGIN * 2;
    const width = round(right - left);
    const height = round(top + LABELS);
    const toPage = (x: number, y: number): { x: number; y: number } => ({ x: round(x - left), y: round(top - y) });
    const edge = toPage(left, 0).y;
    const picture = s(
        'svg',
        {
            xmlns: 'http://www.w3.org/2000/svg',
            viewBox: `0 0 ${width} ${height}`,
            width: `${width}`,
            height: `${height}`,
            role: 'img',
            'aria-labelledby': 'title description',
        },
        [
            s('title', { id: 'title' }, title),
            s('desc', { id: 'description' }, description),
            s('rect', { x: '0', y: '0', width: `${width}`, height: `${height}`, fill: '#ffffff' }),
            s(
                'g',
                {
                    stroke: INK,
                    'stroke-width': '1.6',
                    fill: '#ffffff',
                    'stroke-linejoin': 'round',
                    'stroke-linecap': 'round',
                },
                [
                    s('line', { x1: '0', y1: `${edge}`, x2: `${width}`, y2: `${edge}`, 'stroke-width': '3' }),
                    ...pieces.map((piece) => outline(piece, toPage(piece.x, piece.y))),
                ],
            ),
            s('g', { fill: INK, 'font-family': 'sans-serif', 'font-size': `${TEXT}` }, [
                s(
                    'text',
                    { x: `${MARGIN / 2}`, y: `${MARGIN * 0.8}`, 'font-weight': 'bold', 'font-size': `${TEXT + 3}` },
                    title,
                ),
                ...pieces.flatMap((piece) => label(piece, toPage(piece.x, piece.y), edge)),
                ...scaleBar(width, height),
            ]),
        ],
    );
    return `${toHtml(picture, { space: 'svg' })}\n`;
}

const round = (value: number): number => Math.round(value * 10) / 10;

function outline(piece: PlacedPiece, { x, y }: { x: number; y: number }): Element {
    if (piece.shape === 'round') {
        const radius = round(piece.length / 2);
        const rim =
            piece.row === 'glasses'
                ? []
                : [s('circle', { cx: `${x}`, cy: `${y}`, r: `${round(radius * 0.72)}`, 'stroke-width': '0.8' })];
        return s('g', [s('circle', { cx: `${x}`, cy: `${y}`, r: `${radius}` }), ...rim]);
    }
    // Turned as the page counts, clockwise.
    const turn = piece.degrees === 0 ? '' : ` rotate(${round(360 - piece.degrees)})`;
    const transform = `translate(${x} ${y})${turn}`;
    const [width, length] = [round(piece.width), round(piece.length)];
    if (piece.shape === 'pair') {
        const apart = round((length - width) / 2);
        return s(
            'g',
            { transform },
            [-apart, apart].map((y0) => s('circle', { cx: '0', cy: `${y0}`, r: `${round(width / 2)}` })),
        );
    }
    if (piece.shape === 'napkin' || piece.shape === 'card') {
        const [left, top] = [round(-width / 2), round(-length / 2)];
        const sheet = s('rect', { x: `${left}`, y: `${top}`, width: `${width}`, height: `${length}` });
        const line = `${round(left + width / 3)}`;
        const fold = s('line', { x1: line, y1: `${top}`, x2: line, y2: `${-top}`, 'stroke-width': '0.8' });
        return s('g', { transform }, piece.shape === 'napkin' ? [sheet, fold] : [sheet]);
    }
    return s('path', { transform, d: PROFILE[piece.shape](length, width) });
}

/** Outlines about the middle of the piece, its tip upward. */
const PROFILE = {
    knife: (length: number, width: number): string => {
        const [half, top, blade] = [width / 2, -length / 2, -length / 2 + length * 0.55];
        // The edge of the blade is straight and toward the plate, which is at the left.
        return path`M ${-half * 0.7} ${blade} L ${-half * 0.7} ${top + width} Q ${-half * 0.5} ${top} ${half * 0.2} ${top} Q ${half} ${top + width} ${half * 0.7} ${blade} L ${half * 0.6} ${length / 2} L ${-half * 0.6} ${length / 2} Z`;
    },
    fork: (length: number, width: number): string => {
        const [half, top] = [width / 2, -length / 2];
        const root = top + length * 0.2;
        const neck = top + length * 0.34;
        const tines = [-1, -1 / 3, 1 / 3, 1]
            .map((place) => path`M ${place * half} ${top} L ${place * half} ${root}`)
            .join(' ');
        return `${tines} ${path`M ${-half} ${root} Q ${-half} ${neck} ${-half * 0.25} ${neck} L ${-half * 0.45} ${length / 2} L ${half * 0.45} ${length / 2} L ${half * 0.25} ${neck} Q ${half} ${neck} ${half} ${root} Z`}`;
    },
    spoon: (length: number, width: number): string => {
        const [half, top] = [width / 2, -length / 2];
        const bowl = top + length * 0.3;
        return path`M ${-half * 0.22} ${bowl} C ${-half * 1.5} ${bowl - length * 0.06} ${-half} ${top} 0 ${top} C ${half} ${top} ${half * 1.5} ${bowl - length * 0.06} ${half * 0.22} ${bowl} L ${half * 0.45} ${length / 2} L ${-half * 0.45} ${length / 2} Z`;
    },
} as const;

function path(words: TemplateStringsArray, ...numbers: readonly number[]): string {
    return words.reduce(
        (text, word, index) => `${text}${word}${index < numbers.length ? round(numbers[index]!) : ''}`,
        '',
    );
}

/** Names: under the table's edge, slanting, for what lies beside the plate; on the thing itself for what is round. */
function label(piece: PlacedPiece, { x, y }: { x: number; y: number }, edge: number): Element[] {
    switch (piece.row) {
        case 'left':
        case 'right':
            if (piece.shape === 'napkin') {
                return [upright(piece.label, x + 5, y)];
            }
            return [s('text', { transform: `translate(${round(x - 3)} ${edge + 14}) rotate(60)` }, piece.label)];
        case 'above':
            if (piece.shape === 'card') {
                return [centred(piece.label, x, y + 4, TEXT - 2)];
            }
            // Along the narrow handle, away from the next piece: below the fork's, above the others'.
            return piece.shape === 'fork'
                ? [centred(piece.label, x - piece.length * 0.14, y + piece.width * 0.3 + TEXT)]
                : [centred(piece.label, x + piece.length * 0.14, y - piece.width * 0.3 - 3)];
        case 'glasses':
            return inLines(piece.label, x, y);
        case 'bread':
            return piece.shape === 'round'
                ? inLines(piece.label, x, y + piece.length * 0.2)
                : [centred(piece.label, x, y - piece.width / 2 - 5)];
        case 'middle':
            return [centred(piece.label, x, y + piece.width / 2 + TEXT)];
        case 'saucer':
            return [centred(piece.label, x, y + 4, TEXT - 2)];
        case 'centre':
            if (piece.shape === 'napkin') {
                return [upright(piece.label, x + 5, y)];
            }
            return piece.shape === 'card'
                ? [centred(piece.label, x, y + 4, TEXT - 2)]
                : [centred(piece.label, x, y + piece.length * 0.44)];
    }
}

/** A name along a piece that lies with its tip away from the guest. */
function upright(words: string, x: number, y: number): Element {
    return s('text', { transform: `translate(${round(x)} ${round(y)}) rotate(270)`, 'text-anchor': 'middle' }, words);
}

function centred(words: string, x: number, y: number, size = TEXT): Element {
    return s('text', { x: `${x}`, y: `${round(y)}`, 'text-anchor': 'middle', 'font-size': `${size}` }, words);
}

/** A name on a round thing: two words a line, so that it stays inside. */
function inLines(words: string, x: number, y: number): Element[] {
    const parts = words.split(' ');
    const lines = parts.length > 2 ? [parts.slice(0, -1).join(' '), parts.at(-1)!] : parts;
    return lines.map((line, index) => centred(line, x, y + 4 + (index - (lines.length - 1) / 2) * TEXT, TEXT - 2));
}

function scaleBar(width: number, height: number): Element[] {
    const [from, y] = [round(width - MARGIN - 100), round(height - MARGIN / 2)];
    return [
        s('path', { d: `M ${from} ${y - 5} v 5 h 100 v -5`, stroke: INK, 'stroke-width': '1.6', fill: 'none' }),
        s('text', { x: `${from + 50}`, y: `${y - 6}`, 'text-anchor': 'middle' }, '100 mm'),
    ];
}
