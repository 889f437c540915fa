/** How often a glass is poured over the evening. */
import { findCourse } from '../../plan/names.js';
import type { Plan, Pour, Speech } from '../../plan/types.js';
import type { Rounds } from './types.js';

/**
 * The first pour, its refills, a topping-up for every further course up to the one named, and one for each toast that is drunk
 * with it when its last course is over: glasses are not lifted empty.
 * @param course the pour's; -1 for water, which stands from seating
 * @param share of a full pour that a topping-up takes, 0–1
 * @param courses in which a pour of this title is poured: a toast is drunk from the last of them before it
 */
export function roundsOf(plan: Plan, pour: Pour, course: number, share: number, courses: readonly number[]): Rounds {
    const until = pour.toppedUpUntil && findCourse(plan.menu, pour.toppedUpUntil.name)?.index;
    const toppedUp = Math.max(0, (until ?? course) - course);
    const full = 1 + (pour.refills?.count ?? 0);
    const toasts = (plan.menu?.speeches ?? [])
        .filter((speech) => {
            const last = lastCourseBefore(plan, speech);
            const pouredLast = courses.findLast((each) => each <= last);
            return isDrunkWith(speech, pour) && pouredLast === course && last > course + toppedUp;
        })
        .map((toast) => ({ title: toast.title ?? 'the toast', origin: toast.origin }));
    return { full, toppedUp, toasts, pours: full + share * (toppedUp + toasts.length) };
}

function isDrunkWith({ sort, pour: named }: Speech, { title }: Pour): boolean {
    return sort === 'toast' && named?.text === title;
}

/** Index of the last course served before a toast. */
function lastCourseBefore({ menu }: Plan, { when }: Speech): number {
    const named = when && findCourse(menu, when.course.name)?.index;
    return named === undefined ? (menu?.courses.length ?? 0) - 1 : named - (when?.when === 'before' ? 1 : 0);
}
