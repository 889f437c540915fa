/** What a recipe's list of ingredients tells of what is in it, read by the words that the cupboard knows. A label decides. */
import { clashes, withParents } from '../../plan/names.js';
import type { RecipeFacts } from '../../plan/recipe.js';
import type { Need, Plan } from '../../plan/types.js';
import { namedAbove } from '../allergens/duty.js';
import { excludedBy, isAllergenNeed } from '../diets.js';
import { ALCOHOL } from '../drinks/alcohol.js';
import type { Service } from '../types.js';
import { contentsNamed, vocabularyOf, type Contents, type Vocabulary } from './ingredient-words.js';

/** One line of a list, and what the cupboard knows of the things that it names. */
export interface Listed {
    /** The ingredient as the recipe calls it, without its amount. */
    readonly ingredient: string;
    /** Names of the cupboard: `cream`. */
    readonly contents: readonly string[];
}

/** What a list names and is not stated. */
export interface Unstated {
    /** As the recipe calls them, in its order, each once. */
    readonly ingredients: readonly string[];
    /** What is to be stated of them, by the names of the cupboard. */
    readonly contents: readonly string[];
}

const lists = new WeakMap<RecipeFacts['ingredients'], { by: Vocabulary; listed: readonly Listed[] }>();

/** The lines of a recipe's list that name something the cupboard knows. */
export function contentsListed({ ingredients }: RecipeFacts, cupboard: Contents): readonly Listed[] {
    const by = vocabularyOf(cupboard);
    const known = lists.get(ingredients);
    if (known?.by === by) {
        return known.listed;
    }
    const listed = ingredients
        .map(({ name }) => ({ ingredient: name, contents: contentsNamed(name, cupboard) }))
        .filter(({ contents }) => contents.length > 0);
    lists.set(ingredients, { by, listed });
    return listed;
}

// ---------------------------------------------------------------- held against what is stated
/** Who and what something is to be held against. */
export interface HeldAgainst {
    readonly plan: Pick<Plan, 'code' | 'cupboard'>;
    readonly groups: Service['groups'];
    /** Diets that it says it suits. */
    readonly suits: readonly string[];
}

/**
 * What the list of a recipe names, is not among what is stated, and matters here: the local code wants guests told of it, a
 * guest must not meet it, or it says that it suits a diet which leaves it out.
 * @param stated names of the cupboard
 */
export function unstatedOf(recipe: RecipeFacts, stated: readonly string[], held: HeldAgainst): Unstated {
    const { code, cupboard } = held.plan;
    const { substances } = cupboard;
    const exclusions = exclusionsOf(held);
    const duties = (name: string): Duty[] => [
        ...namedAbove(name, code.name, substances).map((each) => ({ state: each, over: each, isAllergen: true })),
        ...exclusions.flatMap((excluded) =>
            keptFrom(name, excluded, substances).map((state) => ({
                state,
                over: excluded.name,
                isAllergen: excluded.isAllergen,
            })),
        ),
    ];
    const isDone = ({ over, isAllergen }: Duty): boolean =>
        stated.some((each) => (isAllergen ? clashes(each, over, substances) : withParents(each, substances).has(over)));
    const left = contentsListed(recipe, cupboard)
        .map(({ ingredient, contents }) => ({
            ingredient,
            contents: contents
                .flatMap(duties)
                .filter((duty) => !isDone(duty))
                .map(({ state }) => state),
        }))
        .filter(({ contents }) => contents.length > 0);
    const names = [...new Set(left.flatMap(({ contents }) => contents))];
    return {
        ingredients: [...new Set(left.map(({ ingredient }) => ingredient))],
        // Almonds say all that nuts would.
        contents: names.filter(
            (name) => !names.some((other) => other !== name && withParents(other, substances).has(name)),
        ),
    };
}

/** Ingredients of a recipe's list that a diet leaves out. */
export function listedAgainst(recipe: RecipeFacts, excludes: readonly string[], cupboard: Contents): string[] {
    return contentsListed(recipe, cupboard)
        .filter(({ contents }) =>
            contents.some((name) => excludes.some((each) => withParents(name, cupboard.substances).has(each))),
        )
        .map(({ ingredient }) => ingredient);
}

/** That something has to be stated. */
interface Duty {
    /** The name to state. */
    readonly state: string;
    /** What it has to be told of: the allergen of the code, or what a guest must not meet. */
    readonly over: string;
    readonly isAllergen: boolean;
}

interface Exclusion {
    readonly name: string;
    /** Kept from in its widest meaning. */
    readonly isAllergen: boolean;
}

/** What somebody here must not meet, where nothing but what it contains keeps a dish from them. */
function exclusionsOf({ plan, groups, suits }: HeldAgainst): Exclusion[] {
    const { cupboard } = plan;
    const isStatedOnly = (need: Need): boolean =>
        need.sort === 'diet' && cupboard.diets.get(need.diet.name)?.statedOnly === true;
    const needs = groups.flatMap((group) => group.needs).filter((need) => !isStatedOnly(need));
    return [
        ...needs.flatMap((need) =>
            excludedBy(need, cupboard).map((name) => ({ name, isAllergen: isAllergenNeed(need, cupboard) })),
        ),
        ...(groups.some(({ children }) => children) ? [{ name: ALCOHOL, isAllergen: false }] : []),
        ...suits.flatMap((diet) =>
            (cupboard.diets.get(diet)?.excludes ?? []).map(({ name }) => ({ name, isAllergen: false })),
        ),
    ];
}

/** As what a food that is excluded is to be stated: cream as milk, and gelatine, for vegetarians, as what it is. */
function keptFrom(name: string, excluded: Exclusion, substances: Contents['substances']): string[] {
    if (withParents(name, substances).has(excluded.name)) {
        const allergens = nearestAllergens(name, substances).filter((each) =>
            withParents(each, substances).has(excluded.name),
        );
        return allergens.length > 0 ? allergens : [name];
    }
    return excluded.isAllergen && clashes(name, excluded.name, substances) ? [name] : [];
}

function nearestAllergens(
    name: string,
    substances: Contents['substances'],
    below: readonly string[] = [],
): readonly string[] {
    const substance = substances.get(name);
    if (!substance || below.includes(name)) {
        return [];
    }
    return substance.sort === 'allergen'
        ? [name]
        : substance.parents.flatMap((parent) => nearestAllergens(parent.name, substances, [...below, name]));
}
