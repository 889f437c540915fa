import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import type { Step, TableItem } from '../../service/types.js';
import type { DrawnPiece, PieceState } from './drawn-piece.js';

/**
 * The pieces of a cover as one step of the evening leaves them: what stands, what was brought or cleared in it, and what is in
 * use. A piece that the step clears is shown where it stood.
 * @param pieces of the cover, laid and brought
 */
export function piecesAt(step: Step, pieces: readonly PlacedPiece[]): DrawnPiece[] {
    const isSeated = step.sort === 'seated';
    const find = finder(pieces);
    const states = new Map<string, PieceState>();
    const note = (items: readonly TableItem[], state: PieceState): void => {
        for (const item of items) {
            const piece = find(item);
            if (piece) {
                states.set(piece.id, state);
            }
        }
    };
    note(step.standing, 'standing');
    // What is there when guests sit was laid before them.
    note(step.brought, isSeated ? 'standing' : 'brought');
    note(step.used, 'used');
    note(step.cleared, 'cleared');
    return pieces.flatMap((piece) => {
        if (isOnLap(piece) && !isSeated) {
            return [];
        }
        const state = states.get(piece.id) ?? (isCard(piece) && step.sort !== 'farewell' ? 'standing' : undefined);
        return state ? [{ ...piece, state }] : [];
    });
}

/** A napkin that lay on the plate is taken from it as guests sit down; common practice, no source. */
const isOnLap = ({ shape, row }: PlacedPiece): boolean => shape === 'napkin' && row === 'centre';

/** The card stays where it is all evening and is nobody's step. */
const isCard = (piece: PlacedPiece): boolean => piece.shape === 'card';

/** Finds the placed piece of a thing of the table: of the same name, for the same course; the second of two for the second. */
function finder(pieces: readonly PlacedPiece[]): (item: TableItem) => PlacedPiece | undefined {
    return ({ id, piece, course, place, sort }) => {
        const same = pieces.filter(
            (each) =>
                each.name === piece &&
                (each.course === course || course < 0 || sort === 'glass') &&
                (sort !== 'glass' || each.row === 'glasses') &&
                (place !== 'saucer' || each.row === 'saucer'),
        );
        const [, number] = / #(\d+)$/.exec(id) ?? [];
        const ofCourse = same.filter((each) => each.course === course);
        const own = ofCourse.length > 0 ? ofCourse : same;
        return own[number === undefined ? 0 : Number(number) - 1];
    };
}

/** The step of another variation's evening at which the same movement is made; where it has none, the last one before it. */
export function stepAlongside(
    { steps }: { readonly steps: readonly Step[] },
    others: readonly Step[],
    index: number,
): { readonly step: Step; readonly isSame: boolean } {
    for (let at = Math.min(index, steps.length - 1); at >= 0; at--) {
        const { sort, course, title } = steps[at]!;
        const step = others.find((each) => each.sort === sort && each.course === course && each.title === title);
        if (step) {
            return { step, isSame: at === index };
        }
    }
    return { step: others[0]!, isSame: false };
}
