import type { Element } from 'hast';
import { s } from 'hastscript';
import { extent } from '../../service/cover-geometry/place-cover.js';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import { depthOfSlanting, placeNames, type NamedPage } from './cover-labels.js';
import { drawnPiece, LINE, type DrawnPiece } from './drawn-piece.js';
import { inked, lettered, round, TEXT, widthOfWords, type Drawing, type Lettering } from './svg.js';
import { frameOf, toScale, wordsOfFrame } from './to-scale.js';
import { written } from './words-on-page.js';

const MARGIN = 30;
const SCALE = { length: 100, name: '100 mm' };

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
    const left = Math.min(...around.map((piece) => piece.x - extent(piece).across / 2), -200) - MARGIN;
    const right = Math.max(...around.map((piece) => piece.x + extent(piece).across / 2), 200) + MARGIN;
    const frame = frameOf(drawing, round(right - left), TEXT, lettering);
    const { width, size } = frame;
    const top = frame.above + MARGIN * 0.5 + Math.max(...around.map((piece) => piece.y + extent(piece).up / 2), 250);
    const edge = round(top);
    const page: NamedPage = {
        width,
        edge,
        size,
        small: frame.isPrinted ? size : size - 2,
        at: ({ x, y }) => ({ x: round(x - left), y: round(top - y) }),
    };
    const height = round(edge + depthOfSlanting(around, page) + frame.below);
    const names = placeNames(pieces, page, wordsOfFrame(frame, height, SCALE));
    const ink = [
        inked([
            s('line', { x1: '0', y1: `${edge}`, x2: `${width}`, y2: `${edge}`, 'stroke-width': '3' }),
            ...pieces.map((piece) => drawnPiece(piece, page.at(piece))),
        ]),
        ...key(pieces, height, size),
    ];
    return toScale(frame, height, SCALE, ink, names.flatMap(written));
}

const MEANING = { brought: 'brought now', used: 'in use', cleared: 'cleared now' } as const;

/** What the lines mean, where a step is shown. */
function key(pieces: readonly DrawnPiece[], height: number, size: number): Element[] {
    const shown = (['brought', 'used', 'cleared'] as const).filter((state) =>
        pieces.some((piece) => piece.state === state),
    );
    const foot = height - size / 2;
    let x = size;
    return shown.flatMap((state) => {
        const from = x;
        x += size * 3.5 + widthOfWords(MEANING[state], size);
        return [
            inked([
                s('g', { class: state, ...LINE[state] }, [
                    s('rect', {
                        x: `${round(from)}`,
                        y: `${round(foot - size * 0.92)}`,
                        width: `${round(size * 1.4)}`,
                        height: `${round(size * 0.92)}`,
                    }),
                ]),
            ]),
            lettered([s('text', { x: `${round(from + size * 1.85)}`, y: `${round(foot)}` }, MEANING[state])], size),
        ];
    });
}
