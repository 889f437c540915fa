import { eveningClock } from '../../service/clock/evening.js';
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
                text: `${is.said} ${apart} min ${is.minutes > was.minutes ? 'later' : 'earlier'}, at ${is.face}`,
            },
        ];
    });
}

interface Moment {
    readonly key: string;
    readonly said: string;
    /** Since midnight of the event's day. */
    readonly minutes: number;
    /** What the clock shows. */
    readonly face: string;
}

function momentsOf({ plan, service }: Compared): Moment[] {
    const clock = eveningClock(plan);
    const seated = plan.event?.seated?.minutes;
    const { run } = service;
    if (!run || !clock || seated === undefined) {
        return [];
    }
    const moment = (key: string, said: string, minutes: number): Moment => ({
        key,
        said,
        minutes: Math.round(seated + minutes),
        face: clock.face(minutes),
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
