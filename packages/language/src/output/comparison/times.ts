import { eveningClock } from '../../service/clock/evening.js';
import type { CourseRun } from '../../service/run/types.js';
import { hoursWords } from '../../rules/at-the-guest.js';
import { quoted } from '../../rules/wording.js';
import type { Plan } from '../../plan/types.js';
import { paired, type Change, type Compared } from './change.js';

/** When each course is called, reaches its first and its last guest and is cleared, and when speeches are held, to the minute. */
export function changedTimes(before: Compared, after: Compared): Change[] {
    return changedMoments('times', momentsOf(before), momentsOf(after));
}

/** Something that happens at an hour. */
export interface Moment {
    readonly key: string;
    /** `\`Leek soup\` is called`, `guests sit down`. */
    readonly said: string;
    /** Since midnight of the event's day. */
    readonly minutes: number;
    /** What the clock shows. */
    readonly face: string;
    /** By the key of another, with which it is moved as a matter of course: told only where it is not. */
    readonly follows?: string;
    /** Told by its hour alone where it is new; where it is not, what is new is told elsewhere. */
    readonly isNews?: boolean;
}

/** Minutes from which on a move is told: of what guests wait for each, of what is prepared no single one. */
const LEAST = { times: 1, tasks: 2 } as const;

/** @param subject what the moments are about */
export function changedMoments(
    subject: 'times' | 'tasks',
    before: readonly Moment[],
    after: readonly Moment[],
): Change[] {
    const pairs = paired(before, after, ({ key }) => key);
    const movedBy = new Map(pairs.map(({ key, was, is }) => [key, was && is && is.minutes - was.minutes]));
    return pairs.flatMap(({ key, was, is }): Change[] => {
        if (!is || !was) {
            return is?.isNews ? [{ subject, key, text: `${is.said} at ${is.face}` }] : [];
        }
        const moved = is.minutes - was.minutes;
        const follows = is.follows === undefined ? undefined : movedBy.get(is.follows);
        if (Math.abs(moved) < LEAST[subject] || (follows !== undefined && Math.abs(moved - follows) <= 1)) {
            return [];
        }
        return [
            {
                subject,
                key,
                before: was.minutes,
                after: is.minutes,
                unit: 'clock',
                text: `${is.said} ${hoursWords(Math.abs(moved))} ${moved > 0 ? 'later' : 'earlier'}, at ${is.face}`,
            },
        ];
    });
}

/** Minutes after guests are seated, as a moment. */
export type ToMoment = (minutes: number, moment: Omit<Moment, 'minutes' | 'face'>) => Moment;

/** @returns `undefined` where the event does not say when guests are seated */
export function momentsIn(plan: Plan): ToMoment | undefined {
    const clock = eveningClock(plan);
    const seated = plan.event?.seated?.minutes;
    return clock && seated !== undefined
        ? (minutes, moment) => ({ ...moment, minutes: Math.round(seated + minutes), face: clock.face(minutes) })
        : undefined;
}

function momentsOf({ plan, service }: Compared): Moment[] {
    const moment = momentsIn(plan);
    if (!moment) {
        return [];
    }
    const seated = moment(0, { key: 'seated', said: 'guests sit down' });
    const { run } = service;
    if (!run) {
        return [seated];
    }
    const courses = run.courses.flatMap((course: CourseRun): Moment[] => {
        const title = plan.menu?.courses[course.course]?.title ?? 'Coffee';
        const called = quoted(title);
        return [
            moment(course.fired, { key: `${title}: call`, said: `${called} is called`, isNews: true }),
            moment(course.served.first, { key: `${title}: first`, said: `${called} reaches its first guest` }),
            moment(course.served.last, { key: `${title}: last`, said: `${called} reaches its last guest` }),
            moment(course.cleared.last, {
                key: `${title}: cleared`,
                said: `${called} is cleared`,
                follows: `${title}: last`,
            }),
        ];
    });
    const speeches = run.speeches.map(({ speech, start }) => {
        const { sort, title } = plan.menu!.speeches[speech]!;
        const called = `the ${sort}${title === undefined ? '' : ` ${quoted(title)}`}`;
        return moment(start, { key: called, said: `${called} is held`, isNews: true });
    });
    return [seated, ...courses, ...speeches, moment(run.over, { key: 'over', said: 'service is over' })];
}
