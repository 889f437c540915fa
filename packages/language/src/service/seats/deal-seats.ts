/** Guests dealt to the seats of a room. Plain data, so that the answer is remembered while it stays the same. */
import { remember } from '../remember.js';

export interface Table {
    readonly name: string;
    readonly seats: number;
}

/** Guests who get the same of everything. Those with a seat of their own are parties of one. */
export interface Party {
    readonly count: number;
    readonly table?: string;
    readonly seat?: number;
}

export interface Dealing {
    readonly tables: readonly Table[];
    readonly parties: readonly Party[];
    /** Covers to lay, the guests' own among them. */
    readonly covers: number;
}

export interface TakenSeat {
    /** Index of the table. */
    readonly table: number;
    readonly seat: number;
    /** Index of the party. */
    readonly party: number;
    readonly stated: 'seat' | 'table' | 'nothing';
}

export interface DealtSeats {
    /** By table, then by seat. */
    readonly taken: readonly TakenSeat[];
    /** Guests at each table. */
    readonly guests: readonly number[];
    /** Covers laid at each table. */
    readonly laid: readonly number[];
    readonly withoutSeat: number;
}

/**
 * Seats stated first, then guests of whom the plan names the table, then all others: every table filled to the same share of
 * its seats, the lowest numbers first, and every party spread evenly through the room, so that each table has its part of every
 * dish. A seat that is not there or is taken counts for its table alone; a table that is full or not there counts for nothing.
 */
export const dealSeats = remember((dealing: Dealing): DealtSeats => {
    const { tables, parties } = dealing;
    const byName = new Map(tables.map(({ name }, index) => [name, index]));
    const seated = tables.map(() => new Map<number, TakenSeat>());
    const hasRoom = (table: number): boolean => seated[table]!.size < tables[table]!.seats;
    const lowestFree = tables.map(() => 1);
    const sit = (table: number, party: number, stated: TakenSeat['stated'], wanted?: number): void => {
        const places = seated[table]!;
        let seat = wanted ?? lowestFree[table]!;
        while (places.has(seat)) {
            seat++;
        }
        if (wanted === undefined) {
            lowestFree[table] = seat + 1;
        }
        places.set(seat, { table, seat, party, stated });
    };

    const atTable: Waiting[] = [];
    const anywhere: Waiting[] = [];
    for (const [party, { count, table: name, seat }] of parties.entries()) {
        const table = name === undefined ? undefined : byName.get(name);
        if (count <= 0) {
            continue;
        }
        if (table === undefined) {
            anywhere.push({ party, count });
        } else if (seat === undefined || seat < 1 || seat > tables[table]!.seats || seated[table]!.has(seat)) {
            atTable.push({ party, count, table });
        } else {
            sit(table, party, 'seat', seat);
            if (count > 1) {
                atTable.push({ party, count: count - 1, table });
            }
        }
    }
    for (const { party, count, table } of atTable) {
        let left = count;
        while (left > 0 && hasRoom(table!)) {
            sit(table!, party, 'table');
            left--;
        }
        anywhere.push({ party, count: left });
    }

    const queue = spread(anywhere);
    const sizes = seated.map(({ size }) => size);
    let next = 0;
    for (const [table, more] of fillEvenly(tables, sizes, queue.length).entries()) {
        for (const party of queue.slice(next, (next += more))) {
            sit(table, party, 'nothing');
        }
    }

    const guests = seated.map(({ size }) => size);
    const beyond = dealing.covers - guests.reduce((sum, count) => sum + count, 0);
    const empty = fillEvenly(tables, guests, beyond);
    return {
        taken: seated.flatMap((places) => [...places.values()].toSorted((a, b) => a.seat - b.seat)),
        guests,
        laid: guests.map((count, table) => count + empty[table]!),
        withoutSeat: tables.length === 0 ? 0 : queue.length - next,
    };
});

interface Waiting {
    readonly party: number;
    readonly count: number;
    readonly table?: number;
}

/** The parties' guests in one line, those of every party at even distances. */
export function spread(parties: readonly Waiting[]): number[] {
    return parties
        .flatMap(({ party, count }) =>
            Array.from({ length: Math.max(0, count) }, (_, index) => ({ party, at: (index + 0.5) / count })),
        )
        .toSorted((a, b) => a.at - b.at || a.party - b.party)
        .map(({ party }) => party);
}

/**
 * How many of `guests` each table takes, so that the fullest has the smallest share of its seats taken; the first table first
 * where shares are equal. Fewer than `guests` in all where the seats run out.
 */
function fillEvenly(tables: readonly Table[], filled: readonly number[], guests: number): number[] {
    const steps = tables.flatMap(({ seats }, table) =>
        Array.from({ length: Math.max(0, Math.min(seats - filled[table]!, guests)) }, (_, index) => ({
            table,
            share: (filled[table]! + index + 1) / seats,
        })),
    );
    const taken = tables.map(() => 0);
    for (const { table } of steps
        .toSorted((a, b) => a.share - b.share || a.table - b.table)
        .slice(0, Math.max(0, guests))) {
        taken[table]!++;
    }
    return taken;
}
