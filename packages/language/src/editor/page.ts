/** A file's text with its words and comments, as far as an edit must know them. Reads any text, whole or half typed. */
export interface Page {
    readonly text: string;
    readonly words: readonly Word[];
    /** The file's own line end. */
    readonly lineEnd: '\n' | '\r\n';
    /** What one more level is indented by. */
    readonly indent: string;
}

export interface Word {
    readonly sort: 'comment' | 'open' | 'close' | 'comma' | 'word';
    readonly start: number;
    readonly end: number;
}

// The same cuts as the lexer's, for braces, commas and slashes inside quotes and comments are no marks.
const WORD =
    /(?<comment>\/\/[^\n\r]*|\/\*[\s\S]*?(?:\*\/|(?![\s\S])))|(?<open>\{)|(?<close>\})|(?<word>"[^"\n\r]*"?|[“”„][^“”"\n\r]*[“”"]?|(?:(?!\/\/|\/\*)[^\s{},"“”„]|(?<=\d),(?=\d))+)|(?<comma>,)/g;

export function wordsOf(text: string): Word[] {
    return [...text.matchAll(WORD)].map((match) => {
        const [sort] = Object.entries(match.groups!).find(([, part]) => part !== undefined)!;
        return { sort: sort as Word['sort'], start: match.index, end: match.index + match[0].length };
    });
}

export function pageOf(text: string): Page {
    const words = wordsOf(text);
    return { text, words, lineEnd: /\r?\n/.exec(text)?.[0] === '\r\n' ? '\r\n' : '\n', indent: indentOf(text, words) };
}

/** How the first line that begins inside a block is indented; four spaces where there is none. */
function indentOf(text: string, words: readonly Word[]): string {
    let depth = 0;
    for (const word of words) {
        depth -= word.sort === 'close' ? 1 : 0;
        const margin = marginAt(text, word.start);
        if (
            depth === 1 &&
            word.sort !== 'comment' &&
            margin !== '' &&
            lineStart(text, word.start) + margin.length === word.start
        ) {
            return margin;
        }
        depth += word.sort === 'open' ? 1 : 0;
    }
    return '    ';
}

export function lineStart(text: string, offset: number): number {
    return offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
}

/** Where the line's own characters end, before its line end. */
export function lineStop(text: string, offset: number): number {
    const found = /\r?\n/g;
    found.lastIndex = offset;
    return found.exec(text)?.index ?? text.length;
}

/** Where the next line starts, or the text ends. */
export function nextLine(text: string, offset: number): number {
    const end = text.indexOf('\n', offset);
    return end < 0 ? text.length : end + 1;
}

/** The blanks that the line at `offset` begins with. */
export function marginAt(text: string, offset: number): string {
    return /[^\S\r\n]*/y.exec(text.slice(lineStart(text, offset)))![0];
}

/** `offset` moved over the blanks after it, within the line. */
export function skipBlanks(text: string, offset: number): number {
    return offset + /^[^\S\r\n]*/.exec(text.slice(offset))![0].length;
}

/** `offset` moved back over the blanks before it, within the line. */
export function skipBlanksBack(text: string, offset: number): number {
    return offset - /[^\S\r\n]*$/.exec(text.slice(lineStart(text, offset), offset))![0].length;
}

/** A line's start moved back over the empty lines above it. */
export function skipEmptyLinesBack(text: string, start: number): number {
    let above = start;
    while (above > 0 && isBlank(text.slice(lineStart(text, above - 1), above))) {
        above = lineStart(text, above - 1);
    }
    return above;
}

/** A line's start moved over the empty lines from it on. */
export function skipEmptyLines(text: string, start: number): number {
    let below = start;
    while (below < text.length && isBlank(text.slice(below, nextLine(text, below)))) {
        below = nextLine(text, below);
    }
    return below;
}

export function isBlank(text: string): boolean {
    return text.trim() === '';
}

/** The last word, no comment, that ends at or before `offset`. */
export function wordBefore(page: Page, offset: number): Word | undefined {
    return page.words.findLast((word) => word.sort !== 'comment' && word.end <= offset);
}

/** The first word, no comment, that starts at or after `offset`. */
export function wordAfter(page: Page, offset: number): Word | undefined {
    return page.words.find((word) => word.sort !== 'comment' && word.start >= offset);
}

/** The word where it joins two items of a list. */
export function asJoint(page: Page, word: Word | undefined): Word | undefined {
    const isJoint = word !== undefined && (word.sort === 'comma' || ['and', 'or'].includes(textOf(page, word)));
    return isJoint ? word : undefined;
}

export function commentsIn(page: Page, start: number, end: number): Word[] {
    return page.words.filter((word) => word.sort === 'comment' && word.start >= start && word.end <= end);
}

export function textOf(page: Page, range: { readonly start: number; readonly end: number }): string {
    return page.text.slice(range.start, range.end);
}

/** The braces of the block that ends where the thing ends; absent where it has none. */
export function bracesIn(
    page: Page,
    thing: { readonly start: number; readonly end: number },
): { readonly open: Word; readonly close: Word } | undefined {
    let open: Word | undefined;
    let depth = 0;
    for (const word of page.words.filter(({ start, end }) => start >= thing.start && end <= thing.end)) {
        if (word.sort === 'open') {
            open ??= word;
            depth += 1;
        } else if (word.sort === 'close') {
            depth -= 1;
            if (depth === 0) {
                return open !== undefined && word.end === thing.end ? { open, close: word } : undefined;
            }
        }
    }
    return undefined;
}

/**
 * The lines that a thing has to itself, with the comments beside it and right above it; absent where it shares a line.
 * @returns `end` is where the next line starts, or the text ends
 */
export function linesOf(
    page: Page,
    thing: { readonly start: number; readonly end: number },
): { readonly start: number; readonly end: number } | undefined {
    const { text } = page;
    let start = lineStart(text, thing.start);
    const end = nextLine(text, thing.end);
    const isAlone =
        isBlank(text.slice(start, thing.start)) && isCommentOrBlank(page, thing.end, lineStop(text, thing.end));
    if (!isAlone) {
        return undefined;
    }
    for (;;) {
        const comment = page.words.findLast((word) => word.end <= start);
        if (comment?.sort !== 'comment' || nextLine(text, comment.end) !== start) {
            return { start, end };
        }
        const above = lineStart(text, comment.start);
        if (!isBlank(text.slice(above, comment.start))) {
            return { start, end };
        }
        start = above;
    }
}

function isCommentOrBlank(page: Page, start: number, end: number): boolean {
    return page.words.every(
        (word) =>
            word.end <= start ||
            word.start >= end ||
            (word.sort === 'comment' && word.start >= start && word.end <= end),
    );
}
