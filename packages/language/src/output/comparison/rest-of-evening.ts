import { eveningClock } from '../../service/clock/evening.js';
import type { Compared } from './change.js';

/** One call of an evening that runs: when, for what, and what it leads to. */
export interface Call {
    /** Minutes after guests were seated. */
    readonly minutes: number;
    /** `20:14`. */
    readonly clock: string;
    readonly text: string;
}

/** What is still to be called, in order: courses, coffee, toasts and speeches. */
export function restOfEvening({ plan, service }: Compared): Call[] {
    const clock = eveningClock(plan);
    const { run } = service;
    if (!clock || !run) {
        return [];
    }
    const titleOf = (course: number): string => plan.menu?.courses[course]?.title ?? 'Coffee';
    const temperature = (course: number): string => {
        const warm = service.heat.dishes.flatMap(({ course: of, last }) =>
            of === course && last?.temperature?.celsius !== undefined ? [last.temperature.celsius] : [],
        );
        return warm.length > 0 ? `, there at ${Math.round(Math.min(...warm))} °C` : '';
    };
    const courses = run.courses.map(({ course, fired, served, cleared }): Call => ({
        minutes: fired,
        clock: clock.face(fired),
        text:
            `call \`${titleOf(course)}\`: first guest ${clock.face(served.first)}, last guest ${clock.face(served.last)}` +
            `${temperature(course)}, cleared ${clock.face(cleared.last)}`,
    }));
    const speeches = run.speeches.map(({ speech, start, end }): Call => {
        const { title, sort } = plan.menu!.speeches[speech]!;
        return {
            minutes: start,
            clock: clock.face(start),
            text: `${sort}${title ? ` \`${title}\`` : ''} until ${clock.face(end)}`,
        };
    });
    return [...courses, ...speeches].toSorted((a, b) => a.minutes - b.minutes);
}

/** The calls as a list in Markdown. */
export function tellCallsInMarkdown(calls: readonly Call[]): string {
    return `### Calls\n\n${calls.map(({ clock, text }) => `- **${clock}** ${text}.\n`).join('')}`;
}

/** The calls as lines. */
export function tellCalls(calls: readonly Call[]): string {
    return `Calls\n${calls.map(({ clock, text }) => `    ${clock}  ${text}.\n`).join('')}`;
}
