import { sideRoom, type SideRoom } from './floor.js';
import type { Clearances, PlacedTable, TableToPlace } from './types.js';

export interface Rectangle {
    readonly left: number;
    readonly right: number;
    readonly near: number;
    readonly far: number;
}

export type Side = 'left' | 'right' | 'near' | 'far';

/** A table with its chairs as it would stand in the room, turned or not: what it takes from its middle on each side. */
export interface Footprint {
    readonly name: string;
    readonly shape: PlacedTable['shape'];
    /** Of the table alone, along the width and the depth of the room. */
    readonly width: number;
    readonly depth: number;
    readonly sides: Readonly<Record<Side, SideRoom>>;
    readonly isTurned: boolean;
}

const SIDES = ['near', 'right', 'far', 'left'] as const;

export function footprintOf(table: TableToPlace, isTurned: boolean, clearances: Clearances): Footprint {
    const seated = { near: 'none', right: 'none', far: 'none', left: 'none' } as Record<
        Side,
        'none' | 'chairs' | 'wheelchair'
    >;
    for (const { degrees, accessible } of table.seats) {
        // A guest who looks at 90° sits at the near side. Turned, the near side comes to the right.
        const quarter = Math.round(((degrees - 90 + 360) % 360) / 90) % 4;
        const side = SIDES[(quarter + (isTurned ? 1 : 0)) % 4]!;
        seated[side] = accessible || seated[side] === 'wheelchair' ? 'wheelchair' : 'chairs';
    }
    if (table.seats.length > 0 && (table.shape === 'round' || table.shape === 'oval')) {
        // Between two guests of a round table stands the chair of one of them.
        for (const side of SIDES) {
            seated[side] = seated[side] === 'none' ? 'chairs' : seated[side];
        }
    }
    return {
        name: table.name,
        shape: table.shape,
        width: isTurned ? table.depth : table.width,
        depth: isTurned ? table.width : table.depth,
        sides: {
            left: sideRoom(seated.left, clearances),
            right: sideRoom(seated.right, clearances),
            near: sideRoom(seated.near, clearances),
            far: sideRoom(seated.far, clearances),
        },
        isTurned,
    };
}

/** The floor that a table with its chairs takes at a place. */
export function floorOf({ width, depth, sides }: Footprint, at: { readonly x: number; readonly y: number }): Rectangle {
    return {
        left: at.x - width / 2 - sides.left.taken,
        right: at.x + width / 2 + sides.right.taken,
        near: at.y - depth / 2 - sides.near.taken,
        far: at.y + depth / 2 + sides.far.taken,
    };
}

/** The same with the ways round it. */
export function withLanes({ sides }: Footprint, floor: Rectangle, scale: number): Rectangle {
    return {
        left: floor.left - scale * sides.left.lane,
        right: floor.right + scale * sides.right.lane,
        near: floor.near - scale * sides.near.lane,
        far: floor.far + scale * sides.far.lane,
    };
}

/** The same room with width and depth exchanged. */
export function transposed(footprint: Footprint): Footprint {
    const { width, depth, sides } = footprint;
    return {
        ...footprint,
        width: depth,
        depth: width,
        sides: { left: sides.near, right: sides.far, near: sides.left, far: sides.right },
    };
}

export function transposedRectangle({ left, right, near, far }: Rectangle): Rectangle {
    return { left: near, right: far, near: left, far: right };
}
