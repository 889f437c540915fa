import type { Cupboard, Eaten, Kind, Piece, PieceUse } from './cupboard.js';
import { isKindOf, suits } from './names.js';
import { isWithin } from './origin.js';
import type { Dish } from './types.js';

/** Which piece is a sort of which, what it suits, and which pieces belong together, as the cupboard says. */

/** The piece itself, then those it derives from, nearest first. Empty for a piece that nobody declares. */
export function pieceLineage(cupboard: Cupboard, name: string): readonly Piece[] {
    const lineage: Piece[] = [];
    let piece = cupboard.pieces.get(name);
    while (piece && !lineage.includes(piece)) {
        lineage.push(piece);
        piece = piece.parent && cupboard.pieces.get(piece.parent.name);
    }
    return lineage;
}

/** True where `name` is the piece `wanted` or derives from it. */
export function isSortOfPiece(cupboard: Cupboard, name: string, wanted: string): boolean {
    return pieceLineage(cupboard, name).some((piece) => piece.name === wanted);
}

/** True where the kind called `name` is `wanted` or derives from it. */
export function isSortOfKind(cupboard: Cupboard, name: string, wanted: string): boolean {
    return isKindOf(cupboard.kinds.get(name), wanted);
}

/** True where the piece, or what it derives from, suits the kind or what that derives from. */
export function suitsKind(cupboard: Cupboard, name: string, kind: Kind): boolean {
    return pieceLineage(cupboard, name).some((piece) => suits(piece, kind, cupboard));
}

/** The cupboard's pieces that are for the kind, in the order declared. */
export function piecesFor(cupboard: Cupboard, kind: Kind): readonly Piece[] {
    return [...cupboard.pieces.values()].filter((piece) =>
        piece.suits.some((suited) => kind.lineage.includes(suited.name)),
    );
}

/** `true` or `false` where either piece says what it pairs with; `undefined` where neither does. */
export function pairsWith(cupboard: Cupboard, one: string, other: string): boolean | undefined {
    const stated = [statedPairs(cupboard, one), statedPairs(cupboard, other)];
    if (stated.every((pairs) => pairs.length === 0)) {
        return undefined;
    }
    return (
        stated[0]!.some((name) => isSortOfPiece(cupboard, other, name)) ||
        stated[1]!.some((name) => isSortOfPiece(cupboard, one, name))
    );
}

/** `undefined` where neither the glass says what it is for nor the drink what it is poured into. */
export function suitsDrink(cupboard: Cupboard, glass: Piece, kind: Kind): boolean | undefined {
    const named = vesselsOf(kind);
    if (named.length === 0 && glass.suits.length === 0) {
        return undefined;
    }
    // What a parent is poured into does not count where the kind has a word of its own: a flute is not for every wine.
    const isNamed = pieceLineage(cupboard, glass.name).some(({ name }) => named.includes(name));
    return isNamed || glass.suits.some(({ name }) => isKindOf(kind, name));
}

/** Pieces that a kind of dish or drink is served in or on, as it says. */
export function vesselsOf(kind: Kind): readonly string[] {
    return kind.vessels.flatMap(({ names }) => names.map(({ name }) => name));
}

/** What the piece pairs with: its own word, else that of what it derives from. */
export function statedPairs(cupboard: Cupboard, name: string): readonly string[] {
    const speaking = pieceLineage(cupboard, name).find((piece) => piece.pairs.length > 0);
    return speaking?.pairs.map((pair) => pair.name) ?? [];
}

/** A fork and a knife that one dish is eaten with and that do not belong together. */
export interface MismatchedPair {
    readonly fork: PieceUse;
    readonly knife: PieceUse;
    readonly forkSuits: boolean;
    readonly knifeSuits: boolean;
}

/** The pair of `eaten` that does not match while at least one of the two suits the kind; where neither does, each is wrong by itself. */
export function mismatchedPair(cupboard: Cupboard, eaten: Eaten, kind: Kind): MismatchedPair | undefined {
    const forks = alternativesOf(cupboard, eaten, 'fork');
    const knives = alternativesOf(cupboard, eaten, 'knife');
    const pairs = forks.flatMap((fork) => knives.map((knife) => ({ fork, knife })));
    if (
        pairs.length === 0 ||
        pairs.some(({ fork, knife }) => pairsWith(cupboard, fork.piece.name, knife.piece.name) !== false)
    ) {
        return undefined;
    }
    const { fork, knife } = pairs[0]!;
    const forkSuits = suitsKind(cupboard, fork.piece.name, kind);
    const knifeSuits = suitsKind(cupboard, knife.piece.name, kind);
    return forkSuits || knifeSuits ? { fork, knife, forkSuits, knifeSuits } : undefined;
}

/** The alternatives of the first piece of a family among those that a dish is eaten with. */
function alternativesOf(cupboard: Cupboard, eaten: Eaten, family: Piece['family']): readonly PieceUse[] {
    const group = eaten.find((alternatives) =>
        alternatives.some((use) => cupboard.pieces.get(use.piece.name)?.family === family),
    );
    return group?.filter((use) => cupboard.pieces.get(use.piece.name)?.family === family) ?? [];
}

/** So many kinds are told at most. */
const MOST_KINDS = 6;

/** The cooked kinds of dish that are made of one of these foods, the narrowest first: of beef a steak, then what is of any meat. */
export function kindsMadeOf(foods: readonly string[], { kinds, substances }: Cupboard): string[] {
    const found: string[] = [];
    const seen = new Set<string>();
    for (let level = foods; level.length > 0;) {
        level.forEach((name) => seen.add(name));
        found.push(
            ...[...kinds.values()]
                .filter(({ of, raw }) => !raw && of.some(({ name }) => level.includes(name)))
                .map(({ name }) => name),
        );
        level = [
            ...new Set(level.flatMap((name) => (substances.get(name)?.parents ?? []).map((parent) => parent.name))),
        ].filter((name) => !seen.has(name));
    }
    return [...new Set(found)].slice(0, MOST_KINDS);
}

/** True where the `eaten with` clause stands in the dish itself, false where it is its course's, shared with other dishes. */
export function ownsEatenClause(dish: Dish): boolean {
    return dish.eatenOrigin !== undefined && isWithin(dish.eatenOrigin, dish.origin);
}
