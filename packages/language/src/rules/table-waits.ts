import type { Plan } from '../plan/types.js';
import type { Miss } from '../service/run/targets.js';
import { defineRule } from './rule.js';
import { sayTeam, sayWait, serviceMisses, teamFix, teamWanted } from './service-misses.js';
import { quoted } from './wording.js';

const plan = (team: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 48
}

room "Boathouse" 14 m by 12 m {
    table A to F: round 60 inch, 8 seats
}

team { captain 1   servers 6   ${team} }

menu {
    course soup "Leek and potato" {
        served in soup-bowl warmed to 60 °C at 66 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}
`;

export default defineRule({
    id: 'table-waits',
    group: 'service',
    since: '0.2.0',
    title: 'Guests wait too long for each other’s plates',
    why: 'A course reaches all guests in prompt succession: the first would eat alone or watch their plates go cold.',
    source: ['table-service 10.22', 'quantities 6.2', 'common practice, no source'],
    fix: 'sometimes',
    customs: ['longest-table-wait', 'longest-seat-wait', 'plates-a-trip', 'walking', 'handing-over', 'setting-down'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'One line of three plates a minute',
                text: plan('runners 2   plating-lines 1 at 3 plates per min')
                    .replace('course soup', '<|course soup')
                    .replace('potato" {', 'potato"|> {'),
            },
        ],
        right: [{ text: plan('runners 2   plating-lines 1 at 12 plates per min') }],
    },
    check({ plan, service, report }) {
        const found = serviceMisses(plan, service);
        const waits = (found?.misses ?? []).filter(({ sort }) => sort === 'table-wait' || sort === 'seat-wait');
        const [worst, ...others] = waits.toSorted((a, b) => b.minutes / b.limit - a.minutes / a.limit);
        const course = worst && plan.menu?.courses[worst.course];
        if (!found || !course) {
            return;
        }
        const wanted = teamWanted(found);
        // Where more servers are wanted too, the finding is about them.
        if (wanted?.more.some(({ member }) => member === 'servers')) {
            return;
        }
        const fix = wanted && teamFix(plan, wanted);
        report({
            at: course.head,
            message: `${sayMiss(plan, worst)}; the house allows ${sayWait(worst.limit)}.`,
            hint:
                wanted && fix
                    ? `${wanted.isSmallest ? 'The smallest team that keeps to it has' : 'It would do with'} ${sayTeam(wanted)}.`
                    : 'More people alone don’t mend it: plate ahead, carry more at once, or shorten the way from the pass.',
            related: others.map((miss) => ({
                at: plan.menu!.courses[miss.course]!.head,
                message: `${sayMiss(plan, miss)}.`,
            })),
            fixes: fix ? [fix] : [],
        });
    },
});

/** `T11` is served … 14 min after the first table. */
export function sayMiss(plan: Plan, { sort, course, table, minutes }: Miss): string {
    const title = quoted(plan.menu?.courses[course]?.title ?? 'the course');
    const where = quoted(table ?? 'the last table');
    return sort === 'table-wait'
        ? `${where} is served ${title} ${sayWait(minutes)} after the first table`
        : `At ${where} the last guest is served ${title} ${sayWait(minutes)} after the first`;
}
