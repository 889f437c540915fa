import type { Amount } from './kitchen-measures.js';
import type { Origin } from './origin.js';

/** One line of a recipe's ingredients. */
export interface Ingredient {
    /** The line as it stands in the recipe. */
    readonly written: string;
    /** What it is, without its amount: `beets`; the whole line where it has none. */
    readonly name: string;
    /** The part of the recipe it belongs to: `For the sauce`. */
    readonly part?: string;
    /** Absent where the recipe leaves it to the cook (`to taste`) or where the figure can be read in two ways. */
    readonly amount?: Amount;
    /** What is counted, where that has a word of its own: `can`, `clove`. */
    readonly container?: string;
    /** What one container holds: `400 g` of `2 cans (400 g)`. */
    readonly holds?: Amount;
    /** Share left after trimming, 0–1, where the line says so: `yield 61 %`. */
    readonly usable?: number;
}

/** The recipe a dish links to, as far as its file tells. */
export interface RecipeFacts {
    /** From the root of the workspace; as written where it leads out of it. */
    readonly path: string;
    /** The link in the plan. */
    readonly origin: Origin;
    readonly state: 'read' | 'missing' | 'outside' | 'unreadable';
    readonly title?: string;
    /** Portions one batch yields; absent where the file does not say. */
    readonly portions?: number;
    /** Of one portion. */
    readonly portionSize?: Amount;
    /** What one batch makes, where the file gives that in place of portions: `12 l`. */
    readonly makes?: Amount;
    /** Allergens and other contents by the recipe's own words, none for `nothing`; absent where the file does not say. */
    readonly contains?: readonly string[];
    /** Diets by the recipe's own words, or as schema.org terms: `vegan`, `VeganDiet`. */
    readonly suits: readonly string[];
    readonly ingredients: readonly Ingredient[];
}
