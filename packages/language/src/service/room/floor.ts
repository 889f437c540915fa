import type { Clearances } from './types.js';

/** Guests for whom there is floor, at so much each; both areas in the same unit. A part of a guest has no place. */
export function occupants(floor: number, each: number): number {
    return Math.floor(floor / each + NOISE);
}

/** Accessible places wanted among so many seats: the share rounded up to a whole place (quantities §7.3). */
export function accessiblePlaces(seats: number, share: number): number {
    return Math.ceil(seats * share - NOISE);
}

const NOISE = 1e-9;

/** How far behind the table edge the way past a wheelchair begins, mm (quantities R21). */
export function wheelchairInset(length: number, underTable: number): number {
    return length - underTable;
}

/** What a table takes on each of its sides with its guests, and what must be free beyond that, mm. */
export interface SideRoom {
    /** From the edge of the table to the back of a chair; 0 where nobody sits. */
    readonly taken: number;
    /** Beyond it, toward another table. */
    readonly lane: number;
    /** Beyond it, toward a wall. */
    readonly wall: number;
}

/** A side by how its guests sit: nobody, chairs, or a wheelchair among them. */
export function sideRoom(seats: 'none' | 'chairs' | 'wheelchair', clearances: Clearances): SideRoom {
    const { chair, wheelchair, aisle, route, wall } = clearances;
    switch (seats) {
        case 'none':
            return { taken: 0, lane: aisle, wall };
        case 'chairs':
            return { taken: chair, lane: aisle, wall };
        case 'wheelchair':
            return { taken: Math.max(chair, wheelchair), lane: Math.max(aisle, route), wall: Math.max(wall, route) };
    }
}
