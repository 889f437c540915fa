/** How words of a drawing stand out from its paper (1 to 21). @param words an element of the page */
export function contrastOfWords(words: unknown): number;
