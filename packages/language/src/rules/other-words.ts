import type { Cupboard } from '../plan/cupboard.js';
import { isSameWord } from '../plan/other-words.js';
import type { NameSort } from '../plan/types.js';
import { nearest } from './nearest.js';

/** The things of a sort that can have other words. */
const THINGS: Partial<
    Record<NameSort, (cupboard: Cupboard) => Iterable<readonly [string, { readonly also: readonly string[] }]>>
> = {
    piece: ({ pieces }) => pieces,
    kind: ({ kinds }) => kinds,
    drink: ({ drinks }) => drinks,
    'kind-or-drink': ({ kinds, drinks }) => [...kinds, ...drinks],
    substance: ({ substances }) => substances,
    diet: ({ diets }) => diets,
    // A course is called by its kind.
    course: ({ kinds }) => kinds,
};

/** Another word, and the name of the thing that it is a word for. */
export interface OtherWord {
    readonly word: string;
    readonly name: string;
}

/** Guests are counted by age as by diet, with a word of the language. */
const CHILDREN: readonly OtherWord[] = ['child', 'kid'].map((word) => ({ word, name: 'children' }));

/**
 * All other words for things of a sort, in the order of the cupboard.
 * @param names those that may stand where the word stands
 */
export function otherWordsOf(sort: NameSort, cupboard: Cupboard, names: readonly string[]): OtherWord[] {
    const inReach = new Set(names);
    const things = [...(THINGS[sort]?.(cupboard) ?? [])].filter(([name]) => inReach.has(name));
    const words = things.flatMap(([name, { also }]) => also.map((word) => ({ word, name })));
    return [...words, ...(sort === 'diet' ? CHILDREN : [])].filter(({ word }) => !inReach.has(word));
}

/** The names of what `written` is another word for: `gluten-free` for `coeliac`. */
export function calledHere(written: string, words: readonly OtherWord[]): string[] {
    return [...new Set(words.filter(({ word }) => isSameWord(word, written)).map(({ name }) => name))];
}

/** The same where the other word is mistyped. */
export function nearlyCalledHere(written: string, words: readonly OtherWord[]): string[] {
    const near = nearest(
        written,
        words.map(({ word }) => word),
    );
    return [...new Set(near.flatMap((word) => calledHere(word, words)))];
}
