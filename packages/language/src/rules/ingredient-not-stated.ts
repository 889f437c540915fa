import { unstatedOf } from '../service/allergens/unstated.js';
import { answeredBy, cookedFromRecipes, listAgainstItself } from '../service/recipes/contents.js';
import { contentsListed } from '../service/recipes/listed-contents.js';
import { defineRule } from './rule.js';
import { stateThatItContains } from './state-contents.js';
import { listed, quoted } from './wording.js';

const PLAN = (contains: string, ...ingredients: readonly string[]): string => `//- recipes/smoked-beet.md
---
yield: 40
---
## Ingredients
${ingredients.map((each) => `- ${each}`).join('\n')}
//- lunch.cover
event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24 { 3 vegetarian }
}

menu {
    course salad "Salad" {
        served on salad-plate at 8 °C
        lasts 20 min
        dish "Smoked beet" for the rest {
            ${contains}
            recipe "recipes/smoked-beet.md"
        }
        dish "Leaves" for vegetarian { contains nothing }
    }
}
`;

export default defineRule({
    id: 'ingredient-not-stated',
    group: 'safety',
    severity: 'warning',
    since: '0.2.0',
    title: 'A recipe lists an ingredient that the plan says nothing of',
    why: 'Who writes the menu knows the dish by its name; the cream that thickens it stands in the recipe. What the plan leaves out reaches the guest who must not meet it.',
    source: ['temperature 3.1', 'temperature 3.2', 'common practice, no source'],
    fix: 'sometimes',
    noFix: 'Where a recipe is at odds with itself, only the kitchen knows which is right.',
    scope: 'event',
    examples: {
        wrong: [
            { text: PLAN('<|contains mustard|>', 'beets, 14 kg', 'fresh curd, 5 kg', 'grain mustard, 400 g') },
            {
                title: 'Gelatine, and guests who eat no meat',
                text: PLAN('<|contains milk|>', 'beets, 14 kg', 'cream, 2 l', 'leaf gelatine, 20'),
            },
            {
                title: 'A recipe that says it is vegan, and lists honey',
                text: PLAN('contains nothing', 'beets, 14 kg', 'honey, 400 g')
                    .replace('yield: 40', 'yield: 40\nsuits: vegan')
                    .replace(/recipe ("[^"]*")/, 'recipe <|$1|>'),
            },
        ],
        right: [
            { text: PLAN('contains milk, mustard', 'beets, 14 kg', 'fresh curd, 5 kg', 'grain mustard, 400 g') },
            {
                title: 'Words that only look like it',
                text: PLAN('contains nothing', 'butternut squash, 9 kg', 'butter beans, 3 kg', 'rice flour, 400 g'),
            },
        ],
    },
    check({ plan, service, report }) {
        const cookedFrom = cookedFromRecipes(plan);
        for (const cooked of cookedFrom) {
            const { recipe, contains, title, suits } = cooked;
            if (!contains) {
                continue;
            }
            const { words, contents } = unstatedOf(
                contentsListed(recipe, plan.cupboard),
                answeredBy(cooked, plan.cupboard),
                {
                    plan,
                    groups: service.groups,
                    suits,
                    keptBy: [...contains.what.map(({ name }) => name), ...cooked.madeOf],
                },
            );
            if (contents.length > 0) {
                report({
                    at: contains.origin,
                    message: `${title === undefined ? 'The bread' : quoted(title)} is not said to contain ${listed(contents.map(quoted))}; its recipe ${quoted(recipe.path)} lists ${listed(words.map(quoted))}.`,
                    hint: 'Ask the kitchen and check every label; then state it, or waive this where the words of the list mislead.',
                    related: [{ at: recipe.origin, message: 'The recipe is linked here.' }],
                    // Words may mislead: nobody has it stated without a look.
                    fixes: [stateThatItContains(contains, contents, { safety: 'show', in: cooked.origin })],
                });
            }
        }
        for (const recipe of new Map(cookedFrom.map((cooked) => [cooked.recipe.path, cooked.recipe])).values()) {
            for (const { ingredients, diet } of listAgainstItself(recipe, plan.cupboard)) {
                report({
                    at: recipe.origin,
                    message: `The recipe ${quoted(recipe.path)} lists ${listed(ingredients.map(quoted))}, and says that it suits ${quoted(diet)}.`,
                    hint: 'Ask the kitchen which is right before anyone who keeps to it is served, and correct the recipe.',
                });
            }
        }
    },
});
