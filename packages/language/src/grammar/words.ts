import type { TokenType } from 'chevrotain';
import { distance } from 'fastest-levenshtein';

/** A word or sign that the grammar spells out, such as `course` or `{`. */
export function isKeyword(type: TokenType): boolean {
    return typeof type.PATTERN === 'string';
}

/** A keyword written in letters. */
export function isWord(type: TokenType): boolean {
    return isKeyword(type) && /^\p{L}/u.test(type.name);
}

/** The keywords among the tokens that are written in letters, in a fixed order. */
export function wordsOf(types: Iterable<TokenType>): string[] {
    return [...types]
        .filter(isWord)
        .map(({ name }) => name)
        .sort();
}

const letters = (word: string): string => [...word].sort().join('');

/**
 * The one word that `written` is a slip of: one letter off in a short word, two in a longer, or two letters that changed
 * places. None where several are as near.
 */
export function nearestWord(written: string, words: readonly string[]): string | undefined {
    const wanted = written.normalize('NFC').toLowerCase();
    const near = words
        .map((word) => ({ word, apart: distance(wanted, word.toLowerCase()) }))
        .filter(({ word, apart }) => {
            const shorter = Math.min(wanted.length, word.length);
            const isSwap = apart === 2 && shorter > 2 && letters(wanted) === letters(word.toLowerCase());
            return apart <= (shorter <= 2 ? 0 : shorter <= 5 ? 1 : 2) || isSwap;
        })
        .sort((a, b) => a.apart - b.apart);
    const [best, next] = near;
    return best && best.apart !== next?.apart ? best.word : undefined;
}
