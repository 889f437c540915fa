import { lineStart, wordsOf, type Word } from './page.js';

/** What stands before the cursor, as far as a proposal must know it. */
export interface Cursor {
    readonly offset: number;
    /** Where the word being typed begins; the cursor itself where none is. */
    readonly start: number;
    /** What of it is typed. */
    readonly prefix: string;
    /** Inside a quote: where it opens. */
    readonly quote?: number;
    readonly isInComment: boolean;
    /** From the start of the item of the file that the cursor is in. Items before it don't bear on what may stand here. */
    readonly item: string;
    /** Of `item` the headings of the blocks that are open at the cursor, each with a clause before it, and the last clauses. */
    readonly near: string;
    /** Of `item` only the headings of the blocks that are open at the cursor, and the cursor's line. */
    readonly outline: string;
    /** The braces that are open at the cursor. */
    readonly openBlocks: number;
}

const WORD_BEFORE = /[\p{L}\p{M}_°%][\p{L}\p{M}\p{N}_-]*$/u;

export function cursorAt(text: string, offset: number): Cursor {
    const from = itemStart(text, offset);
    const before = text.slice(from, offset);
    const words = wordsOf(before);
    const last = words.at(-1);
    const isLast = (word: Word | undefined): word is Word => word?.end === before.length;
    const isInComment =
        last?.sort === 'comment' &&
        isLast(last) &&
        (before.startsWith('//', last.start) || !before.slice(last.start + 2).endsWith('*/'));
    const isOpenText = isLast(last) && /^["“„][^"“”]*$/.test(before.slice(last.start));
    const prefix = isOpenText || isInComment ? '' : (WORD_BEFORE.exec(lastLine(before))?.[0] ?? '');
    const start = offset - prefix.length;
    const item = before.slice(0, isOpenText ? last.start : before.length - prefix.length);
    const levels = openLevels(before, words);
    return {
        offset,
        start,
        prefix,
        ...(isOpenText ? { quote: from + last.start } : {}),
        isInComment,
        item,
        near: nearIn(item, levels),
        outline: outlineOf(before, item, words),
        openBlocks: levels.length - 1,
    };
}

const lastLine = (text: string): string => text.slice(lineStart(text, text.length));

/** What may hold braces that are none, and the braces: cut as words are. */
const BRACES = /[{}]|"[^"\n\r]*"?|[“”„][^“”"\n\r]*[“”"]?|\/\/[^\n\r]*|\/\*[\s\S]*?(?:\*\/|(?![\s\S]))/g;

/** Behind the last block that closed at the top of the file. */
function itemStart(text: string, offset: number): number {
    let open = 0;
    let from = 0;
    for (const { 0: mark, index } of text.matchAll(BRACES)) {
        if (index >= offset) {
            break;
        }
        open += mark === '{' ? 1 : mark === '}' && open > 0 ? -1 : 0;
        if (mark === '}' && open === 0) {
            from = index + 1;
        }
    }
    return from;
}

/** A block that is open at the cursor, or the file. */
interface Level {
    /** Behind its brace. */
    readonly start: number;
    /** What its first line is indented by. */
    margin?: string;
    /** The lines that are indented so: as far as one can see, each begins a clause. */
    readonly clauses: number[];
}

function openLevels(text: string, words: readonly Word[]): readonly Level[] {
    const levels: Level[] = [{ start: 0, clauses: [] }];
    let line = -1;
    for (const { sort, start, end } of words) {
        const own = lineStart(text, start);
        if (own !== line && sort !== 'comment' && sort !== 'close') {
            const level = levels.at(-1)!;
            const margin = text.slice(own, start);
            if (levels.length > 1 && own >= level.start && margin.trim() === '') {
                level.margin ??= margin;
                if (level.margin === margin) {
                    level.clauses.push(own);
                }
            }
        }
        line = own;
        if (sort === 'open') {
            levels.push({ start: end, clauses: [] });
        } else if (sort === 'close' && levels.length > 1) {
            levels.pop();
        }
    }
    return levels;
}

/** The clause that the cursor or a block is in, and the one before it, should the line have gone on with that one. */
const CLAUSES_KEPT = 2;

function nearIn(item: string, levels: readonly Level[]): string {
    return levels
        .map(({ start, clauses }, index) => {
            const first = clauses.length > CLAUSES_KEPT ? clauses.at(-CLAUSES_KEPT)! : start;
            return `${first > start ? '\n' : ''}${item.slice(first, levels[index + 1]?.start)}`;
        })
        .join('');
}

/** Each open block's heading from its line, or from the block before it on the line; then the rest of the cursor's line. */
function outlineOf(text: string, item: string, words: readonly Word[]): string {
    const headings: string[] = [];
    let end = 0;
    for (const { sort, start, end: stop } of words) {
        if (sort === 'open') {
            headings.push(text.slice(Math.max(lineStart(text, start), end), stop));
        } else if (sort === 'close') {
            headings.pop();
        }
        end = sort === 'open' || sort === 'close' ? stop : end;
    }
    return [...headings, item.slice(Math.max(lineStart(item, item.length), Math.min(end, item.length)))].join('\n');
}
