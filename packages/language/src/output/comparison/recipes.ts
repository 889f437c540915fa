import type { RecipeFacts } from '../../plan/recipe.js';
import type { Plan } from '../../plan/types.js';
import { sayAmount } from '../../service/recipes/say-amount.js';
import { counted, listed, quoted } from '../../rules/wording.js';
import { paired, type Change, type Compared } from './change.js';
import { changedThings, type Facts, type Thing } from './facts.js';
import { said } from './said.js';

/** What the linked recipes say otherwise; the allergens in them are told with those of the dishes. */
export function changedRecipes(before: Compared, after: Compared): Change[] {
    const [were, are] = [recipesOf(before.plan), recipesOf(after.plan)];
    return [
        // That a dish has another recipe is told of the dish.
        ...changedThings('menu', RECIPE, were, are, () => undefined, ''),
        ...paired(were, are, ({ key }) => key).flatMap(({ key, was, is }) =>
            was && is ? changedIngredients(key, was.of, is.of) : [],
        ),
    ];
}

const recipesOf = ({ recipes }: Plan): Thing<RecipeFacts>[] =>
    [...new Map(recipes.map((recipe) => [recipe.path, recipe])).values()].map((recipe) => ({
        key: `recipe ${recipe.path}`,
        called: `the recipe ${quoted(recipe.path)}`,
        of: recipe,
    }));

const RECIPE: Facts<RecipeFacts> = {
    'can not be used:': ({ state }) => (state === 'read' ? undefined : said(state)),
    'is called': ({ title }) => said(title && quoted(title)),
    yields: ({ portions }) => said(portions === undefined ? undefined : counted(portions, 'portion')),
    'portions of': ({ portionSize }) => said(portionSize && sayAmount(portionSize)),
    makes: ({ makes }) => said(makes && sayAmount(makes)),
};

function changedIngredients(key: string, was: RecipeFacts, is: RecipeFacts): Change[] {
    const lines = ({ ingredients }: RecipeFacts): string[] =>
        ingredients.map(({ part, written }) => (part === undefined ? written : `${written} (${part})`));
    const [old, now] = [lines(was), lines(is)];
    const more = now.filter((line) => !old.includes(line));
    const gone = old.filter((line) => !now.includes(line));
    return more.length + gone.length === 0
        ? []
        : [
              {
                  subject: 'menu',
                  key: `${key}: ingredients`,
                  text: `the recipe ${quoted(is.path)}: ${[
                      ...(more.length > 0 ? [`now ${listed(more)}`] : []),
                      ...(gone.length > 0 ? [`no longer ${listed(gone)}`] : []),
                  ].join('; ')}`,
              },
          ];
}
