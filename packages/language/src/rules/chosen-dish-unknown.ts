import { dishesOf } from '../plan/resolve.js';
import { nearest } from './nearest.js';
import { defineRule } from './rule.js';
import { didYouMean, listed, quoted } from './wording.js';

const plan = (dish: string): string => `event "Table of eight" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 8
}

seating {
    "A. Guest" chooses ${dish}
}

menu {
    course main {
        lasts 35 min
        dish "Grilled sirloin" is steak {
            served on dinner-plate warmed at 54 °C
            contains milk
        }
        dish "Barley-stuffed squash" {
            served on dinner-plate warmed at 63 °C
            contains gluten
        }
    }
}
`;

export default defineRule({
    id: 'chosen-dish-unknown',
    group: 'guests',
    since: '0.1.0',
    title: 'A guest chose a dish that is not on the menu',
    why: 'A choice that matches no dish is cooked by nobody, and the guest gets whatever is left.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|"Grilled sirlion"|>') }],
        right: [{ text: plan('"Grilled sirloin"') }],
    },
    check({ plan, report }) {
        if (!plan.menu) {
            return;
        }
        const titles = dishesOf(plan.menu).map((dish) => dish.title);
        for (const guest of plan.seating) {
            for (const choice of guest.chooses.filter(({ text }) => !titles.includes(text))) {
                const near = nearest(choice.text, titles);
                report({
                    at: choice.origin,
                    message: `${quoted(guest.name.text)} chose ${quoted(choice.text)}, which is not on this menu.`,
                    hint:
                        near.length > 0
                            ? didYouMean(near)
                            : `On the menu ${titles.length === 1 ? 'is' : 'are'} ${listed(titles.map(quoted))}.`,
                    fixes: near.map((title) => ({
                        title: `Choose ${quoted(title)}`,
                        safety: 'unsafe',
                        preferred: near.length === 1,
                        changes: [{ do: 'replace', at: choice.origin, words: `"${title}"` }],
                    })),
                });
            }
        }
    },
});
