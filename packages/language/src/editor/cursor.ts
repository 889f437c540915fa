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
    /** Of `item` only the headings of the blocks that are open at the cursor, and the cursor's line. */
    readonly outline: string;
    /** The braces that are open at the cursor. */
    readonly openBlocks: number;
}

const WORD_BEFORE = /[\p{L}\p{M}_°%][\p{L}\p{M}\p{N}_-]*$/u;

export function cursorAt(text: string, offset: number): Cursor {
    const before = text.slice(0, offset);
    const words = wordsOf(before);
    const last = words.at(-1);
    const isLast = (word: Word | undefined): word is Word => word?.end === offset;
    const isInComment =
        last?.sort === 'comment' &&
        isLast(last) &&
        (before.startsWith('//', last.start) || !before.slice(last.start + 2).endsWith('*/'));
    const isOpenText = isLast(last) && /^["“„][^"“”]*$/.test(before.slice(last.start));
    const prefix = isOpenText || isInComment ? '' : (WORD_BEFORE.exec(before)?.[0] ?? '');
    const start = offset - prefix.length;
    const { from, open } = itemStart(words);
    const stop = isOpenText ? last.start : start;
    return {
        offset,
        start,
        prefix,
        ...(isOpenText ? { quote: last.start } : {}),
        isInComment,
        item: before.slice(from, stop),
        outline: outlineOf(before.slice(0, stop), words),
        openBlocks: open,
    };
}

/** Behind the last block that closed at the top of the file, and the blocks that are open at the end. */
function itemStart(words: readonly Word[]): { readonly from: number; readonly open: number } {
    let open = 0;
    let from = 0;
    for (const { sort, end } of words) {
        open += sort === 'open' ? 1 : sort === 'close' && open > 0 ? -1 : 0;
        if (sort === 'close' && open === 0) {
            from = end;
        }
    }
    return { from, open };
}

/** Each open block's heading from its line, or from the block before it on the line; then the rest of the cursor's line. */
function outlineOf(text: string, words: readonly Word[]): string {
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
    return [...headings, text.slice(Math.max(lineStart(text, text.length), Math.min(end, text.length)))].join('\n');
}
