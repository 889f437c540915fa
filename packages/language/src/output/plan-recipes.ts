/** Recipes for the compiled plan: what each says, and its batch scaled to what the event needs. */
import { dimensionOf, measureToComputing, type Amount } from '../plan/kitchen-measures.js';
import type { RecipeFacts } from '../plan/recipe.js';
import { batchesOf, scaleRecipe, type Batch } from '../service/recipes/batches.js';
import { sayAmount } from '../service/recipes/say-amount.js';
import type { ScaledIngredient } from '../service/recipes/scale.js';
import type { Telling } from './plan-menu.js';
import { figureJson, quantityJson, type Json } from './plan-values.js';

/** Each recipe once, in the order the menu links them. */
export function recipesJson({ plan, service }: Telling): Json[] {
    const batches = batchesOf(plan, service);
    const recipes = new Map(plan.recipes.map((recipe) => [recipe.path, recipe]));
    return [...recipes.values()].map((recipe) => {
        const batch = batches.find((each) => each.recipe.path === recipe.path);
        return { ...recipeJson(recipe), scaled: batch && scaledJson(batch) };
    });
}

function recipeJson(recipe: RecipeFacts): Json {
    const { path, state, title, portions, portionSize, makes, contains, suits } = recipe;
    return {
        path,
        state,
        title,
        portions,
        portionSize: portionSize && amountJson(portionSize, sayAmount(portionSize)),
        makes: makes && amountJson(makes, sayAmount(makes)),
        contains,
        suits: suits.length > 0 ? suits : undefined,
    };
}

function scaledJson({ recipe, dishes, portions, factor }: Batch): Json {
    return {
        portionsNeeded: portions,
        dishes: dishes.map(({ title, portions: count, size }) => ({
            dish: title,
            portions: count,
            portion: quantityJson(size),
        })),
        factor,
        ingredients: factor === undefined ? undefined : scaleRecipe(recipe, factor).map(ingredientJson),
    };
}

function ingredientJson({ ingredient, scaled, inAll, buy }: ScaledIngredient): Json {
    return {
        written: ingredient.written,
        name: ingredient.name,
        part: ingredient.part,
        scaled: scaled && {
            ...amountJson(scaled.exact, scaled.written),
            decimalPounds: scaled.decimalPounds,
        },
        inAll: inAll && amountJson(inAll.amount, inAll.written),
        usableShare: ingredient.usable,
        buy: buy && amountJson(buy.amount, buy.written),
    };
}

/** `{ "written": "4 lb 5 1/2 oz", "grams": 1973.1 }`: as it can be measured, and the figure before rounding. */
function amountJson({ low, high, system }: Amount, written: string): Json {
    const figure = (value: number): Json => figureJson(dimensionOf(system), measureToComputing(value, system));
    return { written, ...figure(low), upTo: low === high ? undefined : figure(high) };
}
