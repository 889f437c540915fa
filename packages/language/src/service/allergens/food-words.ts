/** What a line of a recipe's list names, by the words that the cupboard knows. */
import type { Cupboard, Substance } from '../../plan/cupboard.js';
import { withParents } from '../../plan/names.js';
import { plainWords } from '../../plan/other-words.js';

/** Where the words are looked for. */
export type Contents = Pick<Cupboard, 'substances' | 'diets'>;

/** The things by the words that people have for them. */
export interface Vocabulary {
    /** All that a word may mean, for guests without either are kept from it. */
    readonly substances: ReadonlyMap<string, readonly string[]>;
    /** Words of what harms nobody, though they may mean something else as well: a butternut is a nut, and a squash. */
    readonly harmless: ReadonlySet<string>;
    /** What is left out where the word stands: milk, of `dairy-free`. */
    readonly leftOut: ReadonlyMap<string, readonly string[]>;
    /** Words of the longest. */
    readonly longest: number;
}

const vocabularies = new WeakMap<Contents['substances'], { diets: Contents['diets']; words: Vocabulary }>();

export function vocabularyOf({ substances, diets }: Contents): Vocabulary {
    const known = vocabularies.get(substances);
    if (known?.diets === diets) {
        return known.words;
    }
    const words = readVocabulary({ substances, diets });
    vocabularies.set(substances, { diets, words });
    return words;
}

const phrase = (words: string): string => plainWords(words).join(' ');

function readVocabulary({ substances, diets }: Contents): Vocabulary {
    const found = new Map<string, string[]>();
    const harmless = new Set<string>();
    const all = [...substances.values()];
    // A name means what it names; other words, the code's among them, all that they may: nuts are tree nuts or peanuts.
    for (const wordsOf of [
        ({ name }: Substance) => [name],
        ({ called, also }: Substance) => [...called.map(({ words }) => words), ...also],
    ]) {
        const taken = new Set(found.keys());
        for (const substance of all) {
            for (const words of new Set(wordsOf(substance).map(phrase))) {
                if (isHarmless(substance, diets)) {
                    harmless.add(words);
                }
                if (!taken.has(words)) {
                    found.set(words, [...(found.get(words) ?? []), substance.name]);
                }
            }
        }
    }

    const leftOut = new Map<string, string[]>();
    for (const { name, called, also, excludes } of diets.values()) {
        const names = excludes.map((what) => what.name);
        for (const words of new Set([name, ...(called === undefined ? [] : [called]), ...also].map(phrase))) {
            // A word for two diets leaves out what both do: who takes lactose-free milk takes milk.
            const other = leftOut.get(words);
            leftOut.set(words, other ? names.filter((each) => other.includes(each)) : names);
        }
    }
    const longest = Math.max(0, ...[...found.keys(), ...leftOut.keys()].map((words) => words.split(' ').length));
    return { substances: found, harmless, leftOut, longest };
}

/** In the cupboard only so that its words are not taken for others: rice flour. */
function isHarmless({ name, sort, parents }: Substance, diets: Contents['diets']): boolean {
    return (
        sort === 'ingredient' &&
        parents.length === 0 &&
        ![...diets.values()].some(({ excludes }) => excludes.some((what) => what.name === name))
    );
}

/** In place of something: egg replacer. */
const IN_PLACE = new Set(['alternative', 'replacement', 'replacer', 'substitute']);
const WITHOUT = new Set(['no', 'non', 'not', 'without']);

/** What `Tree nuts`, `eggs`, `cereals containing gluten` or `dairy` means: a name, else all that it is another word for. */
export function substancesCalled(words: string, cupboard: Contents): readonly string[] {
    return vocabularyOf(cupboard).substances.get(phrase(words)) ?? [];
}

/**
 * What a line of a list names. The longest words are looked for first, so that oat milk is no milk: `cream` of `200 ml double cream`; nothing of `oat cream`, `vegan cream` or `cream substitute`.
 * @param ingredient without its amount
 */
export function contentsNamed(ingredient: string, cupboard: Contents): string[] {
    const { substances, harmless, leftOut, longest } = vocabularyOf(cupboard);
    const found: string[] = [];
    const without: string[] = [];
    for (const part of ingredient.split(/[,;:()/]/)) {
        const words = plainWords(part);
        let before: readonly string[] = [];
        for (let at = 0; at < words.length;) {
            let length = Math.min(longest, words.length - at);
            const said = (): string => words.slice(at, at + length).join(' ');
            while (length > 1 && !substances.has(said()) && !leftOut.has(said())) {
                length--;
            }
            const named = harmless.has(said()) ? [] : substances.get(said());
            const after = words[at + length] ?? '';
            const isFree = after === 'free' && words[at + length + 1] !== 'range';
            if (isFree || WITHOUT.has(words[at - 1] ?? '')) {
                without.push(...(named ?? []));
            } else if (named && !IN_PLACE.has(after) && !areSortsOf(before, named, cupboard)) {
                found.push(...named);
            }
            without.push(...(leftOut.get(said()) ?? []));
            before = named ?? [];
            at += length;
        }
    }
    return [...new Set(found.flatMap((name) => lessOf(name, without, cupboard.substances)))];
}

/** Pecan nuts are pecans, and no other nuts. */
function areSortsOf(names: readonly string[], wider: readonly string[], { substances }: Contents): boolean {
    return names.some((name) => wider.some((each) => withParents(name, substances).has(each)));
}

/** Gluten-free soy sauce is of soy, and not of wheat. */
function lessOf(
    name: string,
    without: readonly string[],
    substances: Contents['substances'],
    below: readonly string[] = [],
): string[] {
    const above = withParents(name, substances);
    if (below.includes(name) || !without.some((each) => above.has(each))) {
        return below.includes(name) ? [] : [name];
    }
    const parents = without.includes(name) ? [] : (substances.get(name)?.parents ?? []);
    return parents.flatMap((parent) => lessOf(parent.name, without, substances, [...below, name]));
}
