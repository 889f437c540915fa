/** One course at one table: plated, carried out, set down. Shared by courses that stand before guests sit and all others. */
import type { Evening } from './evening.js';
import type { Draws } from './draws.js';
import type { Precedence } from './network.js';
import type { Tag, Turn, WorkNetwork } from './work-network.js';
import type { Workforce } from './workforce.js';

/** One trip with plates of one table. */
export interface Trip {
    /** The dish of every plate, in the order carried. */
    readonly dishes: readonly number[];
    /** Activities that plate them; the moment of the call where no line does. */
    readonly plated: readonly number[];
    readonly carry: number;
    /** Activity at whose end the last of them is set down, or at whose start plus `lag`. */
    readonly setDown: Precedence;
}

export interface Serving {
    readonly trips: readonly Trip[];
    /** The moment every guest of the table is served. */
    readonly served: number;
}

export interface ServingInput {
    readonly evening: Evening;
    readonly workforce: Workforce;
    readonly network: WorkNetwork;
    readonly draws: Draws;
    readonly course: number;
    readonly table: number;
    /** Place of the table in the order of serving. */
    readonly rank: number;
    /** The moment from which its plates may be plated. */
    readonly call: number;
    /** For what is plated ahead and kept; the call where nothing is. */
    readonly callAhead: number;
    /** What must be over, or begun so long ago, before plates may leave the pass. */
    readonly mayLeave: readonly Precedence[];
    /** What must be over before plates may be set down. */
    readonly isReady: readonly number[];
    readonly notBefore?: number;
}

/** Time a walk from the pass to a table takes, min. */
export function walkTo(evening: Evening, table: number): number {
    return evening.tables[table]!.fromPass / evening.pace.walking;
}

/** Times of one plate at the stations of a line. */
export function stationsOf(evening: Evening, course: number, dish: number): readonly number[] {
    return evening.courses[course]?.dishes[dish]?.stations ?? evening.team.stations;
}

export function serveTable(input: ServingInput): Serving {
    const { evening, workforce, network, draws, course, table, rank } = input;
    const { pace } = evening;
    const station = workforce.stationOf[table]!;
    const { plates } = evening.tables[table]!.courses[course]!;
    const out = walkTo(evening, table);
    const trips: Trip[] = [];
    for (let first = 0; first < plates.length; first += pace.platesATrip) {
        const dishes = plates.slice(first, first + pace.platesATrip);
        const before = trips.at(-1);
        // Once a table has begun to be served it is finished before the next.
        const turn: Turn = { rank, isBegun: before !== undefined };
        const plated = plateTrip(input, dishes, turn, before?.plated.at(-1));
        const way = out * (1 + draws.trip() * pace.tripSpread);
        const setting = dishes.length * pace.settingDown;
        const tag = { course, table, count: dishes.length };
        const after: (number | Precedence)[] = [
            ...new Set([...plated, input.call]),
            ...input.mayLeave,
            ...(before ? [sinceStart(before.carry)] : []),
        ];
        if (workforce.runners === undefined) {
            // Servers fetch the plates of their own tables and set them down themselves.
            const release = input.notBefore === undefined ? undefined : input.notBefore - way;
            const fetching = {
                duration: 2 * way + setting,
                after: [...after, ...input.isReady],
                release,
                pool: station,
            };
            const carry = network.add({ sort: 'carry', ...tag }, fetching, turn);
            trips.push({ dishes, plated, carry, setDown: sinceStart(carry, way + setting) });
            continue;
        }
        const carrying = { duration: 2 * way + pace.handingOver, after, pool: workforce.runners };
        const carry = network.add({ sort: 'carry', ...tag }, carrying, turn);
        const serving = {
            duration: setting,
            after: [sinceStart(carry, way), ...input.isReady],
            release: input.notBefore,
            pool: station,
        };
        const serve = network.add({ sort: 'serve', ...tag }, serving, turn);
        trips.push({ dishes, plated, carry, setDown: { activity: serve, from: 'end', lag: 0 } });
    }
    const served = network.add(
        { sort: 'wait', course, table, count: plates.length },
        { duration: 0, after: trips.length > 0 ? trips.map((trip) => trip.setDown) : [input.call, ...input.isReady] },
    );
    return { trips, served };
}

/**
 * @param before the plate before them at the same table, that leaves with an earlier trip
 * @returns the activities that plate them; the call where the plan names no line and plates are ready then
 */
function plateTrip(
    { evening, workforce, network, course, table, call, callAhead }: ServingInput,
    dishes: readonly number[],
    turn: Turn,
    before: number | undefined,
): number[] {
    const { lines: pool } = workforce;
    if (pool === undefined) {
        return dishes.map(() => call);
    }
    const since = before === undefined ? [] : [sinceStart(before)];
    const tag: Tag = { sort: 'plate', course, table, count: 1 };
    const live = { after: [call, ...since], turn };
    const ahead = { after: [callAhead, ...since], turn: { ...turn, atLeisure: true } };
    return dishes.map((dish) => {
        const when = evening.courses[course]?.dishes[dish]?.isAhead ? ahead : live;
        return network.add(tag, { duration: stationsOf(evening, course, dish), after: when.after, pool }, when.turn);
    });
}

function sinceStart(activity: number, lag = 0): Precedence {
    return { activity, from: 'start', lag };
}
