import type { Plan, Pour } from '../plan/types.js';
import { isLeftOff } from '../service/diets.js';
import { namedAlcohol } from '../service/drinks/alcohol.js';
import { guestsOffered, insteadOf, isMeantFor } from '../service/drinks/drinkers.js';
import type { GuestGroup } from '../service/types.js';
import { isAlcoholic, lastPhrase, takenFor } from './drinks.js';
import { defineRule, type Related } from './rule.js';
import { agreeing, counted, quoted } from './wording.js';

export default defineRule({
    id: 'alcohol-reaches-children',
    group: 'safety',
    since: '0.1.0',
    title: 'A drink with alcohol is poured for children',
    why: 'A server who pours along a table pours for every glass on it. The law on serving minors is local, and licensed staff answer for it.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    safety: 'floor',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 { 4 children } }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour <|"Country red"|> 5 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
    }
}`,
            },
            {
                title: 'Coffee with spirits',
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 { 4 children } }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
    }
    coffee after main in coffee-cup { contains <|alcohol|> }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 { 4 children } }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour "Country red" 5 fl oz into red-wine-glass at 17 °C is red-wine, left off for children {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const { cupboard, menu } = plan;
        const children = service.groups.filter((group) => group.children && group.count > 0);
        for (const poured of service.pours) {
            const offered = [...guestsOffered(poured, service.groups, service.servings)];
            for (const facts of [poured, ...insteadOf(plan, poured)]) {
                const { pour } = facts;
                const reached = offered.flatMap(([group, count]) =>
                    group.children && count > 0 && isPouredFor(plan, pour, group) ? [{ group, count }] : [],
                );
                if (!isAlcoholic(facts, cupboard) || reached.length === 0) {
                    continue;
                }
                const taken = facts === poured ? takenFor(facts) : undefined;
                report({
                    at: pour.titleOrigin,
                    message: `${quoted(pour.title)} ${taken ? `is ${taken}, which has` : 'has'} alcohol, and nothing keeps it from the ${sayChildren(reached)} among the guests.`,
                    hint: 'Leave it off for children; the local law and licensed staff decide who may be served.',
                    related: reached.map(({ group }) => countedHere(group)),
                    fixes: [
                        {
                            title: `Leave ${quoted(pour.title)} off for children`,
                            safety: 'safe',
                            changes: [{ do: 'append', at: lastPhrase(pour), words: 'left off for children' }],
                        },
                    ],
                });
            }
        }
        const inCoffee = namedAlcohol(menu?.coffee?.contains?.what ?? [], cupboard);
        if (inCoffee && children.length > 0) {
            report({
                at: inCoffee.origin,
                message: `The coffee contains ${quoted(inCoffee.name)}, and nothing keeps it from the ${sayChildren(children)} among the guests.`,
                hint: 'Pour it as a drink of its own, `left off for children`; the local law and licensed staff decide who may be served.',
                related: children.map(countedHere),
            });
        }
    },
});

/** A pour for guests of some need reaches only those who have it. */
function isPouredFor(plan: Plan, { who, leftOffFor }: Pour, group: GuestGroup): boolean {
    return isMeantFor(who, group, plan) && !isLeftOff(leftOffFor, group, plan.cupboard);
}

function sayChildren(groups: readonly { readonly count: number }[]): string {
    return counted(
        groups.reduce((sum, { count }) => sum + count, 0),
        'child',
        'children',
    );
}

function countedHere({ origin, count }: GuestGroup): Related {
    return {
        at: origin,
        message: `${counted(count, 'child', 'children')} ${agreeing(count, 'is', 'are')} counted here.`,
    };
}
