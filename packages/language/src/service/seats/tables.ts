import type { Room } from '../../plan/types.js';
import type { Table } from './deal-seats.js';

/**
 * The tables of a room in its order, with their seats.
 * A table that does not say how many sit at it gets an equal share, rounded up, of the guests whom the others leave standing.
 */
export function tablesOf(room: Room | undefined, guests: number): Table[] {
    const tables = new Map<string, number | undefined>();
    for (const { names, seats } of room?.tables ?? []) {
        for (const name of names) {
            if (!tables.has(name)) {
                tables.set(name, seats?.count);
            }
        }
    }
    const stated = [...tables.values()];
    const open = stated.filter((seats) => seats === undefined).length;
    const left = guests - stated.reduce<number>((sum, seats) => sum + (seats ?? 0), 0);
    const share = Math.ceil(Math.max(0, left) / Math.max(1, open));
    return [...tables].map(([name, seats]) => ({ name, seats: seats ?? share }));
}
