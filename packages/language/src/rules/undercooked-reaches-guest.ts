import { undercookedFor, type Undercooked } from '../service/undercooked.js';
import type { Fix } from './fixes.js';
import { guestsOf, statedHere } from './guest-words.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (cook: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24 {
        2 highly-susceptible
    }
    notice "Eating undercooked beef may raise your risk of illness."
}

menu {
    course main {
        lasts 35 min
        dish "Grilled sirloin" is steak {
            served on dinner-plate warmed at 54 °C
            ${cook}
            contains nothing
        }
    }
}
`;

export default defineRule({
    id: 'undercooked-reaches-guest',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'Raw or undercooked food for guests whom it harms most',
    why: 'No notice makes it safe for the very young, the old, the pregnant or the ill, and children do not read notices. The food code forbids it.',
    source: ['temperature S16', 'temperature S11', 'temperature S12', 'temperature S13'],
    fix: 'sometimes',
    noFix: 'A dish that is meant to be raw can’t be cooked by a word: these guests need another dish.',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|cook to 52 °C|>') }],
        right: [{ text: plan('cook to 63 °C') }],
    },
    check({ plan, service, report }) {
        for (const { portions } of service.servings) {
            for (const { dish, groups } of portions) {
                for (const { group, count } of groups) {
                    const found = undercookedFor(group, dish, plan);
                    if (found) {
                        report({
                            at: found.at,
                            message: `${quoted(dish.title)} ${found.words}, and ${guestsOf({ ...group, count })} would get it.`,
                            hint: 'Cook it through for them or give them another dish. The local food code and licensed staff decide; a thermometer tells.',
                            related: [{ at: group.origin, message: statedHere(group) }],
                            fixes: cookThrough(dish.title, found, dish.cookTo?.temperature.origin),
                        });
                    }
                }
            }
        }
    },
});

function cookThrough(title: string, { cookTo }: Undercooked, at: Undercooked['at'] | undefined): Fix[] {
    return cookTo && at
        ? [
              {
                  title: `Cook ${quoted(title)} to ${cookTo}`,
                  safety: 'unsafe',
                  preferred: true,
                  changes: [{ do: 'replace', at, words: cookTo }],
              },
          ]
        : [];
}
