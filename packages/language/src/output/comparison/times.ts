import type { CourseRun } from '../../service/run/types.js';
import { paired, type Change, type Compared } from './change.js';

/** When each course is called and when its first and last plate are in front of a guest, to the minute. */
export function changedTimes(before: Compared, after: Compared): Change[] {
    return paired(momentsOf(before), momentsOf(after), ({ key }) => key).flatMap(({ key, was, is }): Change[] => {
        if (!was || !is || was.minutes === is.minutes) {
            return [];
        }
        const apart = Math.abs(is.minutes - was.minutes);
        return [
            {
                subject: 'times',
                key,
                before: was.minutes,
                after: is.minutes,
                unit: 'clock',
                text: `${is.said} ${apart} min ${is.minutes > was.minutes ? 'later' : 'earlier'}, at ${clock(is.minutes)}`,
            },
        ];
    });
}

interface Moment {
    readonly key: string;
    readonly said: string;
    /** Since midnight of the event's day. */
    readonly minutes: number;
}

function momentsOf({ plan, service }: Compared): Moment[] {
    const seated = plan.event?.seated?.minutes;
    const { run } = service;
    if (!run || seated === undefined) {
        return [];
    }
    const moment = (key: string, said: string, minutes: number): Moment => ({
        key,
        said,
        minutes: Math.round(seated + minutes),
    });
    const courses = run.courses.flatMap((course: CourseRun): Moment[] => {
        const title = plan.menu?.courses[course.course]?.title ?? 'Coffee';
        return [
            moment(`${title}: call`, `\`${title}\` is called`, course.fired),
            moment(`${title}: first`, `\`${title}\` reaches its first guest`, course.served.first),
            moment(`${title}: last`, `\`${title}\` reaches its last guest`, course.served.last),
        ];
    });
    return [moment('seated', 'guests sit down', 0), ...courses, moment('over', 'service is over', run.over)];
}

/** `19:05`; after midnight it starts again. */
export function clock(minutes: number): string {
    const two = (number: number): string => String(number).padStart(2, '0');
    const day = ((minutes % 1440) + 1440) % 1440;
    return `${two(Math.floor(day / 60))}:${two(day % 60)}`;
}
