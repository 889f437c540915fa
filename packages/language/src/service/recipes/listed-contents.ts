/** What a recipe's list of ingredients tells of what is in it, read by the words that the cupboard knows. A label decides. */
import { withParents } from '../../plan/names.js';
import type { RecipeFacts } from '../../plan/recipe.js';
import { contentsNamed, vocabularyOf, type Contents, type Vocabulary } from '../allergens/food-words.js';
import type { Told } from '../allergens/unstated.js';

const lists = new WeakMap<RecipeFacts['ingredients'], { by: Vocabulary; listed: readonly Told[] }>();

/** The lines of a recipe's list that name something the cupboard knows. */
export function contentsListed({ ingredients }: RecipeFacts, cupboard: Contents): readonly Told[] {
    const by = vocabularyOf(cupboard);
    const known = lists.get(ingredients);
    if (known?.by === by) {
        return known.listed;
    }
    const listed = ingredients
        .map(({ name }) => ({ words: name, contents: contentsNamed(name, cupboard) }))
        .filter(({ contents }) => contents.length > 0);
    lists.set(ingredients, { by, listed });
    return listed;
}

/** Ingredients of a recipe's list that a diet leaves out. */
export function listedAgainst(recipe: RecipeFacts, excludes: readonly string[], cupboard: Contents): string[] {
    return contentsListed(recipe, cupboard)
        .filter(({ contents }) =>
            contents.some((name) => excludes.some((each) => withParents(name, cupboard.substances).has(each))),
        )
        .map(({ words }) => words);
}
