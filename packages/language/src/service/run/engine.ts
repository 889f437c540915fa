/**
 * The one scheduler of the project: a discrete-event simulation of a network of activities and the people and lines that do them.
 * The service, setting up and striking run on it, and so do the published examples it is tested with.
 */
import { keepCompiled } from '../../keep-compiled.js';
import { Heap } from '../heap.js';
import { durationOf, inOrder, precedence, type Network } from './network.js';

export interface Schedule {
    /** Of each activity; not a number where it waits in a circle, or for more units than its pool has. */
    readonly start: Float64Array;
    readonly end: Float64Array;
    /** When it could have started, had somebody been free. */
    readonly ready: Float64Array;
    /** Number of the unit of its pool that does it, the lowest where there are several; -1 where it needs none. */
    readonly unit: Int32Array;
    /** Every unit of an activity that takes several. */
    readonly together: ReadonlyMap<number, readonly number[]>;
    /** The latest end; 0 where nothing is done. */
    readonly finish: number;
}

/**
 * List scheduling: whenever a unit of a pool is free and activities are ready for it, the first of them in `order` starts
 * (the lower number first, then the order written). What has started is not interrupted. One that takes more units than
 * are free lets the next that fits go ahead. The unit that has been free longest is taken.
 *
 * A line is a unit that takes its next piece when its first station is free; pieces pass the other stations in that order,
 * with room to wait between them.
 *
 * O(n log n) in activities and links; beyond it only where activities take several units and don't fit.
 */
export function schedule(network: Network, order?: ArrayLike<number>): Schedule {
    return keepCompiled(new Simulation(network, order)).run();
}

/** An order for `schedule`: the longest way to the end first; without links, the longest activity first. */
export function longestFirst(network: Network): Float64Array {
    const { activities } = network;
    const toEnd = new Float64Array(activities.length);
    for (const index of inOrder(network).order.toReversed()) {
        const activity = activities[index]!;
        toEnd[index]! += durationOf(activity);
        for (const link of activity.after ?? []) {
            const { activity: earlier, from, lag } = precedence(link);
            // Kept without the earlier one's own time, which is added when its turn comes.
            const beyond = lag + toEnd[index]! - (from === 'start' ? durationOf(activities[earlier]!) : 0);
            toEnd[earlier] = Math.max(toEnd[earlier]!, beyond);
        }
    }
    return toEnd.map((time) => -time);
}

interface Pool {
    /** Activities ready for it, by order. */
    readonly waiting: Heap;
    /** Units free, the longest free first. */
    readonly free: number[];
    readonly firstUnit: number;
    /** For each unit that is a line, when each of its stations is free. */
    readonly stations: number[][];
}

class Simulation {
    private readonly start: Float64Array;
    private readonly end: Float64Array;
    private readonly ready: Float64Array;
    private readonly unit: Int32Array;
    private readonly together = new Map<number, readonly number[]>();
    private readonly waitsFor: Int32Array;
    /** Links by the activity they come from, chained through `nextLink`. */
    private readonly firstLink: Int32Array;
    private readonly nextLink: number[] = [];
    private readonly linkTo: number[] = [];
    private readonly linkLag: number[] = [];
    private readonly linkFromStart: boolean[] = [];
    private readonly pools: Pool[];
    private readonly poolOfUnit: number[] = [];
    /** Units becoming free, numbered over all pools, then activities becoming ready. */
    private readonly events = keepCompiled(new Heap());
    private readonly unitCount: number;
    /** Pools where something may start. */
    private readonly touched = new Set<Pool>();

    constructor(
        private readonly network: Network,
        private readonly order: ArrayLike<number> | undefined,
    ) {
        const { activities } = network;
        const count = activities.length;
        this.start = new Float64Array(count).fill(NaN);
        this.end = new Float64Array(count).fill(NaN);
        this.ready = new Float64Array(count);
        this.unit = new Int32Array(count).fill(-1);
        this.waitsFor = new Int32Array(count);
        this.firstLink = new Int32Array(count).fill(-1);
        this.pools = network.pools.map((units, pool) => {
            const firstUnit = this.poolOfUnit.length;
            const free = Array.from({ length: units }, (_, unit) => unit);
            this.poolOfUnit.push(...free.map(() => pool));
            return { waiting: keepCompiled(new Heap()), free, firstUnit, stations: [] };
        });
        this.unitCount = this.poolOfUnit.length;
        for (let index = 0; index < count; index++) {
            const { after = [], release } = activities[index]!;
            this.ready[index] = release ?? (after.length > 0 ? -Infinity : 0);
            this.waitsFor[index] = after.length;
            for (const link of after) {
                this.addLink(index, link);
            }
            if (after.length === 0) {
                this.events.push(this.ready[index]!, this.unitCount + index);
            }
        }
    }

    private addLink(to: number, link: NonNullable<Network['activities'][number]['after']>[number]): void {
        const isPlain = typeof link === 'number';
        const activity = isPlain ? link : link.activity;
        const place = this.linkTo.length;
        this.linkTo.push(to);
        this.linkLag.push(isPlain ? 0 : link.lag);
        this.linkFromStart.push(!isPlain && link.from === 'start');
        this.nextLink.push(this.firstLink[activity]!);
        this.firstLink[activity] = place;
    }

    run(): Schedule {
        const { events, touched } = this;
        for (let now = events.firstKey; now !== undefined; now = events.firstKey) {
            // All that happens at this moment, before anybody is put to work.
            while (events.firstKey === now) {
                this.happen(events.pop(), now);
            }
            // A start can make others ready at once, which may come before those that wait: they happen first.
            for (let [pool] = touched; pool && events.firstKey !== now; [pool] = touched) {
                if (!this.startFirst(pool, now)) {
                    touched.delete(pool);
                }
            }
        }
        const finish = this.end.reduce((latest, end) => (end > latest ? end : latest), 0);
        const { start, end, ready, unit, together } = this;
        return { start, end, ready, unit, together, finish };
    }

    private happen(event: number, now: number): void {
        if (event < this.unitCount) {
            const pool = this.pools[this.poolOfUnit[event]!]!;
            pool.free.push(event - pool.firstUnit);
            this.touched.add(pool);
            return;
        }
        const index = event - this.unitCount;
        const activity = this.network.activities[index]!;
        if (activity.pool === undefined) {
            this.begin(index, now, now + durationOf(activity));
        } else {
            const pool = this.pools[activity.pool]!;
            pool.waiting.push(this.order?.[index] ?? 0, index);
            this.touched.add(pool);
        }
    }

    /** Starts the first waiting activity that fits the free units. @returns whether there was one */
    private startFirst(pool: Pool, now: number): boolean {
        const { waiting, free } = pool;
        if (free.length === 0 || waiting.size === 0) {
            return false;
        }
        const index = this.takeFirst(pool);
        if (index === undefined) {
            return false;
        }
        const { duration, units = 1 } = this.network.activities[index]!;
        const unit = free[0]!;
        const end = typeof duration === 'number' ? now + duration : passLine(pool, unit, duration, now);
        const freeAgain = typeof duration === 'number' ? end : now + (duration[0] ?? 0);
        if (units === 1) {
            free.shift();
            this.unit[index] = unit;
            this.events.push(freeAgain, pool.firstUnit + unit);
        } else {
            const taken = free.splice(0, units).toSorted((a, b) => a - b);
            this.unit[index] = taken[0]!;
            this.together.set(index, taken);
            for (const each of taken) {
                this.events.push(freeAgain, pool.firstUnit + each);
            }
        }
        this.begin(index, now, end);
        return true;
    }

    /** Takes the first that fits out of those that wait. */
    private takeFirst({ waiting, free }: Pool): number | undefined {
        const tooLarge: number[] = [];
        let first: number | undefined;
        while (first === undefined && waiting.size > 0) {
            const index = waiting.pop();
            if ((this.network.activities[index]!.units ?? 1) <= free.length) {
                first = index;
            } else {
                tooLarge.push(index);
            }
        }
        for (const index of tooLarge) {
            waiting.push(this.order?.[index] ?? 0, index);
        }
        return first;
    }

    private begin(index: number, now: number, end: number): void {
        this.start[index] = now;
        this.end[index] = end;
        for (let link = this.firstLink[index]!; link >= 0; link = this.nextLink[link]!) {
            const to = this.linkTo[link]!;
            const from = this.linkFromStart[link] ? now : end;
            this.ready[to] = Math.max(this.ready[to]!, from + this.linkLag[link]!);
            this.waitsFor[to]! -= 1;
            if (this.waitsFor[to] === 0) {
                this.events.push(this.ready[to], this.unitCount + to);
            }
        }
    }
}

/** @returns when a piece that enters a line now has passed its last station */
function passLine(pool: Pool, unit: number, times: readonly number[], now: number): number {
    const freeAt = (pool.stations[unit] ??= []);
    let time = now;
    times.forEach((each, station) => {
        time = Math.max(time, freeAt[station] ?? -Infinity) + each;
        freeAt[station] = time;
    });
    return time;
}
