import type { Element } from 'hast';
import { s } from 'hastscript';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import { outline } from './outline.js';

/** What a step of the evening does with a piece: told by its line, not by colour. */
export type PieceState = 'standing' | 'brought' | 'used' | 'cleared';

export interface DrawnPiece extends PlacedPiece {
    readonly state: PieceState;
    /** Written on the piece as `data-at`, for who keeps a list of the places that pieces come from. */
    readonly at?: number;
}

/** How each state is drawn. */
export const LINE: Record<PieceState, Readonly<Record<string, string>>> = {
    standing: {},
    brought: { 'stroke-width': '3.4' },
    used: { fill: '#d9d9d9' },
    cleared: { 'stroke-dasharray': '6 5', 'fill-opacity': '0' },
};

/** And told, after the name of the piece. */
export const SAID: Record<PieceState, string> = {
    standing: '',
    brought: ', brought now',
    used: ', in use',
    cleared: ', cleared now',
};

/**
 * A piece at a point of the page, named, with its id as `data-piece`.
 * @param seat on a table with several covers
 * @param turn of its cover, clockwise on the page
 */
export function drawnPiece(
    piece: DrawnPiece,
    at: { readonly x: number; readonly y: number },
    { seat, turn }: { readonly seat?: number; readonly turn?: number } = {},
): Element {
    const { id, state, label } = piece;
    const properties = { 'data-piece': id, 'data-seat': seat, 'data-at': piece.at };
    return s('g', { class: `piece ${state}`, ...properties, ...LINE[state] }, [
        s('title', `${label}${seat === undefined ? '' : `, seat ${seat}`}${SAID[state]}`),
        outline(piece, at, turn),
    ]);
}
