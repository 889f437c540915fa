import { courseTimes, overAt } from './course-times.js';
import type { Evening, Team } from './evening.js';
import { simulate } from './simulate.js';
import type { Bottleneck, CourseRun, PersonRun } from './types.js';

export type Member = 'servers' | 'runners' | 'lines' | 'sommeliers' | 'bussers';

/** Members of the team that there can be more of, and what one of them is called; lines last, since a line takes several people. */
export function growable(team: Team): { readonly member: Member; readonly role: string }[] {
    return [
        { member: 'servers', role: 'server' },
        { member: 'runners', role: 'runner' },
        ...(team.sommeliers > 0 ? [{ member: 'sommeliers', role: 'sommelier' } as const] : []),
        ...(team.bussers > 0 ? [{ member: 'bussers', role: 'busser' } as const] : []),
        ...(team.lines > 0 ? [{ member: 'lines', role: team.lineRole } as const] : []),
    ];
}

/** The longest time, over all courses, from the first table served to the last. */
export function longestWait(courses: readonly CourseRun[], menu: number): number {
    return Math.max(
        0,
        ...courses
            .filter(({ course }) => course < menu)
            .map(({ tables }) => {
                const begun = tables.map((table) => table.served.first);
                return Math.max(...begun) - Math.min(...begun);
            }),
    );
}

/** Gains of less than this are rounding, not people, min. */
const NOTHING = 0.01;

/**
 * What holds the evening up: the role of which one more shortens the longest wait most, else ends the evening soonest, else the
 * one that is busiest. Every team is tried, not estimated.
 */
export function bottleneckOf(
    evening: Evening,
    courses: readonly CourseRun[],
    people: readonly PersonRun[],
): Bottleneck | undefined {
    const menu = evening.courses.length;
    const oneMore = growable(evening.team).map(({ member, role }) => {
        const team = { ...evening.team, [member]: evening.team[member] + 1 };
        // Nobody has to be put to work: one more never makes it worse.
        const then = courseTimes(simulate({ ...evening, team }));
        return {
            role,
            sooner: Math.max(0, overAt(courses, menu) - overAt(then, menu)),
            shorterWait: Math.max(0, longestWait(courses, menu) - longestWait(then, menu)),
        };
    });
    const busyOf = (role: string): number => {
        const them = people.filter((person) => person.role === role);
        const busy = them.reduce((sum, person) => sum + person.busy, 0);
        const whole = them.reduce((sum, person) => sum + person.busy + person.idle, 0);
        return whole > 0 ? busy / whole : 0;
    };
    const gain = (value: number): number => (value > NOTHING ? value : 0);
    const [first] = oneMore.toSorted(
        (a, b) =>
            gain(b.shorterWait) - gain(a.shorterWait) ||
            gain(b.sooner) - gain(a.sooner) ||
            busyOf(b.role) - busyOf(a.role),
    );
    return first && { role: first.role, busy: busyOf(first.role), oneMore };
}
