import { s } from 'hastscript';
import type { Piece } from '../../plan/cupboard.js';
import { sizeOf } from '../../service/cover-geometry/piece-sizes.js';
import { outline } from './outline.js';
import { scaleBar } from './scale-bar.js';
import { inked, lettered, picture, round, TEXT, widthOfWords } from './svg.js';

/** What lies or stands at a place; gear and linen are not drawn. */
const DRAWN: ReadonlySet<string> = new Set(['fork', 'knife', 'spoon', 'plate', 'bowl', 'cup', 'glass']);
const MARGIN = 12;
/** Room for the scale bar and its words. */
const FOOT = 24;
/** No piece is drawn higher: the words about it are to be in sight beneath. */
const HIGHEST = 72;
/** Between the measure and the bar of the scale. */
const GAP = 20;
/** Lengths that the bar may stand for, mm; the first that can be seen well. */
const BARS = [20, 50, 100];
const SHORTEST_BAR = 18;

/**
 * One piece from above, to scale, with its size: as SVG text, flatware lying with its tip to the left, no larger than there is room
 * for in a hover. Nothing for gear and linen.
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
    const perMillimetre = Math.min(1, HIGHEST / width);
    const drawn = { shape, length: length * perMillimetre, width: width * perMillimetre };
    const bar = BARS.find((each) => each * perMillimetre >= SHORTEST_BAR) ?? BARS.at(-1)!;
    const scale = { length: bar * perMillimetre, name: `${bar} mm`, size: TEXT - 2 };
    const beside = Math.max(scale.length, widthOfWords(scale.name, scale.size));
    const words = widthOfWords(measure, TEXT) + GAP + beside;
    const size = { width: Math.max(words, drawn.length) + MARGIN * 2, height: drawn.width + MARGIN * 2 + FOOT };
    const middle = { x: size.width / 2, y: MARGIN + drawn.width / 2 };
    const row = isFlat ? 'left' : piece.family === 'glass' ? 'glasses' : 'centre';
    return picture(size, { title: name, description: `Seen from above, ${measure}.` }, [
        inked([
            s('g', { class: 'piece', 'data-piece': piece.name }, [outline({ ...drawn, row, degrees: 90 }, middle)]),
        ]),
        lettered([
            s('text', { x: `${MARGIN}`, y: `${round(size.height - MARGIN)}` }, measure),
            // The name over the bar may be the wider of the two.
            ...scaleBar(size.width - MARGIN - (beside - scale.length) / 2, size.height - MARGIN, scale),
        ]),
    ]);
}
