import type { TeamFound } from '../service/run/smallest-team.js';
import { fewestServers, targetsOf } from '../service/run/targets.js';
import { clausesOf, withoutHands } from '../service/run/team-of-plan.js';
import type { Origin } from '../plan/origin.js';
import type { Plan } from '../plan/types.js';
import { defineRule, type Report } from './rule.js';
import { sayTeam, sayWait, serviceMisses, teamFix, teamWanted, type ServiceMisses } from './service-misses.js';
import { sayMiss } from './table-waits.js';
import { agreeing, counted } from './wording.js';

const plan = (servers: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 48
}

room "Boathouse" 14 m by 12 m {
    table A to F: round 60 inch, 8 seats
}

team { captain 1   ${servers}   runners 2   plating-lines 1 at 12 plates per min }

menu {
    course soup "Leek and potato" {
        served in soup-bowl warmed to 60 °C at 60 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}
`;

export default defineRule({
    id: 'too-few-servers',
    group: 'service',
    since: '0.2.0',
    title: 'Fewer servers than the service needs',
    why: 'Too few hands are seen by every guest at once: plates wait on the sideboard, glasses stay empty, tables are cleared late.',
    source: ['table-service 10.1', 'table-service 10.3', 'table-service 10.4', 'quantities 6.1'],
    fix: 'sometimes',
    customs: ['server-ratio', 'service-style', 'longest-table-wait', 'longest-seat-wait', 'longest-wine-wait'],
    scope: 'event',
    examples: {
        wrong: [
            { title: 'One server for six tables', text: plan('servers <|1|>') },
            { title: 'Nobody', text: plan('servers <|0|>') },
            {
                title: 'Two servers who fetch every plate themselves, in a house that counts on 40 guests a server',
                text: `house "Saltmarsh Hall" {\n    laying { server-ratio: 40 per server   longest-table-wait: 3 min }\n}\n\n${plan('servers <|2|>').replace('   runners 2', '')}`,
            },
        ],
        right: [{ text: plan('servers 3') }],
    },
    check({ plan, service, report }) {
        const nobody = withoutHands(plan, 'serving');
        if (nobody && service.guestCount > 0) {
            report(sayNobody(plan, service.guestCount, nobody.count.origin));
        }
        const found = serviceMisses(plan, service);
        const clause = clausesOf(plan, 'server').at(-1);
        if (!found || !clause) {
            return;
        }
        const { misses, evening, targets, fewestServers } = found;
        const { servers } = evening.team;
        const guests = evening.tables.reduce((sum, table) => sum + table.guests, 0);
        const waits = misses.filter(({ sort }) => sort === 'table-wait' || sort === 'seat-wait');
        const isUnderRatio = servers < fewestServers;
        if (!isUnderRatio && waits.length === 0) {
            return;
        }
        const wanted = teamWanted(found) ?? (isUnderRatio ? enoughServers(found) : undefined);
        if (!isUnderRatio && !wanted?.more.some(({ member }) => member === 'servers')) {
            return;
        }
        const fix = wanted && teamFix(plan, wanted);
        const [worst] = waits.toSorted((a, b) => b.minutes / b.limit - a.minutes / a.limit);
        const people = counted(servers, 'server');
        report({
            at: clause.count.origin,
            message: isUnderRatio
                ? `${people} ${agreeing(servers, 'looks', 'look')} after ${counted(guests, 'guest')}; the house counts on ${targets.guestsPerServer} guests a server, which makes ${fewestServers}.`
                : `With ${people}, ${lowerFirst(sayMiss(plan, worst!))}; the house allows ${sayWait(worst!.limit)}.`,
            hint:
                wanted && fix
                    ? wanted.isSmallest
                        ? `The smallest team that keeps to what the house asks has ${sayTeam(wanted)}.`
                        : `Have ${sayTeam(wanted)}.`
                    : undefined,
            related: waits.map((miss) => ({
                at: plan.menu!.courses[miss.course]!.head,
                message: `${sayMiss(plan, miss)}; the house allows ${sayWait(miss.limit)}.`,
            })),
            fixes: fix ? [fix] : [],
        });
    },
});

/** Nothing of the evening is computed then, so that no other finding says that plates are late. */
function sayNobody(plan: Plan, guests: number, at: Origin): Report {
    const targets = targetsOf(plan.customs);
    const fewest = fewestServers(guests, targets);
    return {
        at,
        severity: 'error',
        message: `Nobody serves ${counted(guests, 'guest')}: what is called, carried and cleared when can't be told.`,
        hint: `The house counts on ${targets.guestsPerServer} guests a server, which makes ${fewest}.`,
        fixes: [
            {
                title: `Have ${counted(fewest, 'server')}`,
                safety: 'unsafe',
                changes: [{ do: 'replace', at, words: String(fewest) }],
            },
        ],
    };
}

/** Enough for the ratio, where no team was found with which nobody waits. */
function enoughServers({ evening, fewestServers: count }: ServiceMisses): TeamFound {
    const more = [{ member: 'servers', role: 'server', count } as const];
    return { team: { ...evening.team, servers: count }, more, isSmallest: false };
}

function lowerFirst(text: string): string {
    return text.charAt(0).toLowerCase() + text.slice(1);
}
