/** What people write for the same word: in capitals, with an accent, in two words, as more than one of it. */
const plain = (word: string): string =>
    word.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim().replace(/\s+/g, '-').replace(/s$/, '');

/** Whether two words are the same to people who write them. */
export const isSameWord = (one: string, other: string): boolean => plain(one) === plain(other);
