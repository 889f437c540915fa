/** How words of a drawing stand out from its paper (1 to 21). @param words an element of the page */
export function contrastOfWords(words: unknown): number;
/** How high the smallest words of a picture are as they are seen, in dots. @param picture an svg of the page */
export function smallestWords(picture: unknown): number;
/** What of a panel's page is cut off at the right. @param body of the page */
export function widerThanPage(body: unknown): readonly string[];
