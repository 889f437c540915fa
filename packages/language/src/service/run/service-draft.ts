/** A service network in the making, and how far every table has come in it. */
import { keepCompiled } from '../../keep-compiled.js';
import type { Draws } from './draws.js';
import type { Evening } from './evening.js';
import type { Serving } from './serving-a-course.js';
import { WorkNetwork, type Tag } from './work-network.js';
import type { Workforce } from './workforce.js';

/** The activities of one course at one table. */
export interface TableRecord {
    /** Absent where its plates stand there already when guests sit. */
    readonly serving?: Serving;
    readonly eaten: number;
    readonly clearing: readonly number[];
    /** The first pour of the course. */
    readonly pour?: number;
}

/** How far a table has come. Times are those planned, when nobody waits for anybody. */
export interface Progress {
    /** What must be over before the next step. */
    readonly after: readonly number[];
    /** The last sign that it will be ready: once this has begun, `takes` min pass until all of `after` is over. */
    readonly begun: number;
    readonly takes: number;
    /** An earlier sign: once its guests are served, so long until all of `after` is over. */
    readonly served?: { readonly activity: number; readonly takes: number };
    /** The last step and the time it takes. */
    readonly last: { readonly activity: number; readonly takes: number };
}

export class ServiceDraft {
    readonly network: WorkNetwork;
    /** The moment all guests sit, 0; of an evening that runs, the one from which it goes on. */
    readonly seated: number;
    readonly progress: Progress[];
    /** By course, then by table; `undefined` where the table gets nothing of the course. */
    readonly courses: (TableRecord | undefined)[][] = [];

    /** @param notBefore before which nobody is free: what stands when guests sit is being set */
    constructor(
        readonly evening: Evening,
        readonly workforce: Workforce,
        readonly draws: Draws,
        readonly notBefore: number,
    ) {
        this.network = keepCompiled(new WorkNetwork(workforce.pools));
        this.seated = this.network.add(wait(-1), { duration: 0, release: evening.underway?.at ?? 0 });
        this.progress = evening.tables.map(() => this.stillFrom(this.seated, 0));
    }

    eachTable(act: (table: number, rank: number) => void): void {
        this.workforce.order.forEach(act);
    }

    /** Pool of the servers whose table it is. */
    serversOf(table: number): number {
        return this.workforce.stationOf[table]!;
    }

    /** The next thing done at a table once it is ready for it. */
    step(table: number, rank: number, tag: Tag, duration: number, pool = this.serversOf(table)): number {
        const progress = this.progress[table]!;
        const activity = this.network.add(tag, { duration, after: progress.after, pool }, { rank });
        this.progress[table] = {
            ...progress,
            after: [activity],
            takes: progress.takes + duration,
            served: progress.served && { ...progress.served, takes: progress.served.takes + duration },
            last: { activity, takes: duration },
        };
        return activity;
    }

    /** The whole room waits for one thing. */
    hold(activity: number, takes: number): void {
        this.progress.fill(this.stillFrom(activity, takes));
    }

    private stillFrom(activity: number, takes: number): Progress {
        return { after: [activity], begun: activity, takes, last: { activity, takes } };
    }
}

/** A moment, or a time that nobody works at. */
export function wait(course: number, table = -1): Tag {
    return { sort: 'wait', course, table, count: 0 };
}
