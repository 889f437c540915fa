import type { Cupboard } from '../plan/cupboard.js';
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
};

/** Another word, and the name of the thing that it is a word for. */
export interface OtherWord {
    readonly word: string;
    readonly name: string;
}

/** All other words for things of a sort, in the order of their names. */
export function otherWordsOf(sort: NameSort, cupboard: Cupboard): OtherWord[] {
    return [...(THINGS[sort]?.(cupboard) ?? [])].flatMap(([name, { also }]) => also.map((word) => ({ word, name })));
}

/** What people write for the same word: in capitals, with an accent, in two words, as more than one of it. */
const plain = (word: string): string =>
    word.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replaceAll(' ', '-').replace(/s$/, '');

/** The names of what `written` is another word for: `gluten-free` for `coeliac`. */
export function calledHere(written: string, words: readonly OtherWord[]): string[] {
    return [...new Set(words.filter(({ word }) => plain(word) === plain(written)).map(({ name }) => name))];
}

/** The same where the other word is mistyped. */
export function nearlyCalledHere(written: string, words: readonly OtherWord[]): string[] {
    const near = nearest(
        written,
        words.map(({ word }) => word),
    );
    return [...new Set(near.flatMap((word) => calledHere(word, words)))];
}
