/** A network of the scheduler whose activities know what they are. */
import type { Activity, Network } from './network.js';
import type { RunTask } from './types.js';

/** What an activity is; `wait` needs nobody: eating, or a moment that others wait for. */
export type Sort = RunTask['sort'] | 'wait';

export interface Tag {
    readonly sort: Sort;
    /** Index in the menu; -1 before the first, the number of courses for coffee. */
    readonly course: number;
    /** Index; -1 for the whole room. */
    readonly table: number;
    /** Plates, guests or glasses handled. */
    readonly count: number;
}

/** What comes first where several wait for one person: plates before anything else, and what can wait last. */
const URGENCY = [
    'carry',
    'serve',
    'plate',
    'toast',
    'speech',
    'call',
    'seat',
    'pour',
    'relay',
    'crumb',
    'clear',
    'coffee',
    'bread',
    'wait',
] as const satisfies readonly Sort[];
const RANK = Object.fromEntries(URGENCY.map((sort, index) => [sort, index])) as Record<Sort, number>;
/** Added for what is done when nothing else is to be done: bread, further rounds, plating ahead. */
const AT_LEISURE = URGENCY.length;

export interface Turn {
    /** Place of the table in the order of serving: of two tasks alike, the earlier course, then the earlier table comes first. */
    readonly rank?: number;
    /** Its table has begun to be served and is finished before another is begun. */
    readonly isBegun?: boolean;
    /** Left until nothing else waits. */
    readonly atLeisure?: boolean;
}

export class WorkNetwork implements Network {
    readonly activities: Activity[] = [];
    readonly order: number[] = [];
    readonly tags: Tag[] = [];

    constructor(readonly pools: readonly number[]) {}

    /** @returns its index */
    add(tag: Tag, activity: Activity, { rank = 0, isBegun = false, atLeisure = false }: Turn = {}): number {
        const urgency = 2 * (RANK[tag.sort] + (atLeisure ? AT_LEISURE : 0)) + (isBegun ? 0 : 1);
        this.tags.push(tag);
        this.order.push((urgency * 1000 + (tag.course + 1)) * 10_000 + rank);
        return this.activities.push(activity) - 1;
    }
}
