import type { Cupboard } from '../plan/cupboard.js';
import type { Pour } from '../plan/types.js';
import { isLeftOff, sameNeed } from '../service/diets.js';
import type { GuestGroup } from '../service/types.js';
import { isAlcoholic, lastPhrase, strengthOf, takenFor } from './drinks.js';
import { defineRule } from './rule.js';
import { agreeing, counted, quoted } from './wording.js';

export default defineRule({
    id: 'alcohol-reaches-children',
    group: 'safety',
    since: '0.1.0',
    title: 'A drink with alcohol is poured for children',
    why: 'A server who pours along a table pours for every glass on it. The law on serving minors is local, and licensed staff answer for it.',
    source: ['common practice, no source'],
    fix: 'always',
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
        const children = service.groups.filter((group) => group.children && group.count > 0);
        for (const facts of service.pours) {
            const { pour, dish, course } = facts;
            if (!isAlcoholic(strengthOf(facts))) {
                continue;
            }
            // A pour of one dish reaches those who get the dish.
            const served = dish && service.servings[course]?.portions.find((portion) => portion.dish === dish)?.groups;
            const reached = children
                .filter((group) => !served || served.some((each) => each.group === group))
                .filter((group) => isPouredFor(pour, group, plan.cupboard));
            if (reached.length === 0) {
                continue;
            }
            const taken = takenFor(facts);
            const count = reached.reduce((sum, group) => sum + group.count, 0);
            report({
                at: pour.titleOrigin,
                message: `${quoted(pour.title)} ${taken ? `is ${taken}, which has` : 'has'} alcohol, and nothing keeps it from the ${counted(count, 'child', 'children')} among the guests.`,
                hint: 'Leave it off for children; the local law and licensed staff decide who may be served.',
                related: reached.map((group) => ({
                    at: group.origin,
                    message: `${counted(group.count, 'child', 'children')} ${agreeing(group.count, 'is', 'are')} counted here.`,
                })),
                fixes: [
                    {
                        title: `Leave ${quoted(pour.title)} off for children`,
                        safety: 'safe',
                        changes: [{ do: 'append', at: lastPhrase(pour), words: 'left off for children' }],
                    },
                ],
            });
        }
    },
});

/** A pour for guests of some need reaches only those who have it. */
function isPouredFor({ who, leftOffFor }: Pour, group: GuestGroup, cupboard: Cupboard): boolean {
    const needs = who?.sort === 'some' ? who.needs : [];
    const isWanted = needs.every((wanted) => group.needs.some((need) => sameNeed(wanted, need, cupboard)));
    return isWanted && !isLeftOff(leftOffFor, group, cupboard);
}
