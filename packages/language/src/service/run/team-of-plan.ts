import type { Plan } from '../../plan/types.js';
import type { Team } from './evening.js';

type Roles = NonNullable<Plan['team']>['roles'];

/** The roles that a service is run with; `servers` and `server` are the same. */
export type Role = 'captain' | 'server' | 'runner' | 'plating-line' | 'plater' | 'sommelier' | 'busser';

/** The clauses that name a role, in the order of the text. */
export function clausesOf(plan: Plan, role: Role): Roles {
    return (plan.team?.roles ?? []).filter(({ role: named }) => named.name === role || named.name === `${role}s`);
}

/** A slip of the finger must not fill the memory with servers. */
const MOST_OF_A_ROLE = 1000;

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
