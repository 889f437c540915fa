import { dimensionOf, measureToComputing, tidy, type Amount } from '../../plan/kitchen-measures.js';
import type { Quantity } from '../../plan/quantity.js';
import type { RecipeFacts } from '../../plan/recipe.js';
import type { Text } from '../../plan/origin.js';
import type { Dish, Plan } from '../../plan/types.js';
import { portionsToCook } from '../numbers.js';
import type { Service } from '../types.js';
import { factorForPortions, workingFactor } from './factor.js';
import { scaleIngredient, type ScaledIngredient } from './scale.js';

/** A dish made from a recipe, and how many portions of it are cooked. */
export interface BatchDish {
    readonly title: string;
    /** For guests, the crew's meal and `cook … extra`. */
    readonly portions: number;
    /** Size of a portion, as the plan states it. */
    readonly size?: Quantity;
}

/** One recipe and what the event needs of it. */
export interface Batch {
    readonly recipe: RecipeFacts;
    /** In the order of the menu, bread last. */
    readonly dishes: readonly BatchDish[];
    /** Portions of all dishes together. */
    readonly portions: number;
    /** Whether dishes and recipe state portions of different size, so that the factor is not portions over portions. */
    readonly isResized: boolean;
    /** Times the batch; absent where the recipe does not say what it yields, or nobody eats of it. */
    readonly factor?: number;
}

/**
 * What the event needs of each recipe that could be read, in the order the menu links them. Dishes that share a recipe share its
 * batch. Source of the factor: AFRS (quantities 3.2).
 */
export function batchesOf(plan: Plan, service: Pick<Service, 'servings' | 'bread'>): Batch[] {
    const dishes = new Map<string, { recipe: RecipeFacts; dishes: BatchDish[] }>();
    for (const { link, dish } of cookedDishes(plan, service)) {
        const recipe = recipeOf(plan, link);
        if (recipe?.state === 'read') {
            const batch = dishes.get(recipe.path) ?? { recipe, dishes: [] };
            batch.dishes.push(dish);
            dishes.set(recipe.path, batch);
        }
    }
    return [...dishes.values()].map((batch) => {
        const portions = batch.dishes.reduce((sum, dish) => sum + dish.portions, 0);
        return { ...batch, portions, isResized: isResized(batch), factor: portions > 0 ? factorOf(batch) : undefined };
    });
}

/** The ingredients of a recipe made `factor` times. */
export function scaleRecipe(recipe: RecipeFacts, factor: number): ScaledIngredient[] {
    return recipe.ingredients.map((ingredient) => scaleIngredient(ingredient, factor));
}

/** The recipe a `recipe` clause leads to. */
export function recipeOf(plan: Plan, link: Text | undefined): RecipeFacts | undefined {
    return (
        link &&
        plan.recipes.find(({ origin }) => origin.file === link.origin.file && origin.start === link.origin.start)
    );
}

function cookedDishes(plan: Plan, { servings, bread }: Pick<Service, 'servings' | 'bread'>) {
    const cooked = (dish: Dish, count: number, link: Text | undefined) => ({
        link,
        dish: {
            title: dish.title,
            portions: portionsToCook(plan, { dish, count }),
            size: dish.served.portion,
        },
    });
    const served = servings.flatMap(({ portions }) =>
        portions.map(({ dish, count }) => cooked(dish, count, dish.recipe)),
    );
    // The common bread is no dish of the menu: its recipe is the bread's own.
    const common = bread?.serving.course.dishes.at(-1);
    const breads = (bread?.serving.portions ?? []).map(({ dish, count }) =>
        cooked(dish, count, dish === common ? bread!.bread.recipe : dish.recipe),
    );
    return [...served, ...breads];
}

// ---------------------------------------------------------------- factor
type Draft = Pick<Batch, 'recipe' | 'dishes'>;

function factorOf({ recipe, dishes }: Draft): number | undefined {
    const { portions, portionSize, makes } = recipe;
    if (portions !== undefined) {
        // Portions of another size count as so many of the card's.
        const needed = dishes.reduce((sum, dish) => sum + dish.portions * (timesOf(dish, portionSize) ?? 1), 0);
        return factorForPortions(tidy(needed), portions);
    }
    const parts = dishes.map((dish) => dish.portions * (timesOf(dish, makes) ?? NaN));
    const whole = parts.reduce((sum, part) => sum + part, 0);
    return Number.isNaN(whole) ? undefined : workingFactor(tidy(whole));
}

function isResized({ recipe, dishes }: Draft): boolean {
    return dishes.some((dish) => (timesOf(dish, recipe.portionSize) ?? 1) !== 1);
}

/** How many of `amount` one portion of the dish is; nothing where either is not stated, or one is weighed and one poured. */
function timesOf({ size }: BatchDish, amount: Amount | undefined): number | undefined {
    return size && amount && dimensionOf(amount.system) === size.dimension
        ? tidy(size.value / measureToComputing(amount.low, amount.system))
        : undefined;
}
