/** The room laid out. Millimetres; x from the left wall, y from the near wall; degrees counter-clockwise. */

export interface RoomLayout {
    readonly width: number;
    readonly depth: number;
    /** Where plates come out of the kitchen: a point on a wall. */
    readonly pass: { readonly x: number; readonly y: number };
    /** In the order of the text. */
    readonly tables: readonly PlacedTable[];
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
    /** The way a runner walks from the pass, round the tables and not through them; mm. */
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
