/**
 * The resolved plan: what the texts say, with units turned into computing units and names ready to be looked up.
 * Plain immutable values; no syntax, no framework. Parts that are absent or broken in the text are `undefined`.
 */
import type { Contains, Cupboard, Diet, Eaten, Kind, LocalCode, Piece, Substance } from './cupboard.js';
import type { CustomName, CustomValueOf } from './customs.js';
import type { Count, Named, Origin, Text } from './origin.js';
import type { Dimension, Quantity, UnitName } from './quantity.js';
import type { RecipeFacts } from './recipe.js';

// ------------------------------------------------------------------ event and guests
export interface Event {
    readonly title: string;
    readonly titleOrigin: Origin;
    /** The whole block. */
    readonly origin: Origin;
    readonly date?: CalendarDate;
    readonly zone?: Text;
    readonly doors?: ClockTime;
    readonly seated?: ClockTime;
    /** When the last guest is to have gone. */
    readonly ends?: ClockTime;
    /** What is rented for this event, beside what the house owns. */
    readonly rents: readonly Stock[];
    readonly revision?: Count;
    readonly reference?: Text;
    readonly notice?: Text;
    readonly replications?: { readonly count: number; readonly seed: number; readonly origin: Origin };
    readonly crew?: { readonly count: number; readonly dish?: Text; readonly at?: ClockTime; readonly origin: Origin };
    readonly guests?: Guests;
    readonly code?: Named;
    readonly waivers: readonly Waiver[];
}

/** An ISO date, such as `2026-10-17`; `iso` is absent where the text names no real day. */
export interface CalendarDate {
    readonly iso?: string;
    readonly written: string;
    readonly origin: Origin;
}

/** Minutes since midnight of the event's day; absent where the text names no real time. */
export interface ClockTime {
    readonly minutes?: number;
    readonly written: string;
    readonly origin: Origin;
}

export interface Guests {
    readonly expected: Count;
    readonly guaranteed?: Count;
    readonly setFor?: Count;
    readonly rows: readonly GuestRow[];
    readonly origin: Origin;
}

/** Disjoint guests inside the total; every need on the row holds for each of them. */
export interface GuestRow {
    readonly count: Count;
    readonly needs: readonly Need[];
    readonly seat?: Seat;
    readonly origin: Origin;
}

export type Need =
    | { readonly sort: 'children'; readonly origin: Origin }
    | { readonly sort: 'without'; readonly what: readonly Named[]; readonly origin: Origin }
    | { readonly sort: 'diet'; readonly diet: Named; readonly origin: Origin };

export interface Seat {
    readonly table: Named;
    readonly seat?: Count;
    readonly origin: Origin;
}

/** A guest of the guest list. One with needs counts as a row of its own unless a seated row already speaks of that seat. */
export interface NamedGuest {
    readonly name: Text;
    readonly seat?: Seat;
    readonly needs: readonly Need[];
    readonly chooses: readonly Text[];
    readonly origin: Origin;
}

// ------------------------------------------------------------------ menu
export interface Menu {
    readonly origin: Origin;
    /** The word `menu`. */
    readonly head: Origin;
    /** In the order written, which is the order served. */
    readonly courses: readonly Course[];
    readonly bread?: Bread;
    readonly coffee?: Coffee;
    readonly water?: Water;
    readonly speeches: readonly Speech[];
    readonly washes: readonly Wash[];
    readonly lay?: Lay;
    readonly waivers: readonly Waiver[];
}

export interface Course {
    readonly kind: Named;
    /** The title, or the kind's name where the course has none. */
    readonly title: string;
    readonly index: number;
    /** `course soup "Roast squash soup"`: where findings about the whole course go. */
    readonly head: Origin;
    /** The whole block. */
    readonly origin: Origin;
    readonly lasts?: Lasts;
    /** When its first plate is to be set down. */
    readonly startsAt?: { readonly time: ClockTime; readonly origin: Origin };
    readonly preset?: { readonly before?: Quantity; readonly origin: Origin };
    /** At least one; a course without `dish` is one dish of its own kind. */
    readonly dishes: readonly Dish[];
    /** True where the text names dishes; false where the course itself is the dish. */
    readonly hasDishes: boolean;
    /** Pours of the whole course; a dish's own are in the dish. */
    readonly pours: readonly Pour[];
    readonly lay?: Lay;
    readonly waivers: readonly Waiver[];
}

export interface Lasts {
    readonly time: Quantity;
    readonly spread?: Quantity;
    readonly origin: Origin;
}

export interface Dish {
    readonly title: string;
    readonly kind: Named;
    readonly course: number;
    readonly index: number;
    readonly head: Origin;
    readonly origin: Origin;
    readonly who?: Who;
    readonly served: Served;
    /** Absent where the text leaves it to the kind. */
    readonly eaten?: Eaten;
    readonly eatenOrigin?: Origin;
    readonly contains?: Contains;
    readonly suits: readonly Named[];
    readonly recipe?: Text;
    readonly heldAt?: { readonly temperature: Quantity; readonly time?: Quantity; readonly origin: Origin };
    readonly leavesPass?: { readonly temperature: Quantity; readonly origin: Origin };
    readonly cookTo?: { readonly temperature: Quantity; readonly time?: Quantity; readonly origin: Origin };
    readonly reheat?: { readonly temperature: Quantity; readonly time?: Quantity; readonly origin: Origin };
    readonly cooled?: {
        readonly steps: readonly { readonly temperature: Quantity; readonly time: Quantity }[];
        readonly origin: Origin;
    };
    readonly measured?: { readonly temperature: Quantity; readonly after?: Quantity; readonly origin: Origin };
    readonly extra?: Count;
    readonly carried?: { readonly how: 'covered' | 'open'; readonly origin: Origin };
    /** Time for one plate at each station of a plating line. */
    readonly platedIn?: { readonly times: readonly Quantity[]; readonly origin: Origin };
    /** Plated before its call and kept there: a hot box, a cold shelf. */
    readonly platedAhead?: { readonly gear?: Named; readonly origin: Origin };
    readonly accompaniments: readonly Accompaniment[];
    readonly pours: readonly Pour[];
    readonly lay?: Lay;
    readonly waivers: readonly Waiver[];
}

/** Who gets a dish. Several needs must all hold. */
export type Who =
    | { readonly sort: 'rest'; readonly origin: Origin }
    | { readonly sort: 'everyone'; readonly origin: Origin }
    | {
          readonly sort: 'some';
          readonly count?: Count;
          readonly share?: Quantity;
          readonly needs: readonly Need[];
          readonly origin: Origin;
      };

export interface Served {
    readonly vessel?: VesselUse;
    /** The second vessel of `served in sorbet-coupe on dessert-plate`: what it stands on. */
    readonly under?: VesselUse;
    readonly temperature?: Quantity;
    readonly portion?: Quantity;
    readonly side?: { readonly side: 'left' | 'right'; readonly origin: Origin };
    readonly pouredAtTable?: { readonly gear?: Named; readonly origin: Origin };
    readonly raw?: { readonly how: 'raw' | 'undercooked'; readonly origin: Origin };
    /** The longest it may take from the cold, or the stove, to the guest. */
    readonly within?: { readonly time: Quantity; readonly origin: Origin };
    /** The `served …` clause. */
    readonly origin?: Origin;
}

export interface VesselUse {
    readonly piece: Named;
    readonly how: 'in' | 'on';
    readonly state?: 'warmed' | 'chilled';
    readonly to?: Quantity;
    readonly origin: Origin;
}

export interface Accompaniment {
    readonly sort: 'sauce' | 'garnish' | 'butter';
    readonly title?: string;
    readonly pouredAtTable?: { readonly gear?: Named; readonly origin: Origin };
    readonly passed: boolean;
    readonly leftOffFor: readonly Need[];
    readonly contains?: Contains;
    readonly waivers: readonly Waiver[];
    readonly head: Origin;
    readonly origin: Origin;
}

export interface Pour {
    readonly title: string;
    readonly titleOrigin: Origin;
    readonly amount?: Quantity;
    readonly glass?: Named;
    readonly temperature?: Quantity;
    readonly kind?: Named;
    readonly who?: Who;
    readonly refills?: Count;
    readonly toppedUpUntil?: Named;
    /** The glass is put on with its course instead of standing there when guests sit. */
    readonly brought: boolean;
    /** The host tastes a sip of each first bottle before guests are poured. */
    readonly tasted: boolean;
    readonly leftOffFor: readonly Need[];
    readonly contains?: Contains;
    readonly suits: readonly Named[];
    readonly strength?: Quantity;
    readonly bottles: readonly Quantity[];
    readonly chilledIn?: Named;
    /** Drinks offered in its place. */
    readonly instead: readonly Pour[];
    readonly waivers: readonly Waiver[];
    /** Title, amount and phrases, without the block. */
    readonly head: Origin;
    readonly origin: Origin;
}

export interface Bread {
    readonly from?: Named;
    readonly until?: Named;
    readonly plate?: Named;
    readonly piece?: Named;
    readonly contains?: Contains;
    readonly suits: readonly Named[];
    readonly recipe?: Text;
    readonly accompaniments: readonly Accompaniment[];
    /** Breads for some guests in place of the common one. */
    readonly dishes: readonly Dish[];
    readonly waivers: readonly Waiver[];
    /** `bread from … until …`, without the block. */
    readonly head: Origin;
    readonly origin: Origin;
}

export interface Coffee {
    readonly after: Named;
    readonly onRequest: boolean;
    readonly cup?: Named;
    readonly piece?: Named;
    readonly temperature?: Quantity;
    readonly contains?: Contains;
    readonly accompaniments: readonly Accompaniment[];
    readonly waivers: readonly Waiver[];
    readonly head: Origin;
    readonly origin: Origin;
}

export interface Water {
    readonly choices: readonly ('still' | 'sparkling')[];
    readonly pour: Pour;
    readonly origin: Origin;
}

export interface Speech {
    readonly sort: 'toast' | 'speech';
    readonly title?: string;
    readonly when?: { readonly when: 'after' | 'before'; readonly course: Named };
    readonly at?: ClockTime;
    readonly lasts?: Quantity;
    readonly pour?: Text;
    readonly origin: Origin;
}

/** Pieces of one course washed in time for a later one. */
export interface Wash {
    readonly piece: Named;
    readonly after: Named;
    readonly for: Named;
    readonly origin: Origin;
}

/** An explicit `lay …` clause: outermost first on the left and right, nearest the plate first above. */
export interface Lay {
    readonly left?: readonly Named[];
    readonly right?: readonly Named[];
    readonly above?: readonly Named[];
    readonly saucer?: readonly Named[];
    readonly breadPlate?: readonly Named[];
    readonly origin: Origin;
}

export interface Waiver {
    readonly rule: Named;
    readonly reason?: Text;
    readonly origin: Origin;
    /** The block it stands in: it silences the rule for findings inside. */
    readonly scope: Origin;
}

// ------------------------------------------------------------------ house, room, team
export interface House {
    readonly title: string;
    /** Absent where no house is in reach: then every custom has its default. */
    readonly origin?: Origin;
    readonly head?: Origin;
    readonly stock: readonly Stock[];
    readonly spares: readonly { readonly share: Quantity; readonly piece?: Named; readonly origin: Origin }[];
    readonly customs: readonly Custom[];
    readonly layingOrigin?: Origin;
    readonly washing: readonly WashLine[];
    readonly code?: Named;
    readonly settings: readonly RuleSetting[];
}

export interface Stock {
    readonly count: Count;
    readonly piece: Named;
    readonly holds: readonly { readonly count: number; readonly what: string; readonly origin: Origin }[];
    readonly origin: Origin;
}

/** One `name: value` of the house. Exactly one of `choice` and `figure` is there. */
export interface Custom {
    readonly name: Named;
    readonly choice?: Named;
    readonly figure?: Quantity;
    readonly per?: Named;
    readonly origin: Origin;
    readonly valueOrigin: Origin;
}

export type WashLine =
    | { readonly sort: 'rate'; readonly polish: boolean; readonly rate: Rate; readonly origin: Origin }
    | { readonly sort: 'figure'; readonly what: Named; readonly size: Quantity; readonly origin: Origin };

export interface Rate {
    readonly amount: number;
    readonly what: string;
    /** Minutes of one period: 60 for `per hour`. */
    readonly perMinutes: number;
    readonly written: string;
    readonly origin: Origin;
}

export interface RuleSetting {
    readonly rule: Named;
    readonly level: 'off' | Severity;
    readonly levelOrigin: Origin;
    readonly reason?: Text;
    readonly origin: Origin;
}

/** Gravest first. */
export type Severity = 'error' | 'warning' | 'info' | 'hint';

export interface Room {
    readonly title: string;
    readonly width?: Quantity;
    readonly depth?: Quantity;
    readonly tables: readonly Tables[];
    readonly temperature?: Quantity;
    readonly aisle?: Quantity;
    /** The wall on which plates come out of the kitchen, in its middle. */
    readonly pass?: { readonly wall: 'left' | 'right' | 'near' | 'far'; readonly origin: Origin };
    readonly head: Origin;
    readonly origin: Origin;
}

/** One `table T1 to T9: …` line. */
export interface Tables {
    readonly first: Named;
    readonly last?: Named;
    /** Every table of the range by name; one where no range is written. */
    readonly names: readonly string[];
    readonly shape: Named;
    readonly size: Quantity;
    readonly depth?: Quantity;
    readonly joined?: Count;
    readonly seats?: Count;
    readonly accessible?: Count;
    /** Its middle, from the left and the near wall; only of a single table. */
    readonly at?: { readonly x: Quantity; readonly y: Quantity };
    /** Its long side lies along the depth of the room. */
    readonly turned: boolean;
    readonly origin: Origin;
}

export interface Team {
    readonly roles: readonly {
        readonly role: Named;
        readonly count: Count;
        readonly rate?: Rate;
        /** Time for one plate at each station, in the order plates pass them. */
        readonly stations: readonly Quantity[];
        readonly origin: Origin;
    }[];
    readonly origin: Origin;
}

/** What is to be done before guests come, or after they have gone. */
export interface Task {
    readonly when: 'setup' | 'strike';
    readonly title: Text;
    readonly takes?: Quantity;
    readonly between?: { readonly least: Quantity; readonly most: Quantity };
    /** Titles of tasks that must be done first. */
    readonly after: readonly Text[];
    /** The whole phrase, `after "Tables" and "Chairs"`. */
    readonly afterOrigin?: Origin;
    readonly by?: { readonly count: Count; readonly role: Named };
    readonly origin: Origin;
}

// ------------------------------------------------------------------ what was read, and what it adds up to
/** The sort of thing a name means. Kinds of course and of dish are one namespace. */
export type NameSort =
    | 'piece'
    | 'kind'
    | 'drink'
    | 'kind-or-drink'
    | 'substance'
    | 'diet'
    | 'code'
    | 'custom'
    | 'choice'
    | 'rule'
    | 'course'
    | 'table'
    | 'shape'
    | 'role'
    | 'dish-title'
    | 'task-title'
    | 'pour-title';

/** One place where a name stands. The editor's definition, references and rename, and `unknown-name`, work on these. */
export interface Occurrence {
    readonly sort: NameSort;
    readonly name: string;
    readonly role: 'declares' | 'uses';
    readonly origin: Origin;
    /** For `choice`: the custom it answers. For a range of tables: its last name. */
    readonly of?: string;
}

/** Something written in a form the language reads but does not keep: one message and one fix each. */
export interface Written {
    readonly form:
        | 'decimal-comma'
        | 'fraction'
        | 'twelve-hour-time'
        | 'time-with-h'
        | 'bare-time'
        | 'date-in-words'
        | 'date-with-slashes'
        | 'table-hyphen'
        | 'unit-spelling'
        | 'preposition-as-unit'
        | 'no-such-day'
        | 'no-such-time'
        | 'unclosed-text'
        | 'unclosed-comment'
        | 'not-whole';
    readonly written: string;
    /** The form the language keeps; several where the text can mean several; none where only the writer can tell. */
    readonly suggestions: readonly string[];
    readonly origin: Origin;
}

/** A figure that needs a unit and has none, or one that measures something else. */
export interface UnitProblem {
    readonly written: string;
    readonly value: number;
    readonly wanted: readonly Dimension[];
    readonly unit?: UnitName;
    readonly likely: readonly UnitName[];
    /** Where the unit goes: the figure itself. */
    readonly origin: Origin;
}

/** A clause that may stand once and stands again. */
export interface Repeat {
    readonly clause: string;
    readonly first: Origin;
    readonly again: Origin;
}

/** A block whose first word is mistyped. */
export interface Misspelt {
    readonly word: string;
    readonly meant: string;
    readonly origin: Origin;
}

/** A word of a piece or a code that nothing reads: mistyped, or a fact of the house's own. */
export interface Stranger {
    readonly word: string;
    readonly of: 'piece' | 'code';
    /** What stands under it; absent for a bare word. */
    readonly size?: Quantity;
    readonly origin: Origin;
}

export interface SyntaxFinding {
    readonly message: string;
    readonly hint?: string;
    /** Words that, written in their place, would mend it. */
    readonly suggestion?: string;
    readonly origin: Origin;
}

/** Everything one file says, before any other file is looked at. */
export interface Reading {
    readonly file: string;
    readonly uses: readonly Text[];
    readonly events: readonly Event[];
    readonly menus: readonly Menu[];
    readonly houses: readonly House[];
    readonly rooms: readonly Room[];
    readonly teams: readonly Team[];
    readonly tasks: readonly Task[];
    readonly guests: readonly NamedGuest[];
    readonly pieces: readonly Piece[];
    /** Kinds and drinks, with only what they state themselves. */
    readonly kinds: readonly Kind[];
    readonly substances: readonly Substance[];
    readonly diets: readonly Diet[];
    readonly codes: readonly LocalCode[];
    readonly occurrences: readonly Occurrence[];
    readonly written: readonly Written[];
    readonly unitProblems: readonly UnitProblem[];
    readonly repeats: readonly Repeat[];
    readonly misspelt: readonly Misspelt[];
    readonly strangers: readonly Stranger[];
    readonly syntax: readonly SyntaxFinding[];
}

/** A `use` that leads nowhere. */
export interface UseProblem {
    readonly sort: 'missing' | 'outside' | 'cycle' | 'unreadable';
    readonly path: string;
    /** For a circle: the files on the way round, the first again last. */
    readonly chain?: readonly string[];
    readonly why?: string;
    readonly origin: Origin;
}

/** One file with everything it uses, brought together. */
export interface Plan {
    /** The file asked for. */
    readonly file: string;
    /** It and every file it uses, nearest first. */
    readonly readings: readonly Reading[];
    readonly event?: Event;
    readonly menu?: Menu;
    readonly house: House;
    readonly room?: Room;
    readonly team?: Team;
    /** Only while asking how a running evening goes on: when the last plate of a course was cleared, and which. */
    readonly underway?: { readonly minutes: number; readonly done: number };
    /** Tasks of every file in reach, in the order of the files. */
    readonly tasks: readonly Task[];
    readonly seating: readonly NamedGuest[];
    readonly cupboard: Cupboard;
    /** The code in force: the event's, else the house's, else the US model code. */
    readonly code: LocalCode;
    readonly customs: Customs;
    /** Every waiver of the plan with its block. */
    readonly waivers: readonly Waiver[];
    readonly recipes: readonly RecipeFacts[];
    readonly useProblems: readonly UseProblem[];
    /** Things declared twice at one level. */
    readonly twice: readonly {
        readonly what: string;
        readonly name?: string;
        readonly first: Origin;
        readonly again: Origin;
    }[];
}

/** The customs in force, every one of `customSpecs`: the house's word or the default. */
export type Customs = { readonly [Name in CustomName]: CustomInForce<CustomValueOf<Name>> };

export interface CustomInForce<Value = string | number> {
    /** A choice, or a figure in the computing unit. */
    readonly value: Value;
    /** Where the house says so; absent for a default. */
    readonly origin?: Origin;
}
