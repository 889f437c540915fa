import { checkPlan, type Checked } from './check.js';
import { compare } from './output/comparison/compare.js';
import type { Change } from './output/comparison/change.js';
import { findCourse } from './plan/names.js';
import type { Origin } from './plan/origin.js';
import type { Course, Event, Menu, Plan, Room, Team } from './plan/types.js';
import { agreeing, counted, listed, quoted } from './rules/wording.js';
import { eveningClock } from './service/clock/evening.js';
import { clockFace, DAY } from './service/clock/local-time.js';
import { isSameRole, withoutHands } from './service/run/team-of-plan.js';
import { outOfReach } from './what-if-reach.js';

/** How an evening may come out otherwise than planned. What is absent stays as it is. */
export interface Otherwise {
    readonly guests?: number;
    readonly guaranteed?: number;
    readonly setFor?: number;
    /** People by role, such as `servers`; `server` is the same. */
    readonly people?: Readonly<Record<string, number>>;
    /** Guests sit down this many minutes after the time planned. */
    readonly late?: number;
    /** Air of the room, °C. */
    readonly roomTemperature?: number;
    /** The evening runs: at this minute of the event's day the named course, and all before it, is cleared. */
    readonly underway?: { readonly minutes: number; readonly done: string };
}

/** A plan computed with other figures. */
export interface WhatIf {
    readonly checked: Checked;
    /** What is different from the plan as written. */
    readonly changes: readonly Change[];
    /** Why the changes are not to be relied on, a sentence or two: errors of the plan, as written or with these figures. */
    readonly caution?: string;
}

/**
 * Computes a checked plan again with some figures changed. Nothing is written.
 * @returns a sentence where the plan has no such figure to change, or where an evening can't be computed with it
 */
export function whatIf(checked: Checked, otherwise: Otherwise): WhatIf | string {
    const again = planOtherwise(checked, otherwise);
    return typeof again === 'string'
        ? again
        : { checked: again, changes: compare(checked, again), caution: cautionOf(checked, again) };
}

/** What is wrong with what is to be otherwise, before anything is computed; `undefined` where nothing is. */
export function problemWith(plan: Plan, otherwise: Otherwise): string | undefined {
    const plans = changed(plan, otherwise);
    return typeof plans === 'string' ? plans : undefined;
}

/** As `whatIf`, without saying yet what is different: nothing of the changed plan is worked out before it is asked for. */
export function planOtherwise(checked: Checked, otherwise: Otherwise): Checked | string {
    const plan = changed(checked.plan, otherwise);
    return typeof plan === 'string' ? plan : checkPlan(checked.file, plan, checked.texts);
}

/** Why the figures of a changed plan are not to be relied on: the errors it has, first those that the change brings. */
export function cautionOf(before: Checked, after: Checked): string | undefined {
    const errorsOf = ({ findings }: Checked) => findings.filter(({ severity }) => severity === 'error');
    const keyOf = ({ rule, at }: Checked['findings'][number]): string => `${rule} ${at.file} ${at.start}`;
    const known = new Set(errorsOf(before).map(keyOf));
    const fresh = errorsOf(after).filter((finding) => !known.has(keyOf(finding))).length;
    const written = known.size > 0 ? `The plan has ${errorsBefore(known.size)} before you trust these figures.` : '';
    const brought =
        fresh > 0
            ? `With these figures the plan has ${counted(fresh, known.size > 0 ? 'more error' : 'error')}: do not rely on what follows; the findings say why.`
            : '';
    return [written, brought].filter((each) => each !== '').join(' ') || undefined;
}

function errorsBefore(count: number): string {
    return `${counted(count, 'error')}: mend ${agreeing(count, 'it', 'them')}`;
}

function changed(plan: Plan, otherwise: Otherwise): Plan | string {
    if (!plan.event) {
        return 'There is no event in this file.';
    }
    const beyond = outOfReach(otherwise);
    if (beyond !== undefined) {
        return beyond;
    }
    const event = changedEvent(plan.event, otherwise);
    if (typeof event === 'string') {
        return event;
    }
    const underway = otherwise.underway && underwayOf({ ...plan, event }, otherwise.underway);
    if (typeof underway === 'string') {
        return underway;
    }
    if (otherwise.roomTemperature !== undefined && !plan.room) {
        return 'The plan has no room whose air could be warmer or colder.';
    }
    const again = {
        ...plan,
        event,
        room: plan.room && changedRoom(plan.room, otherwise.roomTemperature),
        team: changedTeam(plan.team, otherwise.people ?? {}, plan.event.origin),
        underway: underway ?? plan.underway,
    };
    return withoutWorkers(again, otherwise.people ?? {}) ?? again;
}

/** A role that is asked for and that leaves nobody to serve or to plate. */
function withoutWorkers(plan: Plan, people: Readonly<Record<string, number>>): string | undefined {
    for (const work of ['serving', 'plating'] as const) {
        const name = withoutHands(plan, work)?.role.name;
        if (name !== undefined && Object.keys(people).some((role) => isSameRole(role, name))) {
            return `With 0 ${name.replaceAll('-', ' ')} nobody ${work === 'serving' ? 'serves' : 'plates'}, and there is no evening to compute. Ask for 1 or more.`;
        }
    }
    return undefined;
}

function changedEvent(event: Event, { guests, guaranteed, setFor, late }: Otherwise): Event | string {
    const counts = { expected: guests, guaranteed, setFor };
    const wants = Object.entries(counts).filter(([, count]) => count !== undefined);
    if (wants.length > 0 && !event.guests) {
        return 'The event does not say how many guests there are.';
    }
    if (late !== undefined && event.seated?.minutes === undefined) {
        return 'The event does not say when guests are seated.';
    }
    const origin = event.guests?.origin ?? event.origin;
    return {
        ...event,
        guests: event.guests && {
            ...event.guests,
            ...Object.fromEntries(wants.map(([name, count]) => [name, { count, origin }])),
        },
        seated:
            event.seated?.minutes === undefined
                ? event.seated
                : { ...event.seated, minutes: event.seated.minutes + (late ?? 0) },
    };
}

function changedRoom(room: Room, celsius: number | undefined): Room {
    return celsius === undefined
        ? room
        : {
              ...room,
              temperature: {
                  value: celsius,
                  dimension: 'temperature',
                  written: `${celsius} °C`,
                  unit: '°C',
                  origin: room.temperature?.origin ?? room.head,
              },
          };
}

function changedTeam(
    team: Team | undefined,
    people: Readonly<Record<string, number>>,
    event: Origin,
): Team | undefined {
    const wanted = Object.entries(people);
    if (wanted.length === 0) {
        return team;
    }
    const origin = team?.origin ?? event;
    const countOf = (name: string) => wanted.find(([role]) => isSameRole(role, name))?.[1];
    const known = new Set<string>();
    // A role that stands in several clauses is counted once.
    const roles = (team?.roles ?? []).map((role) => {
        const count = countOf(role.role.name);
        const isFirst = ![...known].some((name) => isSameRole(name, role.role.name));
        known.add(role.role.name);
        return count === undefined ? role : { ...role, count: { ...role.count, count: isFirst ? count : 0 } };
    });
    const added = wanted
        .filter(([name]) => !roles.some(({ role }) => isSameRole(role.name, name)))
        .map(([name, count]) => ({ role: { name, origin }, count: { count, origin }, stations: [], origin }));
    return { origin, roles: [...roles, ...added] };
}

/** Guests have gone so many minutes after they sat down; an hour that is further on was meant for before. Common practice, no source. */
const LONGEST_EVENING = 10 * 60;

function underwayOf(
    plan: Plan,
    { minutes, done }: NonNullable<Otherwise['underway']>,
): NonNullable<Plan['underway']> | string {
    const course = courseNamed(plan.menu, done);
    if (!course) {
        const kinds = [...new Set((plan.menu?.courses ?? []).map(({ kind }) => quoted(kind.name)))];
        return `The menu has no course ${quoted(done)}.${kinds.length > 0 ? ` It has ${listed(kinds)}.` : ''}`;
    }
    const clock = eveningClock(plan);
    if (!clock) {
        return 'The event does not say when guests are seated.';
    }
    const since = (time: number): number => clock.after({ minutes: time, written: '', origin: course.origin }, 'end')!;
    if (since(minutes) <= LONGEST_EVENING) {
        return { minutes: since(minutes), done: course.index };
    }
    const other = (minutes + DAY / 2) % DAY;
    const meant = since(other) <= LONGEST_EVENING ? ` Did you mean ${clockFace(other)}?` : '';
    return `At ${clockFace(minutes)} no course can be cleared: guests sit down at ${clock.face(0)}.${meant}`;
}

/** As `findCourse`, however its letters are written. */
function courseNamed(menu: Menu | undefined, name: string): Course | undefined {
    const isMeant = (written: string): boolean => written.toLowerCase() === name.toLowerCase();
    const courses = menu?.courses ?? [];
    return (
        findCourse(menu, name) ??
        courses.findLast(({ kind }) => isMeant(kind.name)) ??
        courses.find(({ title }) => isMeant(title))
    );
}
