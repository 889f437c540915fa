/** Who sits where, and which plates go to whom. Courses and dishes by their index in the menu, groups and variations in the service. */

export interface Seats {
    /** In the order of the room's tables, then of seat numbers; empty where no room with tables is in reach. */
    readonly guests: readonly SeatedGuest[];
    /** In the order of the room. */
    readonly tables: readonly SeatedTable[];
    /** Guests for whom the tables have no seat; none where there is no table at all. */
    readonly withoutSeat: number;
    /** The plates of every course, bread last, in the menu's order of dishes. They need no room. */
    readonly plates: readonly PlateSort[];
}

export interface SeatedGuest {
    readonly table: string;
    /** From 1. */
    readonly seat: number;
    /** What the plan says of the seat: it names it, it names the table alone, or nothing: then the guest is dealt one in order. */
    readonly stated: 'seat' | 'table' | 'nothing';
    readonly group: number;
    readonly variation: number;
    /** One a course; `undefined` where a course feeds them nothing. */
    readonly dishes: readonly (number | undefined)[];
    /** What their plate is marked with, one a course; `undefined` where it needs no mark. */
    readonly markers: readonly (string | undefined)[];
    /** Index among the breads of the evening, the common one last. */
    readonly bread?: number;
    readonly breadMarker?: string;
    /** Of a guest whom the list names. Never the name: it is health data. */
    readonly initials?: string;
    /** Index in the plan's guest list, for a sheet that is asked to name guests. */
    readonly listed?: number;
}

export interface SeatedTable {
    readonly name: string;
    /** As the room says; where it doesn't, as many as fit. */
    readonly seats: number;
    readonly guests: number;
    /** Covers laid: of its guests, and its part of the covers set beyond them. */
    readonly laid: number;
}

/** Plates that are alike in all that matters at the pass: one dish for guests of the same needs. */
export interface PlateSort {
    /** -1 for bread. */
    readonly course: number;
    readonly dish: number;
    readonly count: number;
    readonly groups: readonly number[];
    /** Short, for the pass, the run sheet and the seat list: `3`, `V 3`, `GF`, `no egg 2`. */
    readonly marker?: string;
    /** Why it is marked: an allergen is kept off it, something is left off it, its dish is for some guests, another looks alike. */
    readonly because: readonly ('allergen' | 'left-off' | 'diet' | 'alike')[];
    /** Sauces, garnishes and butters that do not go on it. */
    readonly leftOff: readonly string[];
}
