/** The room laid out. Millimetres; x from the left wall, y from the near wall; degrees counter-clockwise. */

export interface RoomLayout {
    readonly width: number;
    readonly depth: number;
    /** Where plates come out of the kitchen: a point on a wall. */
    readonly pass: { readonly x: number; readonly y: number };
    /** In the order of the text. */
    readonly tables: readonly PlacedTable[];
    /** What the layout keeps free, as far as the room allows. */
    readonly clearances: Clearances;
    /** How the tables without a place of their own were set out; absent where there are none. */
    readonly grid?: Grid;
    readonly cloths: Cloths;
    /** Places where less is left than the house keeps free, narrowest first; between tables that the text places. */
    readonly narrow: readonly NarrowPlace[];
}

export interface PlacedTable {
    readonly name: string;
    readonly shape: 'round' | 'square' | 'rectangle' | 'oval';
    /** Of the whole table, joined ones together: across for a round one. */
    readonly width: number;
    readonly depth: number;
    /** Its middle; absent where the room has no place for it. */
    readonly at?: { readonly x: number; readonly y: number; readonly degrees: number };
    readonly seats: readonly PlacedSeat[];
    /** The way a runner walks from the pass, round the tables and not through them; mm. 0 where it has no place. */
    readonly fromPass: number;
}

/** Middle of the table edge in front of the guest, in the table's own frame (origin at its middle, unturned). */
export interface PlacedSeat {
    readonly number: number;
    readonly x: number;
    readonly y: number;
    /** Where the guest looks: 90 is away from the near wall. */
    readonly degrees: number;
    /** Width of table edge this guest has, mm. */
    readonly pitch: number;
    readonly accessible: boolean;
}

/** What a house keeps free, mm. */
export interface Clearances {
    readonly chair: number;
    /** Behind the edge of a table at an accessible place: what a wheelchair takes, less what goes under the table. */
    readonly wheelchair: number;
    /** Between the backs of chairs. */
    readonly aisle: number;
    /** Behind an accessible place. */
    readonly route: number;
    /** From the back of a chair to the wall. */
    readonly wall: number;
    /** Side of the square before the pass. */
    readonly pass: number;
}

export interface Grid {
    /** `fits`: with every clearance; `squeezed`: only with narrower ones; `full`: some tables have no place. */
    readonly state: 'fits' | 'squeezed' | 'full';
    /** Names of the tables that have no place. */
    readonly unplaced: readonly string[];
    /** The aisle that the grid leaves, mm. */
    readonly aisle: number;
    /** How much more of the room the tables would need with every clearance; 0 where they fit. */
    readonly short: { readonly along: 'width' | 'depth'; readonly by: number };
}

export interface NarrowPlace {
    readonly table: string;
    /** Another table, or what else is near it. */
    readonly other:
        | { readonly table: string }
        | { readonly fixture: 'left wall' | 'right wall' | 'near wall' | 'far wall' | 'pass' };
    /** What is left between chair backs, or from them to the wall; negative where they meet, mm. */
    readonly left: number;
    readonly wanted: number;
}

// ------------------------------------------------------------------ what is to be set out: plain data, without origins
export interface TableToPlace {
    readonly name: string;
    readonly shape: PlacedTable['shape'];
    readonly width: number;
    readonly depth: number;
    readonly seats: readonly PlacedSeat[];
    readonly at?: { readonly x: number; readonly y: number };
    readonly turned: boolean;
}

export interface RoomToLayOut {
    readonly width: number;
    readonly depth: number;
    readonly passWall: 'left' | 'right' | 'near' | 'far';
    readonly tables: readonly TableToPlace[];
    readonly clearances: Clearances;
}

// ------------------------------------------------------------------ cloths
export interface Cloths {
    /** How far cloths are wanted to hang below the table edge, mm. */
    readonly drop: number;
    /** In the order of the tables. */
    readonly tables: readonly TableCloth[];
    /** How many of each are fetched, by name; without spares. */
    readonly pull: readonly { readonly piece: string; readonly count: number }[];
}

export interface TableCloth {
    readonly table: string;
    /** The least cloth that hangs as wanted: across a round one, or its two sides. */
    readonly needed: ClothSize;
    /** The cloth of those there are; absent where there are only round ones and the table has straight sides. */
    readonly piece?: string;
    readonly size?: ClothSize;
    /** Cloths for this table: several on a long one, each over the edge of the next. */
    readonly count: number;
    /** How far it hangs where it hangs least, mm; negative where it does not cover the table. */
    readonly drop?: number;
}

export type ClothSize =
    | { readonly shape: 'round'; readonly across: number }
    | { readonly shape: 'rectangle'; readonly length: number; readonly width: number };
