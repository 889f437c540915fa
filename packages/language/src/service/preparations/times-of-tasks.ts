/** From the times of parts to those of tasks and people. */
import type { Pool, TaskDraft } from './drafts.js';
import type { Scheduled } from './task-network.js';
import type { Call, PreparedTask, Roster } from './types.js';

export interface TimedPart {
    /** Index of the task; -1 for what everybody takes part in. */
    readonly task: number;
    readonly table?: string;
    readonly start: number;
    readonly end: number;
    readonly slack: number;
    readonly pool?: number;
    /** Numbers of the people in the pool. */
    readonly units: readonly number[];
}

/** The parts of a schedule with the minutes of the evening. @param turned the schedule runs backwards */
export function timedParts({ network, times, chain }: Scheduled, origin: number, turned = false): TimedPart[] {
    return network.taskOf.flatMap((task, index) => {
        const [from, to] = [times.start[index]!, times.end[index]!];
        if (task < 0 || Number.isNaN(from)) {
            return [];
        }
        const unit = times.unit[index]!;
        return [
            {
                task,
                table: network.tables[index],
                start: turned ? origin - to : origin + from,
                end: turned ? origin - from : origin + to,
                slack: chain.slack[index]!,
                pool: network.activities[index]!.pool,
                units: times.together.get(index) ?? (unit < 0 ? [] : [unit]),
            },
        ];
    });
}

/** Tasks with their times, in order of their beginning; those that could not be scheduled are left out. */
export function tasksOf(
    drafts: readonly TaskDraft[],
    pools: readonly Pool[],
    parts: readonly TimedPart[],
): PreparedTask[] {
    const byTask = drafts.map((): TimedPart[] => []);
    for (const part of parts) {
        byTask[part.task]!.push(part);
    }
    const tasks = drafts.flatMap(({ title, stated, because, parts: planned }, index): PreparedTask[] => {
        const own = byTask[index]!;
        if (own.length === 0 || own.length < planned.length) {
            return [];
        }
        const slack = Math.min(...own.map((part) => part.slack));
        const uncertain = planned.filter((part) => part.variance !== undefined);
        return [
            {
                title,
                stated,
                because,
                start: Math.min(...own.map((part) => part.start)),
                end: Math.max(...own.map((part) => part.end)),
                by: peopleOf(own, pools),
                work: planned.reduce((sum, part) => sum + part.minutes * Math.max(1, part.units), 0),
                slack,
                isCritical: slack <= 0,
                expected:
                    uncertain.length > 0
                        ? {
                              minutes: uncertain.reduce((sum, part) => sum + part.minutes, 0),
                              variance: uncertain.reduce((sum, part) => sum + part.variance!, 0),
                          }
                        : undefined,
            },
        ];
    });
    return tasks.toSorted((a, b) => a.start - b.start || a.end - b.end);
}

/** How many different people of each role have a hand in it. */
function peopleOf(parts: readonly TimedPart[], pools: readonly Pool[]): PreparedTask['by'] {
    return pools.flatMap(({ role }, pool) => {
        const people = new Set(parts.filter((part) => part.pool === pool).flatMap((part) => part.units));
        return people.size > 0 ? [{ role, people: people.size }] : [];
    });
}

/** Who does what where; one task at several tables in a row is one line. */
export function rosterOf(drafts: readonly TaskDraft[], pools: readonly Pool[], parts: readonly TimedPart[]): Roster[] {
    return pools.flatMap(({ role, count, isMachine }, pool) => {
        const mine = isMachine ? [] : partsOfEach(parts, pool, count);
        return mine.flatMap((own, unit): Roster[] => {
            const lines: { title: string; tables: string[]; start: number; end: number }[] = [];
            const done = own.filter(({ start, end }) => end > start).toSorted((a, b) => a.start - b.start);
            for (const { task, table, start, end } of done) {
                const { title } = drafts[task]!;
                const before = lines.at(-1);
                if (before?.title === title && start - before.end < NOISE) {
                    before.end = end;
                    before.tables.push(...(table === undefined ? [] : [table]));
                } else {
                    lines.push({ title, tables: table === undefined ? [] : [table], start, end });
                }
            }
            return lines.length > 0 ? [{ role, number: unit + 1, tasks: lines }] : [];
        });
    });
}

/** Minutes that binary fractions lose. */
const NOISE = 1e-6;

/** The parts that each person of a pool has a hand in. */
function partsOfEach(parts: readonly TimedPart[], pool: number, count: number): TimedPart[][] {
    const own = Array.from({ length: count }, (): TimedPart[] => []);
    for (const part of parts.filter((each) => each.pool === pool)) {
        part.units.forEach((unit) => own[unit]!.push(part));
    }
    return own;
}

/** When each person first has something to do. */
export function callsOf(pools: readonly Pool[], parts: readonly TimedPart[]): Call[] {
    return byPerson(pools, parts, (own) => Math.min(...own.map((part) => part.start)), Math.min);
}

/** When each person has nothing left to do. */
export function leavesOf(pools: readonly Pool[], parts: readonly TimedPart[]): Call[] {
    return byPerson(pools, parts, (own) => Math.max(...own.map((part) => part.end)), Math.max);
}

function byPerson(
    pools: readonly Pool[],
    parts: readonly TimedPart[],
    tell: (own: readonly TimedPart[]) => number,
    whole: (...each: number[]) => number,
): Call[] {
    return pools.flatMap(({ role, count, isMachine }, pool) => {
        if (isMachine) {
            return [];
        }
        const each = partsOfEach(parts, pool, count)
            .filter((mine) => mine.length > 0)
            .map(tell);
        return each.length > 0 ? [{ role, count, at: whole(...each), each }] : [];
    });
}
