/** Where the service, as it is simulated, misses what the house asks, and the team that would keep to it. */
import type { Plan } from '../plan/types.js';
import type { Evening } from '../service/run/evening.js';
import { plannedEvening } from '../service/run/run.js';
import { smallestTeam, type TeamFound } from '../service/run/smallest-team.js';
import { fewestServers, missesOf, targetsOf, type Miss, type Targets } from '../service/run/targets.js';
import { clausesOf, type Role } from '../service/run/team-of-plan.js';
import type { Run } from '../service/run/types.js';
import type { Service } from '../service/types.js';
import type { Fix, Intention } from './fixes.js';
import { counted, listed } from './wording.js';

export interface ServiceMisses {
    readonly run: Run;
    readonly evening: Evening;
    readonly targets: Targets;
    readonly misses: readonly Miss[];
    /** The fewest servers that the house's ratio allows for the guests seated. */
    readonly fewestServers: number;
}

/** `undefined` where the plan names no guests, tables or servers: then there is no service to judge. */
export function serviceMisses(plan: Plan, service: Service): ServiceMisses | undefined {
    const evening = plannedEvening(plan, service)?.evening;
    const { run } = service;
    if (!evening || !run) {
        return undefined;
    }
    const targets = targetsOf(plan.customs);
    const guests = evening.tables.reduce((sum, table) => sum + table.guests, 0);
    return {
        run,
        evening,
        targets,
        misses: missesOf(evening, run.courses, run.speeches, targets),
        fewestServers: fewestServers(guests, targets),
    };
}

const WAITS = ['table-wait', 'seat-wait', 'wine-wait', 'toast-wait'] as const;

/** The smallest team with which nobody waits longer than the house allows. @param isLateToo courses start in time as well */
export function teamWanted({ evening, targets }: ServiceMisses, isLateToo = false): TeamFound | undefined {
    return smallestTeam({ evening, targets, mends: isLateToo ? [...WAITS, 'late'] : WAITS }).found;
}

/** What the plan calls the members of a team. */
const CLAUSE = {
    servers: 'server',
    runners: 'runner',
    sommeliers: 'sommelier',
    bussers: 'busser',
} as const satisfies Record<string, Role>;

function roleOf({ member, role }: TeamFound['more'][number]): Role {
    return member === 'lines' ? (role === 'plater' ? 'plater' : 'plating-line') : CLAUSE[member];
}

/** `5 servers and 2 runners`. */
export function sayTeam({ more }: TeamFound): string {
    return listed(more.map(({ role, count }) => counted(count, role)));
}

/** Raises the numbers in the `team`; a role that it does not name is added. */
export function teamFix(plan: Plan, found: TeamFound): Fix | undefined {
    const { team } = plan;
    if (!team || found.more.length === 0) {
        return undefined;
    }
    const changes = found.more.map((member): Intention => {
        const role = roleOf(member);
        const clauses = clausesOf(plan, role);
        const last = clauses.at(-1);
        if (!last) {
            return {
                do: 'add-clause',
                to: team.origin,
                clause: `${role}${member.count === 1 ? '' : 's'} ${member.count}`,
            };
        }
        const others = clauses.slice(0, -1).reduce((sum, clause) => sum + clause.count.count, 0);
        return { do: 'replace', at: last.count.origin, words: String(member.count - others) };
    });
    return { title: `Have ${sayTeam(found)}`, safety: 'unsafe', changes };
}

/** `1.5 min`, `40 s`: how long somebody waits. */
export function sayWait(minutes: number): string {
    return minutes < 1 ? `${Math.round(minutes * 60)} s` : `${Number(minutes.toFixed(1))} min`;
}
