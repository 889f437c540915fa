/**
 * When the captain calls for the plates of a course: so that they meet tables that are ready for them.
 *
 * The course is called once for the whole room, so early that no table waits for plates and so late that no plates would
 * wait for a table, all of them plated and carried one after the other from then on. The plates of a table are plated when its
 * turn comes and it will be ready. The captain goes by what can be seen: the last thing that has begun at a table; where that
 * would be too late, when its guests were served and how long they eat.
 */
import type { Precedence } from './network.js';
import { wait, type ServiceDraft } from './service-draft.js';
import { stationsOf, walkTo } from './serving-a-course.js';

/** The moment of the call for a whole course. */
export function callCourse(draft: ServiceDraft, course: number): number {
    const { evening, network } = draft;
    const { startsAt } = evening.courses[course]!;
    const signs: Precedence[] = [];
    let release = draft.notBefore;
    let before = 0;
    let isFirst = true;
    draft.eachTable((table) => {
        if (evening.tables[table]!.courses[course]!.plates.length === 0) {
            return;
        }
        const arrives = before + leadOf(draft, course, table);
        before += turnOf(draft, course, table);
        const sign = signFor(draft, course, table, arrives);
        if (typeof sign === 'number') {
            release = Math.max(release, sign);
        } else {
            signs.push(sign);
        }
        if (isFirst && startsAt !== undefined) {
            release = Math.max(release, startsAt - arrives);
        }
        isFirst = false;
    });
    return network.add(wait(course), { duration: 0, after: signs, release });
}

/** The moment from which the plates of one table are plated, when the course has been called. */
export function callTable(draft: ServiceDraft, course: number, table: number, courseCall: number): number {
    const lead = leadOf(draft, course, table);
    const { startsAt } = draft.evening.courses[course]!;
    const sign = signFor(draft, course, table, lead);
    const release = Math.max(
        typeof sign === 'number' ? sign : -Infinity,
        startsAt === undefined ? -Infinity : startsAt - lead,
    );
    const after = [courseCall, ...(typeof sign === 'number' ? [] : [sign])];
    return draft.network.add(wait(course, table), { duration: 0, after, release });
}

/**
 * The moment from which a course is plated ahead: so long before its first table is ready that all of it is done by then.
 * @returns `undefined` where nothing is plated ahead
 */
export function callAhead(draft: ServiceDraft, course: number): number | undefined {
    const { evening, network, workforce } = draft;
    const first = workforce.order.find((table) => evening.tables[table]!.courses[course]!.plates.length > 0);
    const time = timeAhead(draft, course);
    if (first === undefined || time === 0) {
        return undefined;
    }
    const sign = signFor(draft, course, first, leadOf(draft, course, first) + time);
    return typeof sign === 'number'
        ? network.add(wait(course), { duration: 0, release: Math.max(sign, draft.notBefore) })
        : network.add(wait(course), { duration: 0, after: [sign] });
}

/**
 * What tells that a table will be ready in `lead` min: a sign with the time that must pass after it, or, before the first
 * course, a time.
 */
function signFor(draft: ServiceDraft, course: number, table: number, lead: number): Precedence | number {
    const { begun, takes, served } = draft.progress[table]!;
    const until = temperedTime(draft, course, table);
    const early = takes + until - lead;
    if (begun === draft.seated) {
        return (draft.network.activities[draft.seated]!.release ?? 0) + early;
    }
    return early >= 0 || !served
        ? { activity: begun, from: 'start', lag: Math.max(0, early) }
        : { activity: served.activity, from: 'end', lag: Math.max(0, served.takes + until - lead) };
}

/** From its call until the first plates are at the table, when nobody waits for anybody. */
export function leadOf({ evening, workforce }: ServiceDraft, course: number, table: number): number {
    const { dishes } = evening.courses[course]!;
    const first = evening.tables[table]!.courses[course]!.plates.slice(0, evening.pace.platesATrip);
    const live = first.filter((dish) => !dishes[dish]?.isAhead);
    const out = walkTo(evening, table);
    if (workforce.lines === undefined || live.length === 0) {
        return out;
    }
    const times = stationsOf(evening, course, live[0]!);
    const turns = Math.ceil(live.length / evening.team.lines) - 1;
    return out + times.reduce((sum, time) => sum + time, 0) + turns * Math.max(...times);
}

/** How much later the next table's plates come: what the lines or the carriers take for this one, whichever is slower. */
function turnOf({ evening, workforce }: ServiceDraft, course: number, table: number): number {
    const { pace, team } = evening;
    const { plates } = evening.tables[table]!.courses[course]!;
    const way = 2 * walkTo(evening, table);
    const trips = Math.ceil(plates.length / pace.platesATrip);
    const carrying =
        workforce.runners === undefined
            ? (trips * way + plates.length * pace.settingDown) / team.servers
            : (trips * (way + pace.handingOver)) / team.runners;
    return Math.max(carrying, team.lines > 0 ? platingTime(evening, course, plates, false) / team.lines : 0);
}

/** How long all lines together are at what is plated ahead of a course. */
function timeAhead({ evening }: ServiceDraft, course: number): number {
    const { tables, team } = evening;
    const plates = tables.flatMap((table) => table.courses[course]!.plates);
    return team.lines > 0 ? platingTime(evening, course, plates, true) / team.lines : 0;
}

function platingTime(
    evening: ServiceDraft['evening'],
    course: number,
    plates: readonly number[],
    isAhead: boolean,
): number {
    const { dishes } = evening.courses[course]!;
    return plates
        .filter((dish) => (dishes[dish]?.isAhead === true) === isAhead)
        .reduce((sum, dish) => sum + Math.max(...stationsOf(evening, course, dish)), 0);
}

/** Time to fetch and lay what is warm or cold, just before the plates. */
export function temperedTime({ evening }: ServiceDraft, course: number, table: number): number {
    const { temperedPieces: pieces } = evening.tables[table]!.courses[course]!;
    return pieces === 0 ? 0 : 2 * walkTo(evening, table) + pieces * evening.pace.relayingPiece;
}
