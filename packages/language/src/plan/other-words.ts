/** One word as people write it: in capitals, with an accent, as more than one of it (`Anchovies`, `anchovy`). */
const plain = (word: string): string =>
    word
        .normalize('NFD')
        .replace(/\p{M}/gu, '')
        .toLowerCase()
        .replace(/s$/, '')
        .replace(/ie$/, 'y')
        .replace(/oe$/, 'o');

/** The words of a phrase, each alike however people write it: `goat cheese` of `Goat’s-cheeses`. */
export const plainWords = (phrase: string): string[] =>
    phrase
        .replace(/['’]/g, '')
        .split(/[^\p{L}\p{M}\p{N}]+/u)
        .filter((word) => word !== '')
        .map(plain);

/** Whether two words are the same to people who write them, in two words or with a hyphen as well. */
export const isSameWord = (one: string, other: string): boolean =>
    plainWords(one).join('-') === plainWords(other).join('-');
