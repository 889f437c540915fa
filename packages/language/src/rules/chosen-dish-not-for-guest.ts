import { dishConflicts } from '../service/diets.js';
import { dishesOf } from '../plan/resolve.js';
import { defineRule } from './rule.js';
import { sayConflicts } from './guest-words.js';
import { quoted } from './wording.js';

const plan = (guest: string): string => `event "Table of eight" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 8
}

seating {
    ${guest}
}

menu {
    course main {
        lasts 35 min
        dish "Grilled sirloin" is steak {
            served on dinner-plate warmed at 54 °C
            contains milk
        }
        dish "Roast squash" {
            served on dinner-plate warmed at 63 °C
            contains nothing
        }
    }
}
`;

export default defineRule({
    id: 'chosen-dish-not-for-guest',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'A guest chose a dish that their own needs rule out',
    why: 'Guests choose by the name of a dish and do not know what is in it. The host has to ask again before the day.',
    source: ['temperature 3.1', 'common practice, no source'],
    fix: 'sometimes',
    noFix: 'Where every dish of the course is ruled out, only the kitchen can change one.',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('"A. Guest" without milk, chooses <|"Grilled sirloin"|>') }],
        right: [{ text: plan('"A. Guest" without milk, chooses "Roast squash"') }],
    },
    check({ plan, service, report }) {
        if (!plan.menu) {
            return;
        }
        const { cupboard } = plan;
        for (const group of service.groups) {
            for (const choice of group.named?.chooses ?? []) {
                const dish = dishesOf(plan.menu).find(({ title }) => title === choice.text);
                const conflictsOf = (each: NonNullable<typeof dish>) =>
                    dishConflicts(each, cupboard.kinds.get(each.kind.name), group, cupboard);
                const conflicts = dish ? conflictsOf(dish) : [];
                if (!dish || conflicts.length === 0) {
                    continue;
                }
                const others =
                    dish.course < 0
                        ? []
                        : (plan.menu.courses[dish.course]?.dishes ?? []).filter(
                              (other) => conflictsOf(other).length === 0,
                          );
                report({
                    at: choice.origin,
                    message: `${quoted(group.named!.name.text)} (${group.label}) chose a dish that is not for them: ${sayConflicts(dish.title, conflicts)}.`,
                    hint: 'Ask the guest again, and have the kitchen confirm what is in the dish. The local food code and licensed staff decide.',
                    related: [{ at: conflicts[0]!.origin, message: 'It is stated here.' }],
                    fixes: others.map((other) => ({
                        title: `Choose ${quoted(other.title)}`,
                        safety: 'show',
                        changes: [{ do: 'replace', at: choice.origin, words: `"${other.title}"` }],
                    })),
                });
            }
        }
    },
});
