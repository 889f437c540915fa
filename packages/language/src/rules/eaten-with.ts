import type { Eaten, PieceUse } from '../plan/cupboard.js';
import { asName } from './wording.js';

/** One piece as an `eaten with` clause says it. */
export function writeUse(use: Pick<PieceUse, 'state' | 'to' | 'brought' | 'laid'> & { readonly name: string }): string {
    const state = use.state === undefined ? '' : ` ${use.state}${use.to ? ` to ${use.to.written}` : ''}`;
    const when = use.brought ? ', brought with the course' : use.laid ? ', laid' : '';
    return `${asName(use.name)}${state}${when}`;
}

/** The clause that says a whole list of pieces. Each inner list is one piece with its alternatives. */
export function writeEaten(pieces: readonly (readonly string[])[]): string {
    return `eaten with ${pieces.map((alternatives) => alternatives.join(' or ')).join(' and ')}`;
}

/** The pieces of a clause as written, without those that `drop` names. */
export function writtenUses(eaten: Eaten, drop: (use: PieceUse) => boolean): string[][] {
    return eaten
        .map((alternatives) =>
            alternatives.filter((use) => !drop(use)).map((use) => writeUse({ ...use, name: use.piece.name })),
        )
        .filter((alternatives) => alternatives.length > 0);
}
