/** One course at one table: laid, poured, served, eaten, cleared. */
import { callTable, leadOf, temperedTime } from './captains-call.js';
import type { Precedence } from './network.js';
import { wait, type ServiceDraft, type TableRecord } from './service-draft.js';
import { serveTable, walkTo } from './serving-a-course.js';
import type { Turn } from './work-network.js';

/** Moments of the captain's calls for a course. */
export interface CourseCalls {
    readonly course: number;
    /** Absent where nothing is plated ahead. */
    readonly ahead?: number;
}

/** What is brought and poured before the plates come. @returns the first pour, where it comes before them */
export function prepare(draft: ServiceDraft, course: number, table: number, rank: number): number | undefined {
    const { evening } = draft;
    const { pieces } = evening.tables[table]!.courses[course]!;
    if (pieces > 0) {
        const duration = pieces * evening.pace.relayingPiece;
        draft.step(table, rank, { sort: 'relay', course, table, count: pieces }, duration);
    }
    const time = evening.isWinePouredFirst ? pouringTime(draft, course, table) : 0;
    if (time === 0) {
        return undefined;
    }
    const { glasses } = evening.tables[table]!.courses[course]!;
    const pool = draft.workforce.sommeliers;
    return draft.step(table, rank, { sort: 'pour', course, table, count: glasses }, time, pool);
}

function pouringTime({ evening }: ServiceDraft, course: number, table: number): number {
    const { glasses, tastes } = evening.tables[table]!.courses[course]!;
    return glasses > 0 ? glasses * evening.pace.pouringGlass + tastes * evening.pace.tasting : 0;
}

/**
 * @param calls the moment the course is called, and that from which some of it is plated ahead; absent where its plates stand
 * there already
 * @param pouredFirst its first pour, where that came before the plates
 */
export function serveAndClear(
    draft: ServiceDraft,
    course: number,
    table: number,
    rank: number,
    calls: CourseCalls | undefined,
    pouredFirst: number | undefined,
): TableRecord {
    const { network, evening } = draft;
    const { after } = draft.progress[table]!;
    const serving = calls && bring(draft, course, table, rank, calls);
    const served = serving?.served ?? network.add(wait(course, table), { duration: 0, after });
    const time = evening.isWinePouredFirst ? 0 : pouringTime(draft, course, table);
    const pouredAfter =
        time > 0
            ? network.add(
                  { sort: 'pour', course, table, count: evening.tables[table]!.courses[course]!.glasses },
                  { duration: time, after: [served], pool: draft.workforce.sommeliers ?? draft.serversOf(table) },
                  { rank },
              )
            : undefined;
    whileEating(draft, course, table, rank, served);
    return { serving, ...eatAndClear(draft, course, table, rank, served), pour: pouredFirst ?? pouredAfter };
}

function bring(draft: ServiceDraft, course: number, table: number, rank: number, calls: CourseCalls) {
    const { evening, workforce, network, draws } = draft;
    const call = callTable(draft, course, table, calls.course);
    layTempered(draft, course, table, rank, call);
    const { after, last } = draft.progress[table]!;
    // Plates leave so that they arrive as the last step at the table is done.
    const lag = Math.max(0, last.takes - walkTo(evening, table));
    return serveTable({
        evening,
        workforce,
        network,
        draws,
        course,
        table,
        rank,
        call,
        callAhead: calls.ahead ?? call,
        mayLeave: last.activity === draft.seated ? [] : [{ activity: last.activity, from: 'start', lag }],
        isReady: after,
        notBefore: evening.courses[course]!.startsAt,
    });
}

/** Warm and cold pieces are fetched from the pass and laid as late as they can be: as the plates arrive. */
function layTempered(draft: ServiceDraft, course: number, table: number, rank: number, call: number): void {
    const { temperedPieces: pieces } = draft.evening.tables[table]!.courses[course]!;
    if (pieces === 0) {
        return;
    }
    const duration = temperedTime(draft, course, table);
    const progress = draft.progress[table]!;
    const lag = Math.max(0, leadOf(draft, course, table) - duration);
    const after: (number | Precedence)[] = [...progress.after, { activity: call, from: 'end', lag }];
    const activity = draft.network.add(
        { sort: 'relay', course, table, count: pieces },
        { duration, after, pool: draft.serversOf(table) },
        { rank },
    );
    draft.progress[table] = { ...progress, after: [activity], last: { activity, takes: duration } };
}

/** Bread, and further glasses at even distances. */
function whileEating(draft: ServiceDraft, course: number, table: number, rank: number, served: number): void {
    const { pace, courses, tables } = draft.evening;
    const { rounds, bread } = tables[table]!.courses[course]!;
    const pool = draft.serversOf(table);
    const turn: Turn = { rank, atLeisure: true };
    if (bread > 0) {
        const duration = bread * pace.offeringBread;
        draft.network.add({ sort: 'bread', course, table, count: bread }, { duration, after: [served], pool }, turn);
    }
    rounds.forEach((glasses, round) => {
        const lag = (courses[course]!.lasts * (round + 1)) / (rounds.length + 1);
        const duration = glasses * pace.pouringGlass;
        const after: Precedence[] = [{ activity: served, from: 'end', lag }];
        draft.network.add(
            { sort: 'pour', course, table, count: glasses },
            { duration, after, pool: draft.workforce.sommeliers ?? pool },
            turn,
        );
    });
}

function eatAndClear(draft: ServiceDraft, course: number, table: number, rank: number, served: number) {
    const { evening, network, draws } = draft;
    const { pace } = evening;
    const { lasts, spread } = evening.courses[course]!;
    const covers = evening.tables[table]!.courses[course]!.plates.length;
    const time = lasts + draws.eating() * spread;
    const eaten = network.add(wait(course, table), { duration: time, after: [served] });
    const way = 2 * walkTo(evening, table);
    const trips = Math.ceil(covers / pace.coversATrip);
    const durations: number[] = [];
    const clearing = Array.from({ length: trips }, (_, trip) => {
        const count = Math.min(pace.coversATrip, covers - trip * pace.coversATrip);
        const duration = count * pace.clearingCover + way * (1 + draws.trip() * pace.tripSpread);
        durations.push(duration);
        // One by one: the first guests have done before the table's time is up, the last as it is.
        const early = evening.isClearedOneByOne ? (spread * (trips - 1 - trip)) / trips : 0;
        const after: Precedence =
            early > 0
                ? { activity: served, from: 'end', lag: Math.max(0, time - early) }
                : { activity: eaten, from: 'end', lag: 0 };
        const pool = draft.workforce.bussers ?? draft.serversOf(table);
        return network.add({ sort: 'clear', course, table, count }, { duration, after: [after], pool }, { rank });
    });
    const planned = trips * way + covers * pace.clearingCover;
    draft.progress[table] = {
        after: clearing,
        begun: clearing[0]!,
        takes: planned,
        served: { activity: served, takes: lasts + planned },
        last: { activity: clearing.at(-1)!, takes: durations.at(-1)! },
    };
    return { eaten, clearing };
}
