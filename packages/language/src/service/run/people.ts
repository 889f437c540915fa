/** Who does what when, over a simulated evening. */
import type { Schedule } from './engine.js';
import type { SimulatedEvening } from './simulate.js';
import type { CourseRun, PersonRun, RunTask } from './types.js';
import type { WorkNetwork } from './work-network.js';

/** Everything anybody does, by start, then person. */
export function tasksOf(simulated: SimulatedEvening, courses: readonly CourseRun[]): RunTask[] {
    const { workforce, before, service, times } = simulated;
    const tasks = [
        ...tasksIn(simulated, before.network, before.times, before.shift),
        ...tasksIn(simulated, service.network, times, 0),
        ...seatingTasks(simulated),
        ...courses.map(({ course, fired, tables }): RunTask => ({
            person: workforce.caller,
            sort: 'call',
            course,
            start: fired,
            end: fired,
            count: tables.length,
        })),
    ];
    return tasks.toSorted((a, b) => a.start - b.start || a.person - b.person);
}

function tasksIn(
    { evening, workforce }: SimulatedEvening,
    { tags, activities }: WorkNetwork,
    times: Schedule,
    shift: number,
): RunTask[] {
    return tags.flatMap(({ sort, course, table, count }, index) => {
        const { pool } = activities[index]!;
        if (sort === 'wait' || Number.isNaN(times.start[index])) {
            return [];
        }
        const person = pool === undefined ? workforce.caller : workforce.firstPerson[pool]! + times.unit[index]!;
        const when = { start: times.start[index]! + shift, end: times.end[index]! + shift };
        return [{ person, sort, course, table: evening.tables[table]?.name, ...when, count }];
    });
}

/** When the first glass of the drinks of each course is begun; nothing for a course with which none is poured. */
export function pouringStarts({ before, service, times }: SimulatedEvening): ReadonlyMap<number, number> {
    const starts = new Map<number, number>();
    const note = ({ tags }: WorkNetwork, { start }: Schedule, shift: number): void =>
        tags.forEach(({ sort, course }, index) => {
            const at = start[index]! + shift;
            if (sort === 'pour' && at < (starts.get(course) ?? Infinity)) {
                starts.set(course, at);
            }
        });
    note(before.network, before.times, before.shift);
    note(service.network, times, 0);
    return starts;
}

/** Every server takes the guests of the station to their places, once what stands there is set. */
function seatingTasks({ evening, workforce, before }: SimulatedEvening): RunTask[] {
    if (evening.underway) {
        return [];
    }
    const start = Math.max(-evening.pace.seatingTime, Math.min(0, before.over));
    return workforce.stations.flatMap(({ tables, servers }, station) =>
        tables.map((table, index): RunTask => {
            const person = workforce.firstPerson[station]! + (index % servers);
            const { name, guests } = evening.tables[table]!;
            // One table after the other, each its part of the time.
            const part = -start / tables.length;
            return {
                person,
                sort: 'seat',
                course: -1,
                table: name,
                start: start + index * part,
                end: start + (index + 1) * part,
                count: guests,
            };
        }),
    );
}

/** Trips, plates and turns at one table that a person does one after the other are one line of the sheet. */
export function joined(tasks: readonly RunTask[]): RunTask[] {
    const lines: RunTask[] = [];
    const lastOf = new Map<number, number>();
    for (const task of tasks) {
        const place = lastOf.get(task.person);
        const before = place === undefined ? undefined : lines[place]!;
        const isSame = before?.sort === task.sort && before.course === task.course && before.table === task.table;
        if (before && isSame && task.table !== undefined) {
            lines[place!] = { ...before, end: Math.max(before.end, task.end), count: before.count + task.count };
        } else {
            lastOf.set(task.person, lines.push(task) - 1);
        }
    }
    return lines;
}

/** Everybody of the team, at work or not. */
export function peopleOf({ workforce }: SimulatedEvening, tasks: readonly RunTask[]): PersonRun[] {
    const mine = workforce.people.map((): RunTask[] => []);
    for (const task of tasks) {
        mine[task.person]!.push(task);
    }
    return workforce.people.map(({ name, role }, person) => {
        // Pieces on a line overlap: what counts is when it is at work at all.
        let busy = 0;
        let until = -Infinity;
        for (const { start, end } of mine[person]!) {
            busy += Math.max(0, end - Math.max(start, until));
            until = Math.max(until, end);
        }
        const whole = mine[person]!.length === 0 ? 0 : until - mine[person]![0]!.start;
        return { name, role, busy, idle: whole - busy };
    });
}
