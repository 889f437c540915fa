/** Which tables are whose. */

export interface Station {
    /** Indices of tables next to each other in the order of the room. */
    readonly tables: readonly number[];
    readonly servers: number;
}

/**
 * Tables shared out to the servers: runs of tables next to each other, as even in guests as they can be (the least sum of
 * squares, tried exactly). Where there are more servers than tables, the others join the tables with most guests a server.
 * @param guests at each table, in the order of the room
 */
export function shareOut(guests: readonly number[], servers: number): Station[] {
    if (servers <= 0 || guests.length === 0) {
        return [];
    }
    if (servers >= guests.length) {
        return staffTables(guests, servers);
    }
    const upTo = [0];
    guests.forEach((count, table) => upTo.push(upTo[table]! + count));
    const cost = (from: number, to: number): number => (upTo[to]! - upTo[from]!) ** 2;
    // least[n]: the least cost of the first n tables for the servers so far; cuts tells where each one's tables begin.
    let least = guests.map((_, table) => cost(0, table + 1));
    least.unshift(Infinity);
    const cuts: number[][] = [];
    for (let server = 1; server < servers; server++) {
        const next = Array<number>(guests.length + 1).fill(Infinity);
        const cut = Array<number>(guests.length + 1).fill(0);
        for (let to = server + 1; to <= guests.length; to++) {
            for (let from = server; from < to; from++) {
                const sum = least[from]! + cost(from, to);
                if (sum < next[to]!) {
                    next[to] = sum;
                    cut[to] = from;
                }
            }
        }
        least = next;
        cuts.push(cut);
    }
    const stations: Station[] = [];
    let to = guests.length;
    for (const cut of [...cuts.toReversed(), [] as number[]]) {
        const from = cut[to] ?? 0;
        stations.unshift({ tables: Array.from({ length: to - from }, (_, index) => from + index), servers: 1 });
        to = from;
    }
    return stations;
}

function staffTables(guests: readonly number[], servers: number): Station[] {
    const staff = guests.map(() => 1);
    for (let more = servers - guests.length; more > 0; more--) {
        const busiest = guests.reduce(
            (most, count, table) => (count / staff[table]! > guests[most]! / staff[most]! ? table : most),
            0,
        );
        staff[busiest]! += 1;
    }
    return guests.map((_, table) => ({ tables: [table], servers: staff[table]! }));
}

/** The order in which tables are served: the first of every station, then the second of every station. */
export function servingOrder(stations: readonly Station[]): number[] {
    const longest = Math.max(0, ...stations.map(({ tables }) => tables.length));
    return Array.from({ length: longest }, (_, rank) =>
        stations.flatMap(({ tables }) => (rank < tables.length ? [tables[rank]!] : [])),
    ).flat();
}
