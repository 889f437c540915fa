import type { CustomName } from '../../plan/customs.js';

/** The run sheet: the service simulated. Times are minutes after guests are seated; before that they are negative. */

export interface Span {
    readonly first: number;
    readonly last: number;
}

export interface Run {
    /** In the order of the room. */
    readonly tables: readonly RunTable[];
    readonly courses: readonly CourseRun[];
    /** In the order of the menu's toasts and speeches; those that name neither a course nor a time are left out. */
    readonly speeches: readonly SpeechRun[];
    readonly people: readonly PersonRun[];
    /** Everything anybody does, by start, then person; what one person does at one table without a break is one task. */
    readonly tasks: readonly RunTask[];
    /** When the first glass of the drinks of each course is begun, by its index in the menu. */
    readonly pouringStarts: ReadonlyMap<number, number>;
    /** What holds the evening up most, with what one more of it would save. */
    readonly bottleneck?: Bottleneck;
    /** The last table's last cover cleared, coffee served. */
    readonly over: number;
    /** Customs for rates that no source gives and the house does not state, as the sheets must say. */
    readonly assumed: readonly CustomName[];
    /** Only where the event asks for them. */
    readonly replications?: Replications;
}

/** The evening run with other eating and walking times. */
export interface Replications {
    /** How many the plan asks for, and how many were run. */
    readonly asked: number;
    readonly count: number;
    readonly seed: number;
    /** How early or late a course may start. */
    readonly window: number;
    readonly courses: readonly {
        /** Index in the menu; the number of courses for coffee. */
        readonly course: number;
        /** When its first plate is due: stated, else as planned. */
        readonly due: number;
        /** Share of the evenings in which it starts within the window. */
        readonly chance: number;
        /** Nine starts of ten lie between. */
        readonly starts: Span;
    }[];
    readonly over: Span;
}

export interface RunTable {
    readonly name: string;
    readonly guests: number;
    /** Index of the server (in `people`) whose station it is. */
    readonly server: number;
    /** Walking distance from the pass, mm. */
    readonly fromPass: number;
}

export interface CourseRun {
    /** Index in the menu; the number of courses for coffee. */
    readonly course: number;
    /** The captain's call to the kitchen. */
    readonly fired: number;
    readonly plated: Span;
    readonly leftPass: Span;
    /** Plates set down before guests. */
    readonly served: Span;
    /** Tables that have finished eating. */
    readonly finished: Span;
    readonly cleared: Span;
    readonly tables: readonly TableCourse[];
    /** In the menu's order of dishes. */
    readonly dishes: readonly DishRun[];
}

export interface TableCourse {
    readonly table: string;
    readonly plated: Span;
    readonly leftPass: Span;
    readonly served: Span;
    readonly finished: number;
    readonly cleared: Span;
    /** When the glasses of its first pour are full; absent where nothing is poured with it. */
    readonly poured?: number;
}

export interface SpeechRun {
    /** Index in the menu's toasts and speeches. */
    readonly speech: number;
    /** As the plan states it. */
    readonly at?: number;
    /** When it is held: not before the course it follows is cleared. */
    readonly start: number;
    readonly end: number;
    /** When every glass of the toast is full. */
    readonly poured?: number;
}

/** What the first guest served and the last guest of the slowest table go through; the same plate where only one is served. */
export interface DishRun {
    readonly dish: number;
    readonly first: PlateRun;
    readonly last: PlateRun;
}

/** One plate's way. `plated` ≤ `leftPass` ≤ `served`. */
export interface PlateRun {
    readonly table: string;
    readonly plated: number;
    readonly leftPass: number;
    readonly served: number;
}

export interface PersonRun {
    /** `server 3`, `runner 1`, `plating line 2`, `captain`. */
    readonly name: string;
    readonly role: string;
    /** Minutes at work and free between the first and the last task. */
    readonly busy: number;
    readonly idle: number;
}

export interface RunTask {
    /** Index in `people`. */
    readonly person: number;
    readonly sort:
        | 'call'
        | 'plate'
        | 'carry'
        | 'serve'
        | 'pour'
        | 'bread'
        | 'clear'
        | 'crumb'
        | 'relay'
        | 'coffee'
        | 'seat'
        | 'toast'
        | 'speech';
    readonly course: number;
    readonly table?: string;
    readonly start: number;
    readonly end: number;
    /** Plates, guests or glasses handled. */
    readonly count: number;
}

export interface Bottleneck {
    readonly role: string;
    /** Share of the service they are at work, 0–1. */
    readonly busy: number;
    /** For one more of each role: how much earlier the evening is over and how much shorter the longest wait of a table, min. */
    readonly oneMore: readonly { readonly role: string; readonly sooner: number; readonly shorterWait: number }[];
}
