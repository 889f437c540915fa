/** A table from above, and the covers on it. */
import type { Element } from 'hast';
import { s } from 'hastscript';
import type { TableToPlace } from '../../service/room/types.js';
import type { DrawnPiece } from './drawn-piece.js';
import { round } from './svg.js';

export type Seat = TableToPlace['seats'][number];

/** One place of a table: what lies there, and what is said of who sits there. */
export interface DrawnPlace {
    readonly seat: number;
    readonly pieces: readonly DrawnPiece[];
    /** Marks of plates that must not be confused, each with the courses it is for, such as `GF 1: soup, main`; a line each. */
    readonly marks: readonly string[];
    /** What its guest needs, such as `without gluten`; absent where nothing is said of it. */
    readonly needs?: string;
}

/** What stands on the table for two guests. */
export interface SharedPiece {
    readonly piece: DrawnPiece;
    /** The frame of the cover that would lie between the two. */
    readonly from: Pick<Seat, 'x' | 'y' | 'degrees'>;
    /** Of the first of them. */
    readonly seat: number;
}

/** The table top, its middle at a point of the page. */
export function tableTop(
    { shape, width, depth }: Pick<TableToPlace, 'shape' | 'width' | 'depth'>,
    { x, y }: { readonly x: number; readonly y: number },
): Element {
    const at = { cx: `${round(x)}`, cy: `${round(y)}` };
    switch (shape) {
        case 'round':
            return s('circle', { ...at, r: `${round(width / 2)}` });
        case 'oval':
            return s('ellipse', { ...at, rx: `${round(width / 2)}`, ry: `${round(depth / 2)}` });
        default:
            return s('rect', {
                x: `${round(x - width / 2)}`,
                y: `${round(y - depth / 2)}`,
                width: `${round(width)}`,
                height: `${round(depth)}`,
            });
    }
}

/** From the cover's own frame to the table's: x to the guest's right, y where the guest looks. */
export function onTable(
    { x, y, degrees }: Pick<Seat, 'x' | 'y' | 'degrees'>,
    piece: Pick<DrawnPiece, 'x' | 'y'>,
): { readonly x: number; readonly y: number } {
    const look = (degrees * Math.PI) / 180;
    return {
        x: x + piece.y * Math.cos(look) + piece.x * Math.sin(look),
        y: y + piece.y * Math.sin(look) - piece.x * Math.cos(look),
    };
}
