import type { Plan } from '../../plan/types.js';
import type { Team } from './evening.js';

type Roles = NonNullable<Plan['team']>['roles'];

/** The roles that a service is run with; `servers` and `server` are the same. */
export type Role = 'captain' | 'server' | 'runner' | 'plating-line' | 'plater' | 'sommelier' | 'busser';

/** The clauses that name a role, in the order of the text. */
export function clausesOf(plan: Plan, role: Role): Roles {
    return (plan.team?.roles ?? []).filter(({ role: named }) => isSameRole(named.name, role));
}

/** `server` and `servers` are one role. */
export function isSameRole(one: string, other: string): boolean {
    return one === other || one === `${other}s` || `${one}s` === other;
}

/**
 * The clause that has nobody for a work that no one else does, `servers 0` or `plating-lines 0`: nothing can be served then.
 * What runners, sommeliers and bussers do falls to the servers where there are none.
 */
export function withoutHands(plan: Plan, work: 'serving' | 'plating'): Roles[number] | undefined {
    const clauses =
        work === 'serving'
            ? clausesOf(plan, 'server')
            : [...clausesOf(plan, 'plating-line'), ...clausesOf(plan, 'plater')];
    return clauses.every(({ count }) => count.count <= 0) ? clauses.at(-1) : undefined;
}

/** A slip of the finger must not fill the memory with servers. */
export const MOST_OF_A_ROLE = 1000;

/**
 * People and lines by role. Where no plating line is named, every plater is a line of one.
 * @param platingRate plates a minute of a line that says nothing of its pace
 */
export function teamOf(plan: Plan, platingRate: number): Team & { readonly isPaceStated: boolean } {
    const count = (role: Role): number =>
        Math.min(
            MOST_OF_A_ROLE,
            clausesOf(plan, role).reduce((sum, each) => sum + Math.max(0, each.count.count), 0),
        );
    const lines = count('plating-line');
    const paced = clausesOf(plan, lines > 0 ? 'plating-line' : 'plater');
    const stations = paced.find((each) => each.stations.length > 0)?.stations.map((time) => Math.max(0, time.value));
    const rate = paced.flatMap((each) => each.rate ?? []).find(({ amount }) => amount > 0);
    return {
        captains: count('captain'),
        servers: count('server'),
        runners: count('runner'),
        lines: lines > 0 ? lines : count('plater'),
        stations: stations ?? [rate ? rate.perMinutes / rate.amount : 1 / platingRate],
        lineRole: lines > 0 ? 'plating line' : 'plater',
        sommeliers: count('sommelier'),
        bussers: count('busser'),
        isPaceStated: stations !== undefined || rate !== undefined,
    };
}
