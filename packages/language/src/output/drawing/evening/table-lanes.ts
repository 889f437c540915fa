import type { Plan } from '../../../plan/types.js';
import type { CourseRun, Run, TableCourse } from '../../../service/run/types.js';
import { counted } from '../../../rules/wording.js';
import { capital, courseTitle, faces } from '../../sheets/evening.js';
import type { Drawable } from '../pictures.js';
import type { Bar, Lane, LaneGroup } from './lane.js';

/**
 * Every course from the captain's call to the last cover cleared, and what is said between them.
 * @param room that words take under their bar, in minutes
 * @param last the last minute that has room for words
 */
export function courseLanes({ plan }: Drawable, run: Run, room: (words: string) => number, last: number): LaneGroup {
    const face = faces(plan);
    const courses = run.courses.map((course): Spoken => {
        const title = courseTitle(plan, course.course);
        const end = Math.max(course.cleared.last, course.served.last);
        return {
            title,
            times: `${face(course.fired)}–${face(end)}`,
            bar: {
                start: course.fired,
                end,
                look: 'course',
                says: `${title}: called ${face(course.fired)}, set down ${face(course.served.first)}–${face(course.served.last)}, cleared ${face(course.cleared.first)}–${face(course.cleared.last)}`,
                course: course.course,
                origin: plan.menu?.courses[course.course]?.head ?? plan.menu?.coffee?.head,
            },
        };
    });
    const speeches = run.speeches.map(({ speech, start, end }): Spoken => {
        const { sort, title, origin } = plan.menu!.speeches[speech]!;
        const words = title ? `${capital(sort)}: ${title}` : capital(sort);
        const says = `${words}, ${face(start)}–${face(end)}`;
        return { title: words, times: face(start), bar: { start, end, look: 'talk', says, course: -1, origin } };
    });
    return {
        title: 'Courses, from the call to the last cover cleared',
        isNamedBelow: true,
        lanes: inRows(
            [...courses, ...speeches].toSorted((a, b) => a.bar.start - b.bar.start),
            room,
            last,
        ),
    };
}

interface Spoken {
    readonly title: string;
    readonly times: string;
    readonly bar: Bar;
}

/** As few lanes as keep every bar and its words off the others: the first that is free. */
function inRows(spoken: readonly Spoken[], room: (words: string) => number, last: number): Lane[] {
    // Words that would be cut at the end of the evening begin before their bar.
    const roomOf = ({ title, times }: Spoken): number => room(`${title} ${times}`);
    const startOf = (each: Spoken): number => Math.min(each.bar.start, last - roomOf(each));
    const endOf = (each: Spoken): number => Math.max(each.bar.end, startOf(each) + roomOf(each));
    const rows: Spoken[][] = [];
    for (const each of spoken) {
        const free = rows.find((row) => endOf(row.at(-1)!) <= startOf(each));
        if (free) {
            free.push(each);
        } else {
            rows.push([each]);
        }
    }
    return rows.map((row) => ({
        name: '',
        bars: row.map(({ bar }) => bar),
        captions: row.map(({ title, times, bar }) => ({ start: bar.start, words: title, times })),
    }));
}

/** What stands before the guests of every table: set down, eaten, cleared. */
export function tableLanes({ plan }: Drawable, run: Run): LaneGroup {
    return {
        title: 'Tables: set down, eaten, cleared',
        lanes: run.tables.map(({ name, guests, server }) => {
            const own = run.courses.flatMap((course) => {
                const table = course.tables.find((each) => each.table === name);
                return table ? [{ course, table }] : [];
            });
            return {
                name,
                note: `${counted(guests, 'guest')}, ${run.people[server]?.name ?? ''}`.replace(/, $/, ''),
                origin: plan.room?.tables.find(({ names }) => names.includes(name))?.first.origin,
                bars: own.flatMap(({ course, table }) => stages(plan, course, table)),
                captions: own.map(({ course, table }) => ({
                    start: table.served.first,
                    words: courseTitle(plan, course.course),
                })),
            };
        }),
    };
}

function stages(plan: Plan, { course }: CourseRun, { table, served, finished, cleared }: TableCourse): Bar[] {
    const face = faces(plan);
    const title = courseTitle(plan, course);
    const origin = plan.menu?.courses[course]?.head ?? plan.menu?.coffee?.head;
    const bar = (look: Bar['look'], start: number, end: number, what: string): Bar => ({
        start,
        end,
        look,
        says: `${face(start)}–${face(end)} ${table}: ${title} ${what}`,
        course,
        origin,
    });
    // Where it is cleared guest by guest, clearing begins before the last has finished.
    const eaten = Math.max(served.last, Math.min(finished, cleared.first));
    return [
        bar('bring', served.first, served.last, 'set down'),
        bar('eat', served.last, eaten, course === plan.menu?.courses.length ? 'drunk' : 'eaten'),
        ...(cleared.last > cleared.first
            ? [bar('clear', Math.max(eaten, cleared.first), cleared.last, 'cleared')]
            : []),
    ].filter(({ start, end }) => end > start);
}
