/** Deals work out to the people who do all work of the floor, so that each role has its fair part. */
import type { Part, Pool } from './drafts.js';

/** Roles that set up and strike. Where the team has none of them, its captain does. */
const FLOOR = ['server', 'runner', 'busser'];
const ELSE = ['captain', 'sommelier'];

export interface Hands {
    /** False where nobody of the team sets up. */
    readonly isAnybody: boolean;
    alone(minutes: number): Part;
    /** Where there are not so many of one role, one person takes as many times as long. */
    together(minutes: number, people: number): Part;
    /** One after the other through the dish machine, which needs nobody beside those who run it. */
    machine(minutes: number, from: number | undefined): Part;
}

/** @param machine index of the dish machine's pool */
export function handsOf(pools: readonly Pool[], machine: number): Hands {
    const indicesOf = (roles: readonly string[]): number[] =>
        pools.flatMap(({ role, count }, index) =>
            count > 0 && index !== machine && roles.includes(role) ? [index] : [],
        );
    const floor = indicesOf(FLOOR);
    const able = floor.length > 0 ? floor : indicesOf(ELSE);
    const loads = pools.map(() => 0);
    const deal = (work: number, among: readonly number[]): number | undefined => {
        const [first] = among.toSorted((a, b) => loads[a]! / pools[a]!.count - loads[b]! / pools[b]!.count || a - b);
        if (first !== undefined) {
            loads[first]! += work;
        }
        return first;
    };
    return {
        isAnybody: able.length > 0,
        alone: (minutes) => ({ minutes, pool: deal(minutes, able), units: 1 }),
        together(minutes, people) {
            const enough = able.filter((pool) => pools[pool]!.count >= people);
            return enough.length > 0
                ? { minutes, pool: deal(minutes * people, enough), units: people }
                : { minutes: minutes * people, pool: deal(minutes * people, able), units: 1 };
        },
        machine: (minutes, from) => ({ minutes, pool: machine, units: 1, release: from }),
    };
}
