/** What kind of dish a title tells of, by the words of the cupboard: `consomme`, of `Beef consommé`. */
import type { Cupboard, Kind } from '../plan/cupboard.js';
import { isKindOf, withParents } from '../plan/names.js';
import { plainWords } from '../plan/other-words.js';
import { contentsNamed } from './allergens/food-words.js';

/** A fish is served as the main course, too. */
const FISH = 'fish';
const MAIN = 'main';

/** Told by the food alone: a halibut is a fish, where a beef may be a steak or a stew. */
const SEAFOOD = [FISH, 'shellfish-main'];

/** What a title says may be how it is cooked: it is a roast where it is of meat. */
const ALSO_COOKED_SO = 'roast';

/**
 * The kinds that a dish of `kind` may be, as its title tells: those that the title names, else the fish or shellfish that it is of.
 * In its order; none is wider than another, none is `kind` itself.
 */
export function kindsOfTitle(title: string, kind: Kind, cupboard: Cupboard): Kind[] {
    const words = ` ${plainWords(title).join(' ')} `;
    const foods = contentsNamed(title, cupboard).map((name) => withParents(name, cupboard.substances));
    const canBe = (each: Kind): boolean =>
        each.name !== kind.name &&
        (isKindOf(each, kind.name) || (isKindOf(kind, MAIN) && isKindOf(each, FISH) && !isKindOf(kind, FISH)));
    const isOf = ({ of }: Kind): boolean => of.some(({ name }) => foods.some((food) => food.has(name)));
    const possible = [...cupboard.kinds.values()].filter(canBe);
    const placeOf = (each: Kind): number =>
        Math.min(
            ...wordsFor(each)
                .map((word) => words.indexOf(` ${word} `))
                .filter((place) => place >= 0),
        );
    const named = possible
        .filter((each) => Number.isFinite(placeOf(each)) && (each.name !== ALSO_COOKED_SO || isOf(each)))
        .toSorted((one, other) => placeOf(one) - placeOf(other));
    const told = named.length > 0 ? named : possible.filter((each) => SEAFOOD.includes(each.name) && isOf(each));
    return told.filter((each) => !told.some((other) => other !== each && isKindOf(other, each.name)));
}

const known = new WeakMap<Kind, readonly string[]>();

function wordsFor(kind: Kind): readonly string[] {
    const words =
        known.get(kind) ??
        [kind.name, ...(kind.called === undefined ? [] : [kind.called]), ...kind.also].map((each) =>
            plainWords(each).join(' '),
        );
    known.set(kind, words);
    return words;
}
