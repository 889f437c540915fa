import type { Element } from 'hast';
import { s } from 'hastscript';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import { centred, round, TEXT } from './svg.js';

/** Plates at least this wide have room for a name on their rim, mm. */
const LARGE = 230;

/** Names: under the table's edge, slanting, for what lies beside the plate; on the thing itself for what is round. */
export function label(piece: PlacedPiece, { x, y }: { x: number; y: number }, edge: number): Element[] {
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
            if (piece.shape === 'card') {
                return [centred(piece.label, x, y + 4, TEXT - 2)];
            }
            if (piece.id.startsWith('underliner')) {
                return [centred(piece.label, x, y + piece.length / 2 + TEXT, TEXT - 2)];
            }
            // Across the middle of a small plate, along the rim of a large one.
            return piece.length < LARGE
                ? inLines(piece.label, x, y)
                : [centred(piece.label, x, y + piece.length * 0.44)];
    }
}

/** A name along a piece that lies with its tip away from the guest. */
function upright(words: string, x: number, y: number): Element {
    return s('text', { transform: `translate(${round(x)} ${round(y)}) rotate(270)`, 'text-anchor': 'middle' }, words);
}

/** A name on a round thing: two words a line, so that it stays inside. */
function inLines(words: string, x: number, y: number): Element[] {
    const parts = words.split(' ');
    const lines = parts.length > 2 ? [parts.slice(0, -1).join(' '), parts.at(-1)!] : parts;
    return lines.map((line, index) => centred(line, x, y + 4 + (index - (lines.length - 1) / 2) * TEXT, TEXT - 2));
}
