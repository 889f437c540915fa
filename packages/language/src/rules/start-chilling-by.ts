import { degreesLike } from '../plan/degrees.js';
import type { Origin } from '../plan/origin.js';
import type { Plan, Pour } from '../plan/types.js';
import { bathOf, chillTime, TIME_CONSTANTS, type Way } from '../service/chilling/baths.js';
import { eveningClock } from '../service/clock/evening.js';
import type { Chilling } from '../service/chilling/types.js';
import type { Service } from '../service/types.js';
import { hoursRange, hoursWords } from './at-the-guest.js';
import { isDoubtful } from './doubt.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (how: string, wanted = '8 °C'): string => `house "Saltmarsh Hall" {
    laying { chilling-starts: 2 h }
}

event "Lantern supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

menu {
    course fish "Turbot" {
        served on fish-plate warmed to 55 °C at 58 °C
        cook to 63 °C
        lasts 20 min
        contains fish, milk
        pour "Dry riesling" 120 ml into white-wine-glass at ${wanted}, is light-white-wine {
            contains sulphites
            chilled in ${how}
            instead "Sorrel cordial" 120 ml, is cordial { contains nothing }
        }
    }
}
`;

export default defineRule({
    id: 'start-chilling-by',
    group: 'drinks',
    since: '0.1.0',
    title: 'A drink that cannot be chilled, or tempered, by its first pour',
    why: 'A bottle takes hours in the refrigerator and half an hour in ice and water, give or take as much again. One put in too late is poured warm.',
    source: ['temperature §11', 'temperature §12'],
    customs: ['store-temperature', 'fridge-temperature', 'freezer-temperature', 'chilling-starts', 'room-temperature'],
    fix: 'sometimes',
    noFix: 'Where no way is fast or cold enough, the drink has to come from a colder store.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'No time for it', text: plan('<|fridge|>') },
            { title: 'Nothing gets colder than what it stands in', text: plan('<|counter|>') },
        ],
        right: [{ text: plan('ice-water') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        const clock = (minutes: number): string =>
            eveningClock(plan)?.face(minutes) ?? `${hoursWords(-minutes)} before guests are seated`;
        const earliest = -plan.customs['chilling-starts'].value;
        for (const chilling of service.chilling) {
            const pour = pourOf(plan, service, chilling);
            const stated = pour?.chilledIn;
            const { takes, startBy, bath } = chilling;
            if (!pour?.temperature || !stated || isDoubtful(plan, pour.origin)) {
                continue;
            }
            const isTooLate = startBy !== undefined && startBy < earliest;
            if ((takes && !isTooLate) || !isNew(stated.origin)) {
                continue;
            }
            const { temperature: wanted, title } = pour;
            const from = degreesLike(wanted, chilling.from);
            const fixes = otherWays(plan, service, chilling, stated.origin);
            const hint = fixes[0] ? `${fixes[0].title}.` : 'Keep it in a colder store, or want it warmer.';
            report(
                takes
                    ? {
                          at: stated.origin,
                          message: `${quoted(title)} takes ${hoursRange(takes.soonest, takes.latest)} from ${from} to ${wanted.written} in ${quoted(chilling.way)}: it has to be in by ${clock(startBy!)}, and chilling starts at ${clock(earliest)}.`,
                          hint,
                          fixes,
                      }
                    : {
                          at: stated.origin,
                          message: `${quoted(title)} never comes from ${from} to ${wanted.written} in ${quoted(chilling.way)}, which is at ${degreesLike(wanted, bath)}.`,
                          hint,
                          fixes,
                      },
            );
        }
    },
});

/** The pour that states how it is chilled: itself, or one offered in its place. */
function pourOf(plan: Plan, service: Service, { pour, title }: Chilling): Pour | undefined {
    const own = pour < 0 ? plan.menu?.water?.pour : service.pours[pour]?.pour;
    return own && [own, ...own.instead].find((each) => each.title === title);
}

/** Ways that bring it there in time, the one that needs least tending first. */
function otherWays(plan: Plan, service: Service, { way, from, to, neededBy }: Chilling, at: Origin): Fix[] {
    const time = neededBy + plan.customs['chilling-starts'].value;
    return (Object.keys(TIME_CONSTANTS) as Way[])
        .filter((other) => other !== way && other !== 'freezer')
        .filter((other) => {
            const takes = chillTime(from, to, bathOf(plan, other, service.heat.air.celsius));
            return takes !== undefined && takes.latest <= time;
        })
        .map((other) => ({
            title: `Chill it in ${quoted(other)}`,
            safety: 'unsafe',
            changes: [{ do: 'replace', at, words: other }],
        }));
}
