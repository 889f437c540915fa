/**
 * What the simulation of a service is given: plain numbers without places in the text, so that its answer is kept while they
 * stay the same. Times in min, those of the day after guests are seated; lengths in mm.
 */
import type { Pace } from './pace.js';

export interface Evening {
    /** In the order of the room. */
    readonly tables: readonly EveningTable[];
    /** In the order of the menu. */
    readonly courses: readonly EveningCourse[];
    readonly speeches: readonly EveningSpeech[];
    readonly coffee?: { readonly after: number };
    readonly isWaterPouredBeforeSeating: boolean;
    readonly isWinePouredFirst: boolean;
    readonly isClearedOneByOne: boolean;
    readonly team: Team;
    readonly pace: Pace;
    /** Of an evening that runs: from when the rest of it is worked out, and the first course that is still to come. */
    readonly underway?: { readonly at: number; readonly next: number };
}

export interface EveningTable {
    readonly name: string;
    readonly guests: number;
    /** The way from the pass, mm. */
    readonly fromPass: number;
    /** One a course. */
    readonly courses: readonly TableWork[];
    /** Guests who take coffee, and the pieces it comes with. */
    readonly coffee: { readonly guests: number; readonly pieces: number };
    /** Water glasses. */
    readonly waters: number;
    /** For every toast and speech of the menu, the glasses topped up for it. */
    readonly toasts: readonly number[];
}

/** What one course asks of the people at one table. */
export interface TableWork {
    /** Index of the dish of every guest who gets one, in the order of the seats. */
    readonly plates: readonly number[];
    /** Pieces and glasses laid after the table is cleared of the course before. */
    readonly pieces: number;
    /** Pieces laid just before the plates, because they are warm or cold. */
    readonly temperedPieces: number;
    /** Glasses of the first pour. */
    readonly glasses: number;
    /** Wines that the host tastes here. */
    readonly tastes: number;
    /** For each further round while the course is eaten, the glasses poured. */
    readonly rounds: readonly number[];
    /** Guests who are offered bread. */
    readonly bread: number;
}

export interface EveningCourse {
    /** From a table's last guest served until it may be cleared. */
    readonly lasts: number;
    /** How much shorter or longer that may be. */
    readonly spread: number;
    /** First plate set down not before. */
    readonly startsAt?: number;
    /** Standing when guests sit: how long before. */
    readonly standsBefore?: number;
    /** The table is crumbed before it. */
    readonly isCrumbed: boolean;
    /** In the menu's order. */
    readonly dishes: readonly EveningDish[];
}

export interface EveningDish {
    /** Time for one plate at each station of a line, where the dish says; else the line's. */
    readonly stations?: readonly number[];
    /** Plated before the call and kept. */
    readonly isAhead: boolean;
}

export interface EveningSpeech {
    /** Index in the menu's toasts and speeches. */
    readonly speech: number;
    readonly isToast: boolean;
    /** Course after whose clearing it is held, -1 before the first; absent where only a time is given. */
    readonly after?: number;
    /** Held after the coffee of the course too: it is told to come before the next. */
    readonly isBeforeNext: boolean;
    readonly at?: number;
    readonly lasts: number;
    /** Course whose first pour the toast is drunk with; where it follows a course, it waits for every glass, topped up or not. */
    readonly pour?: number;
}

/** How many there are of each, and how the lines plate. */
export interface Team {
    readonly captains: number;
    readonly servers: number;
    readonly runners: number;
    /** None where the team names none: plates are then taken to be ready when they are called. */
    readonly lines: number;
    /** Time of one plate at each station of every line. */
    readonly stations: readonly number[];
    /** What the lines are called: `plating line`, or `plater` where platers work alone. */
    readonly lineRole: 'plating line' | 'plater';
    readonly sommeliers: number;
    readonly bussers: number;
}
