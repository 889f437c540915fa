import { againstItself, cookedFromRecipes, disagreementOf, unknownContents } from '../service/recipes/contents.js';
import { nearest } from './nearest.js';
import { defineRule } from './rule.js';
import { stateThatItContains } from './state-contents.js';
import { listed, quoted } from './wording.js';

const PLAN = (states: string, contains: string): string => `//- recipes/honey-custard.md
---
yield: 40
contains: ${states}
---
Scald the milk with the honey.
//- lunch.cover
event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
}

menu {
    course dessert {
        lasts 20 min
        dish "Burnt honey custard" is custard {
            served on dessert-plate at 6 °C
            ${contains}
            recipe "recipes/honey-custard.md"
        }
    }
}
`;

export default defineRule({
    id: 'recipe-allergen-not-stated',
    group: 'safety',
    safety: 'floor',
    since: '0.2.0',
    title: 'A recipe states an allergen that the plan leaves out',
    why: 'The kitchen cooks from the recipe, and the team serves from the plan. What the plan leaves out reaches the guest who must not meet it.',
    source: ['temperature 3.1', 'temperature 3.2', 'common practice, no source'],
    fix: 'sometimes',
    noFix: 'Where the plan states more than the recipe, only the kitchen knows which is right; nothing is ever taken out of a plan.',
    scope: 'event',
    examples: {
        wrong: [
            { text: PLAN('egg, milk, tree nuts', '<|contains egg, milk|>') },
            {
                title: 'A word that no allergen has',
                text: PLAN('egg, milk, sea silk', 'contains egg, milk').replace(/"recipes.*"/, '<|$&|>'),
            },
            {
                title: 'Another word for an allergen',
                text: PLAN('egg, dairy', '<|contains egg|>'),
            },
            { title: 'The plan states more than the recipe', text: PLAN('egg', '<|contains egg, milk|>') },
        ],
        right: [{ text: PLAN('egg, milk', 'contains egg, milk') }],
    },
    check({ plan, report }) {
        const { substances } = plan.cupboard;
        const cookedFrom = cookedFromRecipes(plan);
        const recipes = [...new Map(cookedFrom.map((cooked) => [cooked.recipe.path, cooked.recipe])).values()];
        for (const recipe of recipes) {
            for (const words of unknownContents(recipe, plan.cupboard)) {
                const [near] = nearest(words.toLowerCase(), substances.keys());
                report({
                    at: recipe.origin,
                    severity: 'warning',
                    message: `The recipe ${quoted(recipe.path)} says it contains ${quoted(words)}, which is not known here: nobody is kept from it.`,
                    hint: near
                        ? `Write it in the recipe as ${quoted(near)}, if that is meant.`
                        : 'Write in the recipe what is meant by its name in the cupboard, such as `milk`.',
                });
            }
        }
        for (const recipe of recipes) {
            for (const { substance, diet } of againstItself(recipe, plan.cupboard)) {
                report({
                    at: recipe.origin,
                    severity: 'warning',
                    message: `The recipe ${quoted(recipe.path)} says it contains ${quoted(substance)}, and that it suits ${quoted(diet)}.`,
                    hint: 'Ask the kitchen which is right before anyone who keeps to it is served, and correct the recipe.',
                });
            }
        }
        for (const cooked of cookedFrom) {
            const { recipe, contains } = cooked;
            const said = cooked.title === undefined ? 'The bread' : quoted(cooked.title);
            const linked = [{ at: recipe.origin, message: 'The recipe is linked here.' }];
            const { leftOut, onlyInPlan, againstDiets } = disagreementOf(cooked, plan.cupboard) ?? {};
            if (!contains) {
                continue;
            }
            if (leftOut && leftOut.length > 0) {
                report({
                    at: contains.origin,
                    // What is no allergen can keep a dish from a diet and harms nobody.
                    severity: leftOut.some((name) => substances.get(name)?.sort === 'allergen') ? 'error' : 'warning',
                    message: `${said} is not said to contain ${listed(leftOut.map(quoted))}, which its recipe ${quoted(recipe.path)} states.`,
                    hint: 'Ask the kitchen and check every label; then state it, so that no guest without it gets the dish.',
                    related: linked,
                    fixes: [stateThatItContains(contains, leftOut, { safety: 'unsafe', in: cooked.origin })],
                });
            }
            if (onlyInPlan && onlyInPlan.length > 0) {
                report({
                    at: contains.origin,
                    severity: 'hint',
                    message: `${said} contains ${listed(onlyInPlan.map(quoted))}, which its recipe ${quoted(recipe.path)} does not state.`,
                    hint: 'Ask the kitchen, and write it into the recipe if it is so.',
                    related: linked,
                });
            }
            for (const { substance, diet } of againstDiets ?? []) {
                report({
                    at: contains.origin,
                    severity: 'hint',
                    message: `${said} contains ${quoted(substance)}, and its recipe ${quoted(recipe.path)} says it suits ${quoted(diet)}.`,
                    hint: 'Ask the kitchen which is right before anyone who keeps to it is served.',
                    related: linked,
                });
            }
        }
    },
});
