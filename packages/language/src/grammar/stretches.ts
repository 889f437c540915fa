/** A part of a text that can be read by itself: from behind one block to the end of the next. UTF-16 units. */
export interface Stretch {
    readonly start: number;
    readonly end: number;
}

/** What may hold braces that are none, closed or not, and the braces. As the grammar's terminals have it. */
export const BRACES =
    /[{}]|"[^"\n\r]*"?|[\u201C\u201D\u201E][^\u201C\u201D"\n\r]*[\u201C\u201D"]?|\/\/[^\n\r]*|\/\*[\s\S]*?(?:\*\/|(?![\s\S]))/g;

/**
 * Cuts a text behind each block that stands in no other. What follows the last block is a stretch as well.
 * @param from the start of a stretch
 * @param until where a stretch should end, the last of those asked for; absent for all to the end of the text
 * @returns `undefined` where braces do not pair, or no stretch ends at `until`
 */
export function stretchesOf(text: string, from = 0, until?: number): Stretch[] | undefined {
    const to = until ?? text.length;
    const stretches: Stretch[] = [];
    const tokens = new RegExp(BRACES);
    tokens.lastIndex = from;
    let start = from;
    let depth = 0;
    for (let found = tokens.exec(text); found !== null && found.index < to; found = tokens.exec(text)) {
        const [token] = found;
        if (tokens.lastIndex > to) {
            return undefined;
        }
        depth += token === '{' ? 1 : token === '}' ? -1 : 0;
        if (depth < 0) {
            return undefined;
        }
        if (token === '}' && depth === 0) {
            stretches.push({ start, end: tokens.lastIndex });
            start = tokens.lastIndex;
        }
    }
    if (depth > 0) {
        return undefined;
    }
    if (until === undefined) {
        return [...stretches, { start, end: to }];
    }
    return start === until ? stretches : undefined;
}
