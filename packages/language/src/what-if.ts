import { checkPlan, type Checked } from './check.js';
import { compare } from './output/comparison/compare.js';
import type { Change } from './output/comparison/change.js';
import { findCourse } from './plan/names.js';
import { eveningClock } from './service/clock/evening.js';
import type { Origin } from './plan/origin.js';
import type { Event, Plan, Room, Team } from './plan/types.js';

/** How an evening may come out otherwise than planned. What is absent stays as it is. */
export interface Otherwise {
    readonly guests?: number;
    readonly guaranteed?: number;
    readonly setFor?: number;
    /** People by role, such as `servers`. */
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
}

/**
 * Computes a checked plan again with some figures changed. Nothing is written.
 * @returns a sentence where the plan has no such figure to change
 */
export function whatIf(checked: Checked, otherwise: Otherwise): WhatIf | string {
    const again = planOtherwise(checked, otherwise);
    return typeof again === 'string' ? again : { checked: again, changes: compare(checked, again) };
}

/** As `whatIf`, without saying yet what is different: nothing of the changed plan is worked out before it is asked for. */
export function planOtherwise(checked: Checked, otherwise: Otherwise): Checked | string {
    const plan = changed(checked.plan, otherwise);
    return typeof plan === 'string' ? plan : checkPlan(checked.file, plan, checked.texts);
}

function changed(plan: Plan, otherwise: Otherwise): Plan | string {
    if (!plan.event) {
        return 'There is no event in this file.';
    }
    const event = changedEvent(plan.event, otherwise);
    if (typeof event === 'string') {
        return event;
    }
    const underway = otherwise.underway && underwayOf(plan, otherwise.underway);
    if (typeof underway === 'string') {
        return underway;
    }
    if (otherwise.roomTemperature !== undefined && !plan.room) {
        return 'The plan has no room whose air could be warmer or colder.';
    }
    return {
        ...plan,
        event,
        room: plan.room && changedRoom(plan.room, otherwise.roomTemperature),
        team: changedTeam(plan.team, otherwise.people ?? {}, plan.event.origin),
        underway: underway ?? plan.underway,
    };
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
    const roles = (team?.roles ?? []).map((role) => {
        const count = people[role.role.name];
        return count === undefined ? role : { ...role, count: { ...role.count, count } };
    });
    const added = wanted
        .filter(([name]) => !roles.some(({ role }) => role.name === name))
        .map(([name, count]) => ({ role: { name, origin }, count: { count, origin }, stations: [], origin }));
    return { origin, roles: [...roles, ...added] };
}

function underwayOf(
    plan: Plan,
    { minutes, done }: NonNullable<Otherwise['underway']>,
): NonNullable<Plan['underway']> | string {
    const course = findCourse(plan.menu, done);
    if (!course) {
        return `The menu has no course \`${done}\`.`;
    }
    const after = eveningClock(plan)?.after({ minutes, written: '', origin: course.origin }, 'end');
    return after === undefined
        ? 'The event does not say when guests are seated.'
        : { minutes: after, done: course.index };
}
