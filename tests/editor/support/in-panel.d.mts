/** How words of a drawing stand out from its paper (1 to 21). @param words an element of the page */
export function contrastOfWords(words: unknown): number;
/** What of a panel's page is cut off at the right. @param body of the page */
export function widerThanPage(body: unknown): readonly string[];
