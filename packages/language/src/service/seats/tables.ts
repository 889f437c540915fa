import type { Room } from '../../plan/types.js';
import type { TableToPlace } from '../room/types.js';
import type { Table } from './deal-seats.js';

/**
 * The tables of a room in its order, with their seats: as many as it says, else as many as fit; a table that has neither number
 * nor size gets an equal share, rounded up, of the guests whom the others leave standing.
 * @param laidOut asked only where a table does not say how many sit at it
 */
export function tablesOf(room: Room | undefined, guests: number, laidOut: () => readonly TableToPlace[]): Table[] {
    const tables = new Map<string, number | undefined>();
    for (const { names, seats } of room?.tables ?? []) {
        for (const name of names) {
            if (!tables.has(name)) {
                tables.set(name, seats?.count ?? laidOut().find((table) => table.name === name)?.seats.length);
            }
        }
    }
    const known = [...tables.values()];
    const open = known.filter((seats) => seats === undefined).length;
    const left = guests - known.reduce<number>((sum, seats) => sum + (seats ?? 0), 0);
    const share = Math.ceil(Math.max(0, left) / Math.max(1, open));
    return [...tables].map(([name, seats]) => ({ name, seats: seats ?? share }));
}
