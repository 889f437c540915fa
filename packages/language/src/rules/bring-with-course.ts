import type { PieceUse } from '../plan/cupboard.js';
import type { Origin } from '../plan/origin.js';
import { show } from '../plan/quantity.js';
import type { Dish } from '../plan/types.js';
import type { Cover, CoverPiece } from '../service/types.js';
import { writeEaten, writeUse } from './eaten-with.js';
import type { Intention } from './fixes.js';

/** Every piece of flatware of a cover, laid or brought. */
export function allPieces(cover: Cover): readonly CoverPiece[] {
    return [...cover.left, ...cover.right, ...cover.above, ...cover.saucer, ...cover.breadPlate, ...cover.brought];
}

/**
 * The changes that make these laid pieces come with their courses instead.
 * @param pieces of one cover, each for a dish; a piece without a dish is only taken out of its `lay` clause
 */
export function bringWithCourse(cover: Cover, pieces: readonly CoverPiece[]): Intention[] {
    const changes: Intention[] = pieces
        .filter((piece) => piece.from === 'lay')
        .map((piece) => ({ do: 'remove', at: piece.origin }));
    for (const dish of new Set(pieces.flatMap((piece) => piece.dish ?? []))) {
        const own = allPieces(cover).filter((piece) => piece.dish === dish && piece.purpose === 'eating');
        changes.push(
            ...bringForDish(
                dish,
                own,
                pieces.filter((piece) => piece.dish === dish),
            ),
        );
    }
    return changes;
}

/**
 * The changes that make some pieces of a dish come with its course.
 * @param own all that the dish is eaten with; `brought` are some of them
 */
export function bringForDish(dish: Dish, own: readonly CoverPiece[], brought: readonly CoverPiece[]): Intention[] {
    const uses = brought.map((piece) => statedUse(dish, piece));
    if (uses.every((use) => use !== undefined)) {
        return uses.map((use) =>
            use.laid
                ? {
                      do: 'replace',
                      at: use.origin,
                      words: writeUse({ ...use, name: use.piece.name, laid: false, brought: true }),
                  }
                : { do: 'append', at: use.origin, words: 'brought with the course' },
        );
    }
    // The kind names the pieces: the dish now names all of them, so that the others stay as they are.
    const clause = writeEaten(own.map((piece) => [writePiece(piece, brought.includes(piece))]));
    return [
        dish.eatenOrigin
            ? { do: 'replace', at: dish.eatenOrigin, words: clause }
            : { do: 'add-clause', to: dish.origin, clause },
    ];
}

/** The words of the dish's `eaten with` clause that put a piece there. */
export function statedUse(dish: Dish, piece: CoverPiece): PieceUse | undefined {
    const uses = (dish.eaten ?? []).flat();
    return (
        uses.find((use) => sameOrigin(use.origin, piece.origin)) ??
        uses.find((use) => use.piece.name === piece.piece.name)
    );
}

function writePiece(piece: CoverPiece, bring: boolean): string {
    const to = piece.to === undefined ? '' : ` to ${show(piece.to, '°C', 1)}`;
    const stated = piece.broughtBecause === 'stated' || piece.broughtBecause === 'limit';
    return `${piece.piece.name}${piece.state ? ` ${piece.state}${to}` : ''}${bring || stated ? ', brought with the course' : ''}`;
}

export function sameOrigin(one: Origin, other: Origin): boolean {
    return one.file === other.file && one.start === other.start && one.end === other.end;
}

/** Two dishes that share a clause, or two covers that share a dish, ask for the same change once. */
export function eachOnce(changes: readonly Intention[]): readonly Intention[] {
    return [...new Map(changes.map((change) => [JSON.stringify(change), change])).values()];
}
