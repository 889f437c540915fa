/** Who does what: the pools of the scheduler, and the people in them by name. */
import type { Evening } from './evening.js';
import { shareOut, servingOrder, type Station } from './stations.js';

export interface Workforce {
    readonly stations: readonly Station[];
    /** Index of the station of every table. */
    readonly stationOf: readonly number[];
    /** Tables in the order in which they are served. */
    readonly order: readonly number[];
    /** Units of each pool; the first are the stations. */
    readonly pools: readonly number[];
    /** Index of the first person of each pool in `people`. */
    readonly firstPerson: readonly number[];
    readonly people: readonly { readonly name: string; readonly role: string }[];
    /** Absent where the plan names none. */
    readonly lines?: number;
    readonly runners?: number;
    readonly sommeliers?: number;
    readonly bussers?: number;
    /** The person who calls the courses. */
    readonly caller: number;
}

export function workforceOf({ tables, team }: Evening): Workforce {
    const stations = shareOut(
        tables.map((table) => table.guests),
        team.servers,
    );
    const stationOf = tables.map((_, table) => stations.findIndex((station) => station.tables.includes(table)));
    const people: { name: string; role: string }[] = [];
    const add = (role: string, count: number): number => {
        const first = people.length;
        for (let number = 1; number <= count; number++) {
            people.push({ name: count === 1 && role === 'captain' ? role : `${role} ${number}`, role });
        }
        return first;
    };
    add('captain', team.captains);
    const pools: number[] = [];
    const firstPerson: number[] = [];
    let server = add('server', team.servers);
    const caller = team.captains > 0 ? 0 : server;
    for (const { servers } of stations) {
        pools.push(servers);
        firstPerson.push(server);
        server += servers;
    }
    const pool = (role: string, count: number): number | undefined => {
        if (count <= 0) {
            return undefined;
        }
        firstPerson.push(add(role, count));
        return pools.push(count) - 1;
    };
    return {
        stations,
        stationOf,
        order: servingOrder(stations),
        runners: pool('runner', team.runners),
        lines: pool(team.lineRole, team.lines),
        sommeliers: pool('sommelier', team.sommeliers),
        bussers: pool('busser', team.bussers),
        pools,
        firstPerson,
        people,
        caller,
    };
}
