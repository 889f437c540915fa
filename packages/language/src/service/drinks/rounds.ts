/** How often a glass is poured over the evening. */
import { findCourse } from '../../plan/names.js';
import type { Plan, Pour, Speech } from '../../plan/types.js';
import type { Rounds } from './types.js';

/**
 * The first pour, its refills, a topping-up for every further course up to the one named, and one for each toast for which it is
 * poured again.
 * @param course the pour's; -1 for water, which stands from seating
 * @param share of a full pour that a topping-up takes, 0–1
 * @param courses in which a pour of this title is poured
 */
export function roundsOf(plan: Plan, pour: Pour, course: number, share: number, courses: readonly number[]): Rounds {
    const toppedUp = toppedUpThrough(plan, pour, course) - course;
    const full = 1 + (pour.refills?.count ?? 0);
    const toasts = (plan.menu?.speeches ?? [])
        .filter((speech) => isPouredAgainFor(plan, speech, pour, course, courses))
        .map((toast) => ({ title: toast.title ?? 'the toast', origin: toast.origin }));
    return { full, toppedUp, toasts, pours: full + share * (toppedUp + toasts.length) };
}

/**
 * Whether glasses are topped up for a toast: those of the last pour of its drink before it, where a further course has come since
 * that was poured or topped up. Right after that course the toast is drunk from the glass as it stands.
 * @param courses in which a pour of this title is poured
 */
export function isPouredAgainFor(
    plan: Plan,
    speech: Speech,
    pour: Pour,
    course: number,
    courses: readonly number[],
): boolean {
    const last = lastCourseBefore(plan, speech);
    const pouredLast = courses.findLast((each) => each <= last);
    return isDrunkWith(speech, pour) && pouredLast === course && last > toppedUpThrough(plan, pour, course);
}

/** Index of the last course in which a glass is poured or topped up. */
function toppedUpThrough({ menu }: Plan, { toppedUpUntil }: Pour, course: number): number {
    const until = toppedUpUntil && findCourse(menu, toppedUpUntil.name)?.index;
    return Math.max(course, until ?? course);
}

function isDrunkWith({ sort, pour: named }: Speech, { title }: Pour): boolean {
    return sort === 'toast' && named?.text === title;
}

/**
 * Index of the last course served before a toast; one that only has an hour is taken to come after the last course, and after the
 * coffee, which counts as one more.
 */
function lastCourseBefore({ menu }: Plan, { when }: Speech): number {
    const named = when && findCourse(menu, when.course.name)?.index;
    const last = (menu?.courses.length ?? 0) - (menu?.coffee ? 0 : 1);
    return named === undefined ? last : named - (when?.when === 'before' ? 1 : 0);
}
