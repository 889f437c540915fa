import type { Origin } from '../plan/origin.js';
import type { Dish } from '../plan/types.js';
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
        const recipes = new Map<
            string,
            { readonly origin: Origin; readonly yields: number; needed: number; readonly dishes: string[] }
        >();
        const add = (dish: Pick<Dish, 'title' | 'recipe' | 'extra'>, count: number): void => {
            const facts =
                dish.recipe &&
                plan.recipes.find(
                    ({ origin }) =>
                        origin.file === dish.recipe!.origin.file && origin.start === dish.recipe!.origin.start,
                );
            if (facts?.portions === undefined) {
                return;
            }
            const known = recipes.get(facts.path) ?? {
                origin: facts.origin,
                yields: facts.portions,
                needed: 0,
                dishes: [],
            };
            known.needed += count + (dish.extra?.count ?? 0);
            known.dishes.push(dish.title);
            recipes.set(facts.path, known);
        };
        for (const { portions } of service.servings) {
            portions.forEach(({ dish, count }) => add(dish, count));
        }
        for (const { origin, yields, needed, dishes } of recipes.values()) {
            if (yields < needed) {
                report({
                    at: origin,
                    message: `The recipe yields ${counted(yields, 'portion')} and ${listed(dishes.map(quoted))} ${dishes.length === 1 ? 'needs' : 'need'} ${needed}: make it ${factor(needed / yields)} times.`,
                    hint: 'Multiply the batch, and say the new `yield` in the recipe once it is written up.',
                });
            }
        }
    },
});

/** Rounded up to hundredths, so that the batch never falls short; source: quantities 3.2, portions needed over portions yielded. */
function factor(times: number): string {
    return String(Math.ceil(Number((times * 100).toFixed(6))) / 100);
}
