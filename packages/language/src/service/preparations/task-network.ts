/** Tasks as a network for the scheduler, and what comes back as times of tasks. */
import { criticalPath, type CriticalPath } from '../run/critical-path.js';
import { longestFirst, schedule, type Schedule } from '../run/engine.js';
import { durationOf, precedence, type Activity, type Network } from '../run/network.js';
import type { Pool, TaskDraft } from './drafts.js';

export interface TaskNetwork extends Network {
    /** Index of the task that each activity is a part of; -1 for one that only holds others together. */
    readonly taskOf: readonly number[];
    /** min², of each activity. */
    readonly variance: readonly number[];
    /** Where each activity is done. */
    readonly tables: readonly (string | undefined)[];
}

/** Every part of every task is an activity, and so is the end of a task that others wait for as a whole. */
export function taskNetwork(drafts: readonly TaskDraft[], pools: readonly Pool[]): TaskNetwork {
    const activities: { -readonly [Key in keyof Activity]: Activity[Key] }[] = [];
    const taskOf: number[] = [];
    const variance: number[] = [];
    const tables: (string | undefined)[] = [];
    const add = (activity: Activity, task: number, spread = 0, table?: string): number => {
        taskOf.push(task);
        variance.push(spread);
        tables.push(table);
        return activities.push({ ...activity }) - 1;
    };
    const partsOf = drafts.map(({ parts }, task) =>
        parts.map(({ minutes, pool, units, release, variance: spread, table }) =>
            add({ duration: minutes, pool, units, release }, task, spread, table),
        ),
    );
    const wholes = new Map<number, number>();
    const wholeOf = (task: number): number => {
        const known = wholes.get(task);
        if (known !== undefined) {
            return known;
        }
        const own = partsOf[task]!;
        const whole = own.length === 1 ? own[0]! : add({ duration: 0, after: own }, -1);
        wholes.set(task, whole);
        return whole;
    };
    drafts.forEach(({ after }, task) => {
        const own = partsOf[task]!;
        own.forEach((activity, index) => {
            const links = after.flatMap(({ task: earlier, how }): number[] => {
                const others = partsOf[earlier]!;
                if (others.length === 0) {
                    return [];
                }
                switch (how) {
                    case 'whole':
                        return [wholeOf(earlier)];
                    case 'table':
                        return [others[index] ?? wholeOf(earlier)];
                    case 'share':
                        return shareOf(others, index, own.length);
                }
            });
            activities[activity]!.after = [...new Set(links)];
        });
    });
    return { activities, pools: pools.map(({ count }) => count), taskOf, variance, tables };
}

/** The parts of an earlier task that hold what the `index`-th of `count` parts needs of it. */
function shareOf(others: readonly number[], index: number, count: number): number[] {
    const from = Math.floor((index * others.length) / count);
    const to = Math.ceil(((index + 1) * others.length) / count);
    return others.slice(from, to);
}

/** The same work seen from its end: what came after comes before. Times run backwards from it. */
export function backwards(network: TaskNetwork): TaskNetwork {
    const after: number[][] = network.activities.map(() => []);
    network.activities.forEach(({ after: earlier = [] }, index) => {
        for (const link of earlier) {
            after[precedence(link).activity]!.push(index);
        }
    });
    const activities = network.activities.map(({ duration, pool, units }, index): Activity => ({
        duration,
        pool,
        units,
        after: after[index],
    }));
    return { ...network, activities };
}

/** Only some of its activities; the others are taken as done. */
export function only(network: TaskNetwork, kept: readonly number[], release?: number): TaskNetwork {
    const place = new Map(kept.map((activity, index) => [activity, index]));
    const activities = kept.map((index): Activity => {
        const activity = network.activities[index]!;
        const after = (activity.after ?? []).flatMap((link) => place.get(precedence(link).activity) ?? []);
        return { ...activity, after, release: release ?? activity.release };
    });
    return {
        activities,
        pools: network.pools,
        taskOf: kept.map((index) => network.taskOf[index]!),
        variance: kept.map((index) => network.variance[index]!),
        tables: kept.map((index) => network.tables[index]),
    };
}

export interface Scheduled {
    readonly network: TaskNetwork;
    readonly times: Schedule;
    /** Slack and critical chain with the people as they are: whoever does one thing after another can't do it before. */
    readonly chain: CriticalPath;
}

/** List scheduling, the longest way to the end first. @param until the window that slack is counted in, where it is longer than the work */
export function scheduleWork(network: TaskNetwork, until = -Infinity): Scheduled {
    const times = schedule(network, longestFirst(network));
    return { network, times, chain: criticalPath(withPeople(network, times, until)) };
}

/** The network with each person's work in its order, and its end held at `until`. */
function withPeople({ activities, pools }: TaskNetwork, times: Schedule, until: number): Network {
    const after = activities.map((activity) => [...(activity.after ?? [])]);
    const last = new Map<string, number>();
    const inOrder = activities
        .map((_, index) => index)
        // What takes no time holds nobody up, and its place among others of the moment is anybody's.
        .filter((index) => activities[index]!.pool !== undefined && times.end[index]! > times.start[index]!)
        .toSorted((a, b) => times.start[a]! - times.start[b]! || times.end[a]! - times.end[b]! || a - b);
    for (const index of inOrder) {
        for (const unit of times.together.get(index) ?? [times.unit[index]!]) {
            const person = `${activities[index]!.pool} ${unit}`;
            const before = last.get(person);
            if (before !== undefined) {
                after[index]!.push(before);
            }
            last.set(person, index);
        }
    }
    const end: Activity[] = Number.isFinite(until) ? [{ duration: 0, release: until }] : [];
    return {
        activities: [...activities.map((activity, index) => ({ ...activity, after: after[index] })), ...end],
        pools,
    };
}

/** Activities that come one after the other, min and min². */
export interface Chain {
    readonly mean: number;
    readonly variance: number;
}

/** Mean and variance of the longest chain; of several as long, of the one that is least certain. @param from when it can begin */
export function longestChain({ network, times }: Scheduled, from = 0): Chain {
    const { activities } = withPeople(network, times, -Infinity);
    const { critical, earliestStart, finish } = criticalPath({ activities, pools: network.pools });
    const variance = new Map<number, number>();
    for (const index of critical) {
        const binding = (activities[index]!.after ?? [])
            .map((link) => precedence(link).activity)
            .filter((before) => {
                const end = earliestStart[before]! + durationOf(activities[before]!);
                return variance.has(before) && Math.abs(end - earliestStart[index]!) < NOISE;
            });
        const sum = network.variance[index]! + Math.max(0, ...binding.map((before) => variance.get(before)!));
        variance.set(index, sum);
    }
    return { mean: Math.max(0, finish - from), variance: Math.max(0, ...variance.values()) };
}

/** Minutes that binary fractions lose. */
const NOISE = 1e-6;
