import { s } from 'hastscript';
import type { Piece } from '../../plan/cupboard.js';
import { sizeOf } from '../../service/cover-geometry/piece-sizes.js';
import { outline } from './outline.js';
import { scaleBar } from './scale-bar.js';
import { inked, lettered, picture, round, TEXT } from './svg.js';

/** What lies or stands at a place; gear and linen are not drawn. */
const DRAWN: ReadonlySet<string> = new Set(['fork', 'knife', 'spoon', 'plate', 'bowl', 'cup', 'glass']);
const MARGIN = 12;
/** Room for the scale bar and its words. */
const SCALE = 30;
/** Most letters are narrower than this share of their height. */
const LETTER_WIDTH = 0.58;
/** The scale bar with its words, and a gap. */
const BESIDE = 56;

/**
 * One piece from above, to scale, with its size: as SVG text, one millimetre a unit, flatware lying with its tip to the left. Nothing for gear and linen.
 */
export function drawPiece(piece: Piece): string | undefined {
    if (!DRAWN.has(piece.family)) {
        return undefined;
    }
    const { shape, length, width } = sizeOf(piece);
    const isFlat = shape !== 'round';
    const name = piece.called ?? piece.name.replaceAll('-', ' ');
    const isStated = piece.measures[isFlat ? 'length' : 'across'] !== undefined;
    const measure = `${Math.round(length)} mm ${isFlat ? 'long' : 'across'}${isStated ? '' : ', a usual size'}`;
    const words = measure.length * TEXT * LETTER_WIDTH + BESIDE;
    const size = { width: Math.max(words, length) + MARGIN * 2, height: width + MARGIN * 2 + SCALE };
    const middle = { x: size.width / 2, y: MARGIN + width / 2 };
    const row = isFlat ? 'left' : piece.family === 'glass' ? 'glasses' : 'centre';
    return picture(size, { title: name, description: `Seen from above, ${measure}.` }, [
        inked([
            s('g', { class: 'piece', 'data-piece': piece.name }, [
                outline({ shape, length, width, row, degrees: 90 }, middle),
            ]),
        ]),
        lettered([
            s('text', { x: `${MARGIN}`, y: `${round(size.height - MARGIN)}` }, measure),
            ...scaleBar(size.width - MARGIN, size.height - MARGIN, { length: 20, name: '20 mm', size: TEXT - 2 }),
        ]),
    ]);
}
