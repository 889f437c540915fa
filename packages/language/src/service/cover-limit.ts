import type { Piece } from '../plan/cupboard.js';
import type { Customs } from '../plan/types.js';
import type { CoverPiece } from './types.js';

export function isOysterFork(piece: Piece): boolean {
    return piece.name === 'oyster-fork' || piece.parent?.name === 'oyster-fork';
}

/** One count of laid flatware against the house's limit. */
export interface LimitCount {
    /** `left of the plate`, `forks`, … as a message says it. */
    readonly what: string;
    readonly count: number;
    readonly limit: number;
    /** The pieces past the limit, the last used last; empty where the limit holds. */
    readonly over: readonly CoverPiece[];
}

/**
 * Counts the flatware lying left and right of the plate when guests sit, as the customs `limit`, `limit-counts` and
 * `oyster-fork-counts` say. Not what lies above, on the saucer or on the bread plate.
 * @returns nothing where the house has no limit
 */
export function countAgainstLimit(customs: Customs, pieces: readonly CoverPiece[]): LimitCount[] {
    const limit = customs.limit.value;
    if (typeof limit !== 'number') {
        return [];
    }
    const countsOyster = customs['oyster-fork-counts'].value === 'yes';
    const laid = pieces
        .filter(
            (piece) =>
                piece.when === 'laid' &&
                (piece.side === 'left' || piece.side === 'right') &&
                (countsOyster || !isOysterFork(piece.piece)),
        )
        .toSorted((a, b) => a.course - b.course);
    const count = (what: string, counted: readonly CoverPiece[]): LimitCount => ({
        what,
        count: counted.length,
        limit,
        over: counted.slice(limit),
    });
    const ofFamily = (family: string): CoverPiece[] => laid.filter(({ piece }) => piece.family === family);
    const onSide = (side: 'left' | 'right'): CoverPiece[] => laid.filter((piece) => piece.side === side);
    switch (customs['limit-counts'].value) {
        case 'forks-and-knives':
            return [count('forks', ofFamily('fork')), count('knives', ofFamily('knife'))];
        case 'forks-left':
            return [
                count(
                    'forks left of the plate',
                    onSide('left').filter(({ piece }) => piece.family === 'fork'),
                ),
            ];
        case 'all-pieces':
            return [count('pieces left and right of the plate', laid)];
        default:
            return [
                count('pieces left of the plate', onSide('left')),
                count('pieces right of the plate', onSide('right')),
            ];
    }
}
