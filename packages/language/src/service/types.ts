/** What the computing core derives from a plan. Plain immutable values. */
import type { Origin } from '../plan/origin.js';
import type { Bread, Coffee, Course, Dish, GuestRow, NamedGuest, Need, Pour, Seat, Water } from '../plan/types.js';
import type { Kind, Piece } from '../plan/cupboard.js';
import type { AlcoholEach, PourNeed, RefusedCoffee, RefusedPour, WaterNeed } from './drinks/types.js';
import type { Chilling } from './chilling/types.js';
import type { Heat } from './heat/types.js';
import type { CoverGeometry } from './cover-geometry/cover-geometry.js';
import type { RoomLayout, TableToPlace } from './room/types.js';
import type { Preparations, WarmingLoad } from './preparations/types.js';
import type { Run } from './run/types.js';
import type { Seats } from './seats/types.js';
import type { AllergenMatrix } from './allergens/types.js';
import type { PieceCount, PullLine, Stock } from './stock/types.js';
import type { Supplies } from './supplies/types.js';

// ------------------------------------------------------------------ guests and who gets what
/** Guests who share every need. The plain guests, with no need at all, are a group too. */
export interface GuestGroup {
    readonly index: number;
    readonly count: number;
    readonly needs: readonly Need[];
    readonly children: boolean;
    readonly seat?: Seat;
    readonly named?: NamedGuest;
    readonly row?: GuestRow;
    /** `vegetarian, without tree-nuts`, or `no special needs`. */
    readonly label: string;
    /** The row, the guest-list line, or the `guests` clause. */
    readonly origin: Origin;
}

/** Why a guest may not have something. */
export interface Conflict {
    readonly need: Need;
    /** What is in it: `pine-nut`. */
    readonly substance: string;
    /** What the guest is without, or what the diet excludes: `tree-nuts`. */
    readonly excluded: string;
    /** What carries it: the dish, its sauce, the bread, its butter, a pour, the kind of dish. */
    readonly carrier: string;
    /** The name in the `contains` list, or the kind. */
    readonly origin: Origin;
    /** An allergen a guest must not meet; false where a diet's choice is broken. */
    readonly allergen: boolean;
}

/** One dish of a course and how many get it. */
export interface Portion {
    readonly dish: Dish;
    readonly count: number;
    /** By group; only groups that get some. */
    readonly groups: readonly { readonly group: GuestGroup; readonly count: number }[];
}

export interface Unserved {
    readonly group: GuestGroup;
    readonly count: number;
    /** For each dish of the course, why not; empty conflicts mean the dish is not for them or has run out. */
    readonly refused: readonly { readonly dish: Dish; readonly conflicts: readonly Conflict[] }[];
}

/** Who gets which dish in one course. Solved exactly (a minimum-cost flow), preferences kept. */
export interface CourseServing {
    readonly course: Course;
    readonly portions: readonly Portion[];
    readonly unserved: readonly Unserved[];
    /** Portions stated by number (`for 20`) or share that nobody is left to eat. */
    readonly leftover: readonly PortionCount[];
    /** Why guests go without a dish, or without the one they chose. */
    readonly tooFew: readonly TooFew[];
    /** Why portions stated by number are left over. */
    readonly tooMany: readonly TooMany[];
}

export interface PortionCount {
    readonly dish: Dish;
    readonly count: number;
}

/** Guests of one sort: the same needs, the same choices. */
export interface Takers {
    readonly groups: readonly GuestGroup[];
    readonly count: number;
    /** Dishes of the course that they chose and may have. */
    readonly chose: readonly Dish[];
}

/** A smallest set of guests for whom the dishes they may have, or chose, are too few together. */
export interface TooFew {
    readonly guests: readonly Takers[];
    /** Every dish that will do for any of them; empty where none will. */
    readonly portions: readonly PortionCount[];
    /** Guests of the set who go without. */
    readonly short: number;
    /** Others for whom only these dishes will do. */
    readonly others: readonly Takers[];
    /** Guests who go without, the others among them. */
    readonly shortInAll: number;
    /** Changes of the numbers stated, each alone enough for all of them. */
    readonly mends: readonly (readonly PortionCount[])[];
}

/** A smallest set of dishes of which more portions are stated than there are guests who may have them. */
export interface TooMany {
    readonly portions: readonly PortionCount[];
    /** All who may have any of them. */
    readonly guests: readonly Takers[];
    readonly over: number;
    /** Other dishes that only these guests may have. */
    readonly others: readonly PortionCount[];
    readonly overInAll: number;
    /** Changes of the numbers stated, each of which alone would come out. */
    readonly mends: readonly (readonly PortionCount[])[];
}

// ------------------------------------------------------------------ the cover
export type Side = 'left' | 'right' | 'above' | 'saucer' | 'bread-plate' | 'with-the-course';

/** One piece of one guest's cover and the course it is for. */
export interface CoverPiece {
    readonly piece: Piece;
    /** Index of the course; -1 for bread, courses.length for coffee after the last. */
    readonly course: number;
    readonly dish?: Dish;
    readonly purpose: 'eating' | 'bread' | 'coffee';
    readonly side: 'left' | 'right' | 'above' | 'saucer' | 'bread-plate';
    /** Laid before guests sit, or brought with its course. */
    readonly when: 'laid' | 'brought';
    /** Why it is brought: stated, warmed or chilled (never preset), washed first, past the limit (custom `overflow: brought`), or by custom. */
    readonly broughtBecause?: 'stated' | 'warmed' | 'chilled' | 'washed' | 'limit' | 'custom';
    readonly state?: 'warmed' | 'chilled';
    /** °C, where the plan says how warm or cold. */
    readonly to?: number;
    /** Where it comes from: an `eaten with` clause, a `lay` clause, or what its kind says. */
    readonly from: 'stated' | 'lay' | 'kind';
    /** The words that put it there; for `kind`, the dish's head. */
    readonly origin: Origin;
}

export interface CoverGlass {
    readonly piece: Piece;
    /** The pour it is for; absent for water. */
    readonly pour?: Pour;
    readonly water?: Water;
    readonly course: number;
    readonly when: 'laid' | 'brought';
    readonly origin: Origin;
}

/**
 * The cover for one set of dishes a guest can have.
 * Left and right run outermost first, above nearest the plate first, glasses from the knife tip outward.
 */
export interface Cover {
    readonly left: readonly CoverPiece[];
    readonly right: readonly CoverPiece[];
    readonly above: readonly CoverPiece[];
    readonly saucer: readonly CoverPiece[];
    readonly breadPlate: readonly CoverPiece[];
    readonly glasses: readonly CoverGlass[];
    /** Everything that comes with its course, in course order. */
    readonly brought: readonly CoverPiece[];
    readonly broughtGlasses: readonly CoverGlass[];
    readonly servicePlate?: Piece;
    readonly bread?: Piece;
    readonly napkin: 'left' | 'on-plate' | 'below-bread-plate';
}

/** Guests who get the same dish in every course, hence the same cover and the same steps. */
export interface Variation {
    readonly index: number;
    readonly count: number;
    /** One dish a course; `undefined` where a course feeds them nothing. */
    readonly dishes: readonly (Dish | undefined)[];
    readonly groups: readonly GuestGroup[];
    /** How many of each group get exactly these dishes; only groups that guests are counted for. */
    readonly dealt: readonly { readonly group: GuestGroup; readonly count: number }[];
    /** `Grilled sirloin` where it differs from the others, else `all guests`. */
    readonly label: string;
    readonly cover: Cover;
    readonly steps: readonly Step[];
}

// ------------------------------------------------------------------ the table, step by step
/** Something standing at one cover. */
export interface TableItem {
    /** Stable within a variation: `2 soup-spoon`, `bread bread-plate`, `water water-glass`. */
    readonly id: string;
    readonly piece: string;
    readonly place: 'left' | 'right' | 'above' | 'centre' | 'bread' | 'saucer' | 'glasses' | 'napkin';
    /** Course it belongs to; -1 for what is not of a course (bread, water, napkin, service plate). */
    readonly course: number;
    readonly sort:
        | 'flatware'
        | 'vessel'
        | 'underliner'
        | 'glass'
        | 'bread'
        | 'service-plate'
        | 'napkin'
        | 'salt-and-pepper'
        | 'cup';
}

/** One movement of the service at one cover, and what stands there after it. */
export interface Step {
    readonly index: number;
    readonly sort:
        'seated' | 'bring' | 'serve' | 'eat' | 'clear' | 'crumb' | 'coffee' | 'toast' | 'speech' | 'farewell';
    readonly course: number;
    readonly title: string;
    readonly brought: readonly TableItem[];
    /** Pieces in use in this step. */
    readonly used: readonly TableItem[];
    readonly cleared: readonly TableItem[];
    /** On the table when the step is over. */
    readonly standing: readonly TableItem[];
    /** No plate stands before the guest when the step is over. */
    readonly bare: boolean;
}

// ------------------------------------------------------------------ what was looked up
/** A dish's place in the whole: the kinds it descends from and what it is served in, as stated or as its kind says. */
export interface DishFacts {
    readonly dish: Dish;
    readonly course: Course;
    readonly kind?: Kind;
    readonly vessel?: Piece;
    readonly vesselHow: 'stated' | 'kind' | 'none';
    /** The underliner: stated, else the one its vessel wants; absent where none is to be had or none is wanted. */
    readonly underliner?: Piece;
    readonly wantsUnderliner: boolean;
    /** What it is wanted at in front of the guest, °C: stated, else undefined. */
    readonly wanted?: number;
    readonly isHot: boolean;
    readonly isCold: boolean;
}

/** A drink of the evening with its kind looked up. */
export interface PourFacts {
    readonly pour: Pour;
    /** The course it is poured with; -1 for water. */
    readonly course: number;
    readonly dish?: Dish;
    readonly kind?: Kind;
    readonly glass?: Piece;
    /** Share by volume, 0–1: stated, else the kind's; undefined where neither says. */
    readonly strength?: number;
}

// ------------------------------------------------------------------ stock and drinks
export type { Bottles, PourNeed } from './drinks/types.js';
export type { PieceCount, PullLine } from './stock/types.js';

/** Everything derived. `courses`, `facts` and `servings` run in the menu's order. What is costly is worked out when asked for. */
export interface Service {
    readonly groups: readonly GuestGroup[];
    readonly guestCount: number;
    readonly setFor: number;
    readonly servings: readonly CourseServing[];
    /** Bread as a serving of its own: who gets which bread. */
    readonly bread?: {
        readonly bread: Bread;
        readonly serving: CourseServing;
        readonly plate?: Piece;
        readonly spreader?: Piece;
        readonly from: number;
        readonly until: number;
    };
    readonly coffee?: { readonly coffee: Coffee; readonly cup?: Piece; readonly spoon?: Piece; readonly after: number };
    readonly facts: readonly DishFacts[];
    readonly pours: readonly PourFacts[];
    readonly variations: readonly Variation[];
    /** Worked out when asked for, like all that follows. */
    readonly counts: readonly PieceCount[];
    readonly pull: readonly PullLine[];
    /** Washing in between, what is done about what is short, racks, linen and equipment. */
    readonly stock: Stock;
    readonly supplies: Supplies;
    /** By title in the order poured, what is offered in a pour's place after it; water and pours without a measure left out. */
    readonly drinks: readonly PourNeed[];
    readonly water: readonly WaterNeed[];
    /** In the order of the variations. */
    readonly alcohol: readonly AlcoholEach[];
    /** Who sits where with which dishes, and how plates are marked. Worked out when asked for. */
    readonly seats: Seats;
    /** What carries which allergen, in the words of the code in force. Worked out when asked for. */
    readonly allergens: AllergenMatrix;
    /** Every table with its seats, in the order of the text, whether the room has measures or not. Worked out when asked for. */
    readonly tables: readonly TableToPlace[];
    /** Where every piece of each variation's cover lies, alone and on the tables. Worked out when asked for. */
    readonly coverGeometry: readonly CoverGeometry[];
    /** The room laid out; absent where its measures are not stated. Worked out when asked for. */
    readonly room?: RoomLayout;
    /** The service simulated; absent where guests, room or team are not stated. Worked out when asked for. */
    readonly run?: Run;
    /** Vessels that are warmed for their course, first things first; empty where no run sheet tells when they are wanted. */
    readonly warming: readonly WarmingLoad[];
    /** What hot and cold things are like in front of their guests. Worked out when asked for. */
    readonly heat: Heat;
    /** When each drink has to be put in the cold, in the order poured. Worked out when asked for. */
    readonly chilling: readonly Chilling[];
    /** Setting up and striking; absent without the hour of seating, or where there is neither a team nor a task. Worked out when asked for. */
    readonly preparations?: Preparations;
    /** Guests to whom a pour is offered that they may not have, with nothing in its place that they may. */
    readonly refusedPours: readonly RefusedPour[];
    readonly refusedCoffee: readonly RefusedCoffee[];
    /** Allergens that reach guests who must not meet them, over all courses, bread, sauces, pours and coffee. */
    readonly reaches: readonly {
        readonly group: GuestGroup;
        /** Guests of the group whom it reaches. */
        readonly count: number;
        readonly conflict: Conflict;
        readonly course: number;
    }[];
}
