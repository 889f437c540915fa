/** What the title of something served tells of what is in it: a walnut tart has walnuts. The recipe and every label decide. */
import type { Contains, Cupboard } from '../../plan/cupboard.js';
import { withParents } from '../../plan/names.js';
import type { Named, Origin } from '../../plan/origin.js';
import type { Accompaniment, Dish, Plan, Pour } from '../../plan/types.js';
import { ALCOHOL } from '../drinks/alcohol.js';
import { recipeOf } from '../recipes/batches.js';
import { answeredBy } from '../recipes/contents.js';
import { contentsListed } from '../recipes/listed-contents.js';
import type { Service } from '../types.js';
import { contentsNamed } from './food-words.js';
import { unstatedOf } from './unstated.js';

/** Something served that has a title, and what is said of it. Names are the cupboard's. */
export interface TitledFood {
    readonly title: string;
    readonly contains?: Contains;
    readonly at: Origin;
    readonly block: Origin;
    /** What answers for a food of the title, beside what it contains. */
    readonly answers: readonly string[];
    /** What it is made to be, whoever gets it. */
    readonly madeOf: readonly string[];
    readonly suits: readonly Named[];
}

/** Every dish, bread, sauce, garnish and drink that has a title, in the order of the menu, bread last. */
export function titledFoods(plan: Plan, service: Pick<Service, 'pours'>): TitledFood[] {
    const { menu, cupboard } = plan;
    const courses = menu?.courses ?? [];
    const bread = menu?.bread;
    return [
        ...courses.flatMap((course) => [
            ...course.dishes.flatMap((dish) => titledDish(dish, plan)),
            ...course.dishes.flatMap(({ pours }) => pours).flatMap((pour) => titledPour(pour, service, cupboard)),
            ...course.pours.flatMap((pour) => titledPour(pour, service, cupboard)),
        ]),
        ...(bread?.dishes ?? []).flatMap((dish) => titledDish(dish, plan)),
        ...(bread?.accompaniments ?? []).flatMap((beside) => titledBeside(beside, namesIn(bread?.contains))),
    ];
}

function titledDish(dish: Dish, plan: Plan): TitledFood[] {
    const { cupboard } = plan;
    const madeOf = kindOf(cupboard.kinds.get(dish.kind.name));
    const recipe = recipeOf(plan, dish.recipe);
    // What the recipe tells and the plan does not is told of the recipe.
    const byRecipe =
        recipe?.state === 'read'
            ? [
                  ...answeredBy({ ...dish, recipe, madeOf }, cupboard),
                  ...contentsListed(recipe, cupboard).flatMap(({ contents }) => contents),
              ]
            : dish.accompaniments.flatMap(({ contains }) => namesIn(contains));
    return [
        {
            title: dish.title,
            contains: dish.contains,
            at: dish.head,
            block: dish.origin,
            answers: [...madeOf, ...byRecipe],
            madeOf,
            suits: dish.suits,
        },
        ...dish.accompaniments.flatMap((beside) => titledBeside(beside, [...namesIn(dish.contains), ...madeOf])),
    ];
}

/** What comes on a dish is kept from whom the dish is kept from. */
function titledBeside({ title, contains, head, origin }: Accompaniment, ofDish: readonly string[]): TitledFood[] {
    return title === undefined
        ? []
        : [{ title, contains, at: head, block: origin, answers: ofDish, madeOf: ofDish, suits: [] }];
}

function titledPour(pour: Pour, service: Pick<Service, 'pours'>, cupboard: Cupboard): TitledFood[] {
    const kind = pour.kind
        ? cupboard.drinks.get(pour.kind.name)
        : service.pours.find((each) => each.pour === pour)?.kind;
    const madeOf = kindOf(kind);
    return [
        {
            title: pour.title,
            contains: pour.contains,
            at: pour.titleOrigin,
            block: pour.origin,
            // Who is kept from alcohol is the matter of its strength and its kind.
            answers: [...madeOf, ALCOHOL],
            madeOf,
            suits: pour.suits,
        },
        ...pour.instead.flatMap((each) => titledPour(each, service, cupboard)),
    ];
}

const kindOf = (kind: { readonly of: readonly Named[] } | undefined): string[] =>
    (kind?.of ?? []).map(({ name }) => name);

const namesIn = (contains: Contains | undefined): string[] => contains?.what.map(({ name }) => name) ?? [];

/** What a title names and nothing says, of what has to be told here. What it suits answers for what a diet leaves out. */
export function unstatedInTitle(
    food: TitledFood,
    { plan, groups }: { plan: Plan; groups: Service['groups'] },
): readonly string[] {
    const { cupboard } = plan;
    const leftOut = food.suits.flatMap(({ name }) => cupboard.diets.get(name)?.excludes ?? []);
    const contents = contentsNamed(food.title, cupboard).filter(
        (name) => !leftOut.some((each) => withParents(name, cupboard.substances).has(each.name)),
    );
    const stated = namesIn(food.contains);
    return unstatedOf([{ words: food.title, contents }], [...stated, ...food.answers], {
        plan,
        groups,
        suits: [],
        keptBy: [...stated, ...food.madeOf],
    }).contents;
}
