import type { Element } from 'hast';
import { s } from 'hastscript';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import { centred, round, widthOfWords } from './svg.js';

/** Plates at least this wide have room for a name on their rim, mm. */
const LARGE = 230;

/** What a name is written with: its height, and that of a name on a small thing, mm. */
export interface NameSize {
    readonly size: number;
    readonly small: number;
}

/** Names: under the table's edge, slanting, for what lies beside the plate; on the thing itself for what is round. */
export function label(
    piece: PlacedPiece,
    { x, y }: { x: number; y: number },
    edge: number,
    { size, small }: NameSize,
): Element[] {
    switch (piece.row) {
        case 'left':
        case 'right':
            if (piece.shape === 'napkin') {
                return [upright(piece.label, x + 5, y)];
            }
            return [
                s(
                    'text',
                    { transform: `translate(${round(x - 3)} ${round(edge + size + 1)}) rotate(60)` },
                    piece.label,
                ),
            ];
        case 'above':
            if (piece.shape === 'card') {
                return inLines(piece.label, { x, y, across: piece.width }, small);
            }
            // Along the narrow handle, away from the next piece: below the fork's, above the others'.
            return piece.shape === 'fork'
                ? [centred(piece.label, x - piece.length * 0.14, y + piece.width * 0.3 + size, size)]
                : [centred(piece.label, x + piece.length * 0.14, y - piece.width * 0.3 - 3, size)];
        case 'glasses':
            return inLines(piece.label, { x, y, across: piece.length }, small);
        case 'bread':
            return piece.shape === 'round'
                ? inLines(piece.label, { x, y: y + piece.length * 0.2, across: piece.length }, small)
                : [centred(piece.label, x, y - piece.width / 2 - 5, size)];
        case 'middle':
            return [centred(piece.label, x, y + piece.width / 2 + size, size)];
        case 'saucer':
            return [centred(piece.label, x, y + 4, small)];
        case 'centre':
            if (piece.shape === 'napkin') {
                return [upright(piece.label, x + 5, y)];
            }
            if (piece.shape === 'card') {
                return [centred(piece.label, x, y + 4, small)];
            }
            if (piece.id.startsWith('underliner')) {
                return [centred(piece.label, x, y + piece.length / 2 + size, small)];
            }
            // Across the middle of a small plate, along the rim of a large one.
            return piece.length < LARGE
                ? inLines(piece.label, { x, y, across: piece.length }, small)
                : [centred(piece.label, x, y + piece.length * 0.44, size)];
    }
}

/** A name along a piece that lies with its tip away from the guest. */
function upright(words: string, x: number, y: number): Element {
    return s('text', { transform: `translate(${round(x)} ${round(y)}) rotate(270)`, 'text-anchor': 'middle' }, words);
}

/** A name on a thing so far across, in as many lines as keep it inside. */
function inLines(
    words: string,
    { x, y, across }: { readonly x: number; readonly y: number; readonly across: number },
    size: number,
): Element[] {
    const lines = words.split(' ').reduce<string[]>((all, word) => {
        const longer = `${all.at(-1) ?? ''} ${word}`.trim();
        return all.length > 0 && widthOfWords(longer, size) <= across ? [...all.slice(0, -1), longer] : [...all, word];
    }, []);
    return lines.map((line, index) =>
        centred(line, x, y + size * 0.36 + (index - (lines.length - 1) / 2) * size * 1.18, size),
    );
}
