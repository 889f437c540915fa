import type { RecipeFacts } from '../plan/recipe.js';
import { batchesOf, type BatchDish } from '../service/recipes/batches.js';
import { sayAmount } from '../service/recipes/say-amount.js';
import { defineRule } from './rule.js';
import { counted, listed, quoted } from './wording.js';

const plan = (yields: number): string => `//- recipes/poached-pear.md
---
yield: ${yields}
---
Poach the pears.
//- lunch.cover
event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
}

menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
        recipe ${yields < 24 ? '<|"recipes/poached-pear.md"|>' : '"recipes/poached-pear.md"'}
    }
}
`;

export default defineRule({
    id: 'recipe-yield-short',
    group: 'service',
    since: '0.1.0',
    title: 'A recipe that feeds fewer than the dish needs',
    why: 'A batch cooked as written leaves guests without a plate. The factor tells the cook how many times to make it.',
    source: ['quantities 3.2'],
    fix: 'never',
    noFix: 'The batch is multiplied in the kitchen; nothing in the plan is wrong.',
    scope: 'event',
    examples: {
        wrong: [{ text: plan(10) }],
        right: [{ text: plan(40) }],
    },
    check({ plan, service, report }) {
        for (const batch of batchesOf(plan, service)) {
            const { recipe, portions, factor, isResized } = batch;
            if (factor === undefined || factor <= 1) {
                continue;
            }
            const titles = batch.dishes.map(({ title }) => quoted(title));
            const again = { hint: 'Multiply the batch, and say the new `yield` in the recipe once it is written up.' };
            if (recipe.portions !== undefined && !isResized) {
                report({
                    at: recipe.origin,
                    message: `The recipe yields ${counted(recipe.portions, 'portion')} and ${listed(titles)} ${titles.length === 1 ? 'needs' : 'need'} ${portions}: make it ${factor} times.`,
                    ...again,
                });
            } else {
                report({
                    at: recipe.origin,
                    message: `The recipe makes ${made(recipe)}, and needed are ${listed(batch.dishes.map(sized))}: make it ${factor} times.`,
                    ...again,
                });
            }
        }
    },
});

/** `100 portions of 4 oz`, `12 l`. */
function made({ portions, portionSize, makes }: RecipeFacts): string {
    const size = portionSize && ` of ${sayAmount(portionSize)}`;
    return portions === undefined ? sayAmount(makes!) : `${counted(portions, 'portion')}${size ?? ''}`;
}

/** `230 portions of 2 oz for \`Beef\``. */
function sized({ title, portions, size }: BatchDish): string {
    return `${counted(portions, 'portion')}${size ? ` of ${size.written}` : ''} for ${quoted(title)}`;
}
