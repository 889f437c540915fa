import type { Contains, Cupboard } from '../../plan/cupboard.js';
import type { Origin } from '../../plan/origin.js';
import { clashes, withParents } from '../../plan/names.js';
import type { RecipeFacts } from '../../plan/recipe.js';
import type { Accompaniment, Menu, Plan } from '../../plan/types.js';
import { substancesCalled } from '../allergens/food-words.js';
import { recipeOf } from './batches.js';
import { contentsListed, listedAgainst } from './listed-contents.js';

/** Something that has a recipe, and what the plan says it contains. */
export interface CookedFromRecipe {
    /** Absent for the bread itself. */
    readonly title?: string;
    readonly recipe: RecipeFacts;
    readonly contains?: Contains;
    /** The whole block of the dish or the bread. */
    readonly origin: Origin;
    readonly accompaniments: readonly Accompaniment[];
    /** Names of what its kind is made of: `beef`. */
    readonly madeOf: readonly string[];
    /** Names of the diets that it says it suits. */
    readonly suits: readonly string[];
}

/** Where plan and recipe tell different things of the same food. Names are the cupboard's. */
export interface Disagreement {
    /** The recipe states it and the plan does not. */
    readonly leftOut: readonly string[];
    /** The plan states it and the recipe, which states others, does not, nor lists it; allergens only. */
    readonly onlyInPlan: readonly string[];
    /** The recipe says it suits a diet that something the plan states, and the recipe does not, is kept from. */
    readonly againstDiets: readonly { readonly substance: string; readonly diet: string }[];
}

/** Every dish and bread whose recipe could be read, in the order of the menu, bread last. */
export function cookedFromRecipes(plan: Plan): CookedFromRecipe[] {
    const dishes = (plan.menu?.courses ?? []).flatMap((course) => course.dishes);
    const bread = plan.menu?.bread;
    return [
        ...[...dishes, ...(bread?.dishes ?? [])].map((dish) => ({
            ...dish,
            link: dish.recipe,
            madeOf: (plan.cupboard.kinds.get(dish.kind.name)?.of ?? []).map(({ name }) => name),
            suits: dish.suits.map(({ name }) => name),
        })),
        ...(bread ? [commonBread(bread)] : []),
    ].flatMap(({ link, title, contains, origin, accompaniments, madeOf, suits }) => {
        const recipe = recipeOf(plan, link);
        return recipe?.state === 'read' ? [{ title, recipe, contains, origin, accompaniments, madeOf, suits }] : [];
    });
}

function commonBread({ recipe, contains, origin, accompaniments }: NonNullable<Menu['bread']>) {
    return { title: undefined, link: recipe, contains, origin, accompaniments, madeOf: [], suits: [] };
}

/**
 * Holds what the plan says a dish contains against what its recipe says. A sauce or garnish that no guest is spared counts for
 * the dish. `wheat` answers for a recipe's `gluten`, and `gluten` for its `wheat`: either keeps the dish from the same guests.
 * @returns nothing where the plan does not say what the dish contains
 */
export function disagreementOf(cooked: CookedFromRecipe, cupboard: Cupboard): Disagreement | undefined {
    const { recipe, contains, accompaniments, madeOf } = cooked;
    if (!contains) {
        return undefined;
    }
    const { substances } = cupboard;
    const always = accompaniments.filter(({ leftOffFor }) => leftOffFor.length === 0);
    const inPlan = [contains, ...always.map((beside) => beside.contains)].flatMap(
        (each) => each?.what.map(({ name }) => name) ?? [],
    );
    const inRecipe = namesOf(recipe.contains ?? [], cupboard);
    const inList = contentsListed(recipe, cupboard).flatMap(({ contents: listed }) => listed);
    const isAmong = (name: string, names: readonly string[]): boolean =>
        names.some((each) => clashes(each, name, substances));
    return {
        leftOut: inRecipe.filter((name) => !isAmong(name, [...inPlan, ...madeOf])),
        onlyInPlan: recipe.contains
            ? contains.what
                  .map(({ name }) => name)
                  .filter(
                      (name) => substances.get(name)?.sort === 'allergen' && !isAmong(name, [...inRecipe, ...inList]),
                  )
            : [],
        againstDiets: dietsOf(recipe, cupboard).flatMap(({ name: diet, excludes }) =>
            contains.what
                .filter(({ name }) => !isAmong(name, inRecipe))
                .filter(({ name }) => excludes.some((what) => withParents(name, substances).has(what.name)))
                .map(({ name: substance }) => ({ substance, diet })),
        ),
    };
}

/**
 * What answers for an ingredient that a recipe lists: what the dish, its kind or the recipe states, and everything that comes on
 * the dish, for the list may be that of the sauce as well. Names of the cupboard.
 */
export function answeredBy(
    {
        recipe,
        contains,
        accompaniments,
        madeOf,
    }: Pick<CookedFromRecipe, 'recipe' | 'contains' | 'accompaniments' | 'madeOf'>,
    cupboard: Cupboard,
): string[] {
    return [
        ...[contains, ...accompaniments.map((beside) => beside.contains)].flatMap(
            (each) => each?.what.map(({ name }) => name) ?? [],
        ),
        ...madeOf,
        ...namesOf(recipe.contains ?? [], cupboard),
    ];
}

/**
 * What a recipe says it contains, by the cupboard's names.
 * @returns nothing where it does not say, or says a word that is not known
 */
export function contentsOf(recipe: RecipeFacts | undefined, cupboard: Cupboard): string[] | undefined {
    return recipe?.contains && unknownContents(recipe, cupboard).length === 0
        ? namesOf(recipe.contains, cupboard)
        : undefined;
}

/** What a recipe says it contains and no name of the cupboard says. */
export function unknownContents({ contains = [] }: RecipeFacts, cupboard: Cupboard): string[] {
    return contains.filter((words) => substancesCalled(words, cupboard).length === 0);
}

/** Each once, in the recipe's order; what is not known is left out. */
function namesOf(contains: readonly string[], cupboard: Cupboard): string[] {
    return [...new Set(contains.flatMap((words) => substancesCalled(words, cupboard)))];
}

/** The diets a recipe says it suits, by their names or their schema.org terms. */
function dietsOf({ suits }: RecipeFacts, { diets }: Cupboard) {
    return suits.flatMap((words) => {
        const name = words.toLowerCase().replace(/\s+/g, '-');
        return diets.get(name) ?? [...diets.values()].find(({ term }) => term === words) ?? [];
    });
}

/** What a recipe says it contains and a diet that it says it suits leaves out. */
export function againstItself(
    recipe: RecipeFacts,
    cupboard: Cupboard,
): { readonly substance: string; readonly diet: string }[] {
    const { substances } = cupboard;
    return dietsOf(recipe, cupboard).flatMap(({ name: diet, excludes }) =>
        namesOf(recipe.contains ?? [], cupboard)
            .filter((name) => excludes.some((what) => withParents(name, substances).has(what.name)))
            .map((substance) => ({ substance, diet })),
    );
}

/** The ingredients of a recipe's list that a diet which it says it suits leaves out, where it does not say itself that it contains them. */
export function listAgainstItself(
    recipe: RecipeFacts,
    cupboard: Cupboard,
): { readonly ingredients: readonly string[]; readonly diet: string }[] {
    const stated = new Set(againstItself(recipe, cupboard).map(({ diet }) => diet));
    return dietsOf(recipe, cupboard)
        .filter(({ name }) => !stated.has(name))
        .map(({ name: diet, excludes }) => ({
            diet,
            ingredients: listedAgainst(
                recipe,
                excludes.map(({ name }) => name),
                cupboard,
            ),
        }))
        .filter(({ ingredients }) => ingredients.length > 0);
}
