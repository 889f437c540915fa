/** What is fetched, washed, rented and carried. Pieces by name, courses by their index in the menu; times in minutes after guests are seated. */
import type { Origin } from '../../plan/origin.js';
import type { Dish, Wash } from '../../plan/types.js';

// ------------------------------------------------------------------ what is needed
/** One use of a piece in the evening. */
export interface PieceUse {
    /** -1 for what is of no course (water, napkin, service plate); the number of courses for coffee. */
    readonly course: number;
    readonly purpose: string;
    /** For the guests expected. */
    readonly count: number;
    /** For covers set beyond them: only what lies there when guests sit. */
    readonly overset: number;
    readonly when: 'laid' | 'brought';
    readonly state?: 'warmed' | 'chilled';
    /** The text itself lays it, so that a wash cannot make it come later. */
    readonly isFixed: boolean;
}

export interface PieceCount {
    readonly piece: string;
    /** Pieces in use at once or brought over the evening, without spares and without washing between courses. */
    readonly needed: number;
    readonly by: readonly PieceUse[];
}

/** One line of the pull list. `pull` is what leaves the store or comes with the van. */
export interface PullLine {
    readonly piece: string;
    readonly needed: number;
    readonly overset: number;
    /** Pieces that a stated `wash` gives back in time, so that they are fetched once. */
    readonly washed: number;
    /** The house's share of what is in use, rounded up to a whole piece. */
    readonly spare: number;
    readonly pull: number;
    /** Absent where the house does not list the piece: it may be one it never counts. */
    readonly owned?: number;
    readonly rented: number;
    /** How many are missing; 0 where there are enough, or nobody says. */
    readonly short: number;
}

// ------------------------------------------------------------------ racks
export interface RackLine {
    readonly piece: string;
    readonly rack: string;
    /** Pieces of one rack. */
    readonly each: number;
    readonly racks: number;
    /** Why it takes so many: `78 mm across fits 88 mm`. */
    readonly because: string;
}

// ------------------------------------------------------------------ washing between courses
/** What the dish room can do. */
export interface DishRoom {
    readonly racksPerHour: number;
    readonly polishPerMinute: number;
    /** min */
    readonly drying: number;
    /** Figures that the house does not state: `polish`, `drying`. */
    readonly assumed: readonly string[];
}

/** Pieces of one course washed for a later one. */
export interface Turnaround {
    readonly piece: string;
    readonly after: number;
    readonly for: number;
    /** Pieces that are washed: those that the later course wants, as far as the earlier has them. */
    readonly count: number;
    /** Fewer pieces to fetch: the washed ones, and what covers beyond the guests' no longer have. */
    readonly saves: number;
    readonly racks: number;
    /** Washing and polishing, min. */
    readonly work: number;
    /** Drying, and warming where the later course wants them warm, min. */
    readonly rest: number;
    /** The last table is cleared, the last piece is dry and polished, the first one is wanted. Absent without a run sheet. */
    readonly times?: { readonly cleared: number; readonly back: number; readonly wanted: number };
    /** The clause that states it. */
    readonly stated?: Wash;
}

// ------------------------------------------------------------------ what is done about what is short
/** A place in the text where another piece can stand for the short one, and what changes with it. */
export interface Substitution {
    readonly piece: string;
    readonly by: string;
    /** Pieces of the guests' and of the covers set beyond them that change. */
    readonly count: number;
    readonly courses: readonly number[];
    /** The dish that is served or eaten with it, or the pour. */
    readonly title: string;
    readonly sort: 'vessel' | 'underliner' | 'flatware' | 'glass';
    readonly how?: 'in' | 'on';
    readonly write: Writing;
}

/** What is written where: names of pieces, joined by `and`, between other words. */
export interface Writing {
    readonly do: 'replace' | 'append' | 'add-clause';
    readonly at: Origin;
    readonly before: string;
    readonly pieces: readonly string[];
    readonly after: string;
}

export interface CostTerms {
    readonly rent: number;
    readonly delivery: number;
    readonly wash: number;
    readonly substitute: number;
}

export interface Remedy {
    readonly washes: readonly Turnaround[];
    readonly substitutions: readonly Substitution[];
    readonly rents: readonly { readonly piece: string; readonly count: number }[];
    readonly cost: number;
    /** False where a cheaper way may have been missed: more is short than the search looks through. */
    readonly isProved: boolean;
}

export interface Stock {
    readonly dishRoom?: DishRoom;
    /** Stated washes first, in the order of the text; then what could be washed of pieces that are short. */
    readonly turnarounds: readonly Turnaround[];
    readonly racks: readonly RackLine[];
    /** Racks of everything pulled, and how long the machine takes for them; absent where nothing is known of it. */
    readonly wash: { readonly racks: number; readonly hours?: number; readonly carts?: number };
    readonly linen: readonly LinenLine[];
    readonly costs: CostTerms;
    /** The cheapest way to make up for everything that is short; absent where nothing is. */
    readonly remedy?: Remedy;
    /** For each piece alone, the others as they are: the cheapest way first. Each is worked out when it is come to. */
    readonly remedies: ReadonlyMap<string, Iterable<Remedy>>;
    readonly equipment: readonly EquipmentUse[];
}

export interface LinenLine {
    readonly piece: string;
    readonly inUse: number;
    readonly par: number;
    /** What a house keeps that has `par` of each in use. */
    readonly keep: number;
    readonly owned?: number;
}

// ------------------------------------------------------------------ equipment
/** One course's plates in gear that holds so many. */
export interface EquipmentUse {
    readonly gear: string;
    readonly purpose: 'warming' | 'plated ahead' | 'preset' | 'pass';
    readonly course: number;
    /** Dishes whose plates they are. */
    readonly dishes: readonly Dish[];
    readonly plates: number;
    /** Pieces of gear, owned and rented, and what they hold together. */
    readonly count: number;
    readonly capacity: number;
    readonly loads: number;
    /** min for all loads, where it is warming. */
    readonly minutes?: number;
    /** Minute at which most stand there, where a run sheet tells. */
    readonly at?: number;
}
