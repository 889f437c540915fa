/** Setting up and striking. Times are minutes after guests are seated, as they pass; before that they are negative. */
import type { TimeRange } from '../chilling/baths.js';

export interface Preparations {
    /** When the room must stand: the doors, or what is done for the guests before. */
    readonly doors: number;
    readonly setUp: SetUp;
    readonly strike: Strike;
    /** Vessels that are warmed for their course; empty where no run sheet tells when they are wanted. */
    readonly warming: readonly WarmingLoad[];
    /** Drinks to be put in the cold, first things first. */
    readonly chilling: readonly ChillingStart[];
    /** Rates that no source gives and the house does not state, as the sheets must say. */
    readonly assumed: readonly string[];
}

export interface SetUp {
    /** In order of their beginning. */
    readonly tasks: readonly PreparedTask[];
    /** Stated meal of the crew, or the one that is fitted in before the briefing. */
    readonly staffMeal?: Timed;
    readonly briefing?: Timed;
    readonly lineUp?: Timed;
    /** Everybody is free for the briefing. */
    readonly over: number;
    /** The first thing is begun; absent where there is nothing to do. */
    readonly begins?: number;
    readonly calls: readonly Call[];
    readonly roster: readonly Roster[];
    readonly chance: Chance;
    readonly circle?: Circle;
    readonly tooMany: readonly TooMany[];
    /** How long before the doors the house lets the team in; absent where it sets no limit. */
    readonly getIn?: number;
}

export interface Strike {
    readonly tasks: readonly PreparedTask[];
    /** The last guest has gone: as stated, else a while after the service is over. */
    readonly guestsGone: number;
    readonly isGoneStated: boolean;
    readonly over: number;
    /** By when the room must be clear; absent where nobody says. */
    readonly by?: number;
    /** When the people of each role have nothing left to do. */
    readonly leaves: readonly Call[];
    readonly roster: readonly Roster[];
    readonly chance: Chance;
    readonly circle?: Circle;
    readonly tooMany: readonly TooMany[];
}

/** Tasks that wait for each other, each after the one before it and the first after the last; `stated` as in `PreparedTask`. */
export type Circle = readonly { readonly title: string; readonly stated?: number }[];

/** A task that takes more people than there are, so that it is never begun. */
export interface TooMany {
    /** Index in the plan's tasks. */
    readonly stated: number;
    readonly role: string;
    readonly takes: number;
    readonly there: number;
}

export interface Timed {
    readonly start: number;
    readonly end: number;
}

export interface PreparedTask extends Timed {
    readonly title: string;
    /** Index in the plan's tasks; absent for what the plan does not state. */
    readonly stated?: number;
    /** What it comes to: `588 pieces at 5 s each`. */
    readonly because: string;
    /** Who does it, and how many of them at once at most. */
    readonly by: readonly { readonly role: string; readonly people: number }[];
    /** Minutes of work of all people together. */
    readonly work: number;
    /** How long it may slip, within the time there is, before the team has to be called earlier, or the strike is over later. */
    readonly slack: number;
    /** Nothing of it can slip. */
    readonly isCritical: boolean;
    /** Only where least and most are stated: (a + 4m + b) / 6 and ((b − a) / 6)², min and min². */
    readonly expected?: { readonly minutes: number; readonly variance: number };
}

/** What one person does, one thing after the other. */
export interface Roster {
    readonly role: string;
    /** From 1, among those of the role. */
    readonly number: number;
    readonly tasks: readonly (Timed & { readonly title: string; readonly tables: readonly string[] })[];
}

/** When people of a role are wanted, or free to go. */
export interface Call {
    readonly role: string;
    readonly count: number;
    /** The first of them, or the last to leave. */
    readonly at: number;
    /** Each of them, in the order of their numbers. */
    readonly each: readonly number[];
}

/** Whether it is done in time, as far as the tasks of uncertain length tell. */
export interface Chance {
    /** Of the longest chain of tasks: each as long as is to be expected, min, and its variance, min². */
    readonly mean: number;
    readonly variance: number;
    /** min that there are for it; absent where nothing limits it. */
    readonly available?: number;
    /** 0–1; absent where nothing limits it. */
    readonly inTime?: number;
}

/** What goes into one piece of gear that warms at once, for one course. */
export interface WarmingLoad extends Timed {
    readonly course: number;
    readonly piece: string;
    readonly pieces: number;
    /** °C, where the plan says. */
    readonly to?: number;
    /** `plate-warmer 2`; absent where the house has none that says what it holds. */
    readonly gear?: string;
    /** The last of its plates is wanted: `end` is earlier where a later course needs the gear. */
    readonly wantedUntil: number;
}

export interface ChillingStart {
    readonly title: string;
    readonly at: number;
    readonly way: string;
    readonly takes?: TimeRange;
    /** Absent where nobody counts them. */
    readonly bottles?: number;
}
