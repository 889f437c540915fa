import { stands } from './place-cover.js';
import type { PlacedPiece } from './types.js';

/** Cards and salt can stand anywhere; vessels stand where the plate is. */
export const isOfCover = (piece: PlacedPiece): boolean =>
    piece.row !== 'middle' && piece.shape !== 'card' && !(piece.row === 'centre' && piece.when === 'brought');

/**
 * When each piece stands at the cover, as a number with a bit for each moment: when guests sit, and whenever a course brings
 * pieces of its own. Two pieces stand there together where they have a bit in common.
 */
export function momentsOf(pieces: readonly PlacedPiece[]): readonly number[] {
    const brought = pieces.filter((piece) => isOfCover(piece) && piece.when === 'brought');
    const courses = [...new Set(brought.map((piece) => piece.course))];
    const hasCup = courses.map((course) => brought.some((piece) => piece.row === 'saucer' && piece.course === course));
    return pieces.map((piece) =>
        courses.reduce(
            (moments, course, index) => (isThere(piece, course, hasCup[index]!) ? moments | (2 << index) : moments),
            isOfCover(piece) && piece.when === 'laid' ? 1 : 0,
        ),
    );
}

/** Glasses stay; the plate before the guest is the course's own, the napkin is on the lap, and bread is gone when the cup comes. */
function isThere(piece: PlacedPiece, course: number, hasCup: boolean): boolean {
    if (!isOfCover(piece) || piece.shape === 'napkin' || piece.row === 'centre') {
        return false;
    }
    if (piece.when === 'brought') {
        return piece.course === course || (piece.row === 'glasses' && piece.course < course);
    }
    return piece.row === 'glasses' || (piece.row === 'bread' ? !hasCup : stands(piece, course));
}
