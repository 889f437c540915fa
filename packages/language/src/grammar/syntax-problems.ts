import { CstUtils, type ParseResult } from 'langium';
import { blockAround, type Block } from './braces.js';
import { Misreading } from './engine.js';
import type { CoverLexingReport, Unclosed } from './lexer.js';
import { lookalike, UNCLOSED_COMMENT, UNCLOSED_TEXT, type Said } from './messages.js';

/** Something the parser could not read. Offsets are UTF-16 units into the text. */
export interface SyntaxProblem {
    readonly start: number;
    readonly end: number;
    /** A sentence that says what is wrong. */
    readonly message: string;
    /** What to do about it. */
    readonly hint?: string;
    /** Words to put in its place that would mend it. */
    readonly suggestion?: string;
}

interface Found {
    readonly start: number;
    readonly end: number;
    readonly said: Said;
    /** One problem is shown for each. */
    readonly block: string;
    readonly isAboutBraces?: boolean;
    readonly isLeftOver?: boolean;
}

/** Characters outside the language are looked at this often. */
const MOST_CHARACTERS = 300;

/**
 * What the reader of a file could not read: the first problem of each block, and of each line of a guest list, in source order,
 * in the chef's words.
 */
export function syntaxProblems(text: string, result: ParseResult): SyntaxProblem[] {
    const report = reportOf(result);
    const found = [...lexerProblems(text, result, report.blocks), ...parserProblems(text, result, report)];
    const isBraceSwallowed = report.unclosed.some(({ start, end }) => /[{}]/.test(text.slice(start, end)));
    const own = found.filter(
        (problem) =>
            !(problem.isAboutBraces && isBraceSwallowed) && !followsFromUnclosed(text, problem, report.unclosed),
    );
    const shown = new Map<string, Found>();
    for (const problem of [...own, ...unreadTexts(text, result, report)].sort(inOrder)) {
        // A closing brace that is left over after another mistake is most likely its doing.
        if (!shown.has(problem.block) && !(problem.isLeftOver && shown.size > 0)) {
            shown.set(problem.block, problem);
        }
    }
    return [...shown.values()].map(({ start, end, said: { message, hint, suggestion } }) => ({
        ...{ start, end, message },
        ...(hint === undefined ? {} : { hint }),
        ...(suggestion === undefined ? {} : { suggestion }),
    }));
}

/** Texts and comments without an end. They are in the tree, as far as they go, and no syntax problem by themselves. */
export function unclosedProblems({ unclosed }: Pick<CoverLexingReport, 'unclosed'>): SyntaxProblem[] {
    return unclosed.map(({ sort, start, end }) => ({
        start,
        end: sort === 'text' ? end : start + 2,
        message: sort === 'text' ? UNCLOSED_TEXT : UNCLOSED_COMMENT,
    }));
}

export function reportOf({ lexerReport }: ParseResult): CoverLexingReport {
    return (
        (lexerReport as CoverLexingReport | undefined) ?? {
            diagnostics: [],
            blocks: [],
            unclosed: [],
            isRefused: false,
        }
    );
}

function inOrder(a: Found, b: Found): number {
    return a.start - b.start;
}

function lexerProblems(text: string, { lexerErrors }: ParseResult, blocks: readonly Block[]): Found[] {
    return lexerErrors.slice(0, MOST_CHARACTERS).map(({ offset, length, message }) => {
        const suggestion = lookalike(text.slice(offset, offset + length));
        const said = { message, ...(suggestion === undefined ? {} : { suggestion }) };
        return { start: offset, end: offset + length, said, block: blockName(text, blocks, offset) };
    });
}

function parserProblems(text: string, { parserErrors }: ParseResult, { blocks }: CoverLexingReport): Found[] {
    const unclosed = blocks.filter(({ close }) => close === undefined);
    return parserErrors.map((error) => {
        if (!(error instanceof Misreading)) {
            const said = { message: error.message };
            return { start: text.length, end: text.length, said, block: 'the end' };
        }
        const { said, sort } = error;
        const place = placeOf(text, error);
        const opener =
            sort === 'brace-missing'
                ? (unclosed.findLast(({ open }) => open < place.end) ?? blockAround(blocks, place.start))
                : undefined;
        return {
            ...(opener ? { start: opener.heading, end: opener.open + 1 } : place),
            said,
            block: opener ? `the end of ${keyOf(opener)}` : blockName(text, blocks, place.start),
            isAboutBraces: sort === 'brace-missing' || sort === 'brace-surplus',
            isLeftOver: sort === 'brace-surplus',
        };
    });
}

/** The token that does not fit; where something is missing at the end of a line or of the text, the token before it. */
function placeOf(text: string, { token, before, said, sort }: Misreading): { start: number; end: number } {
    const isAtEnd = Number.isNaN(token.startOffset);
    const isOnNextLine = sort === 'wanting' && before !== undefined && before.endLine !== token.startLine;
    const shown = isAtEnd || isOnNextLine ? before : token;
    if (!shown || Number.isNaN(shown.startOffset)) {
        return { start: text.length, end: text.length };
    }
    const length =
        shown === token && said.length !== undefined
            ? said.length
            : (shown.endOffset ?? shown.startOffset) + 1 - shown.startOffset;
    return { start: shown.startOffset, end: Math.min(text.length, shown.startOffset + length) };
}

/**
 * The block a place is in; outside all blocks, the stretch between two of them. In a list of guests, which often comes from
 * elsewhere, each line: whoever mends one mends them all.
 */
function blockName(text: string, blocks: readonly Block[], offset: number): string {
    const block = blockAround(blocks, offset);
    const before = blocks.findLast(({ depth, open }) => depth === 0 && open < offset);
    if (block && offset > block.open && text.slice(block.heading, block.open).trim() === 'seating') {
        return `${keyOf(block)}, the line at ${text.lastIndexOf('\n', offset - 1)}`;
    }
    return block ? keyOf(block) : before ? `after ${keyOf(before)}` : 'the start';
}

function keyOf({ open }: Block): string {
    return `the block at ${open}`;
}

/** A text without its closing quote swallows the rest of its line; what that breaks next is no mistake of its own. */
function followsFromUnclosed(text: string, problem: Found, unclosed: readonly Unclosed[]): boolean {
    const before = unclosed.findLast(({ start }) => start < problem.end);
    if (!before) {
        return false;
    }
    const isInside = problem.start <= before.end;
    return isInside || (before.sort === 'text' && /^\s*$/.test(text.slice(before.end, problem.start)));
}

/** An unclosed text in words that were left out is seen by nobody else: it is not in the tree. */
function unreadTexts(text: string, { value }: ParseResult, { unclosed, blocks }: CoverLexingReport): Found[] {
    if (unclosed.length === 0 || !value.$cstNode) {
        return [];
    }
    const read = new Set(CstUtils.flattenCst(value.$cstNode).map(({ offset }) => offset));
    const unread = unclosed.filter(({ start }) => !read.has(start)).slice(0, MOST_CHARACTERS);
    return unclosedProblems({ unclosed: unread }).map(({ start, end, message }) => ({
        ...{ start, end, said: { message } },
        block: blockName(text, blocks, start),
    }));
}
