import type { IToken } from 'chevrotain';
import { DefaultLexer, type LexerResult, type LexingReport, type TokenizeOptions } from 'langium';
import { matchBraces, type Block } from './braces.js';
import { DEEPEST_BLOCK, LONGEST_TEXT } from './limits.js';
import { isUnclosed } from './terminal-values.js';

/** A text or comment that was opened and never closed. Offsets into the text. */
export interface Unclosed {
    readonly sort: 'text' | 'comment';
    readonly start: number;
    readonly end: number;
}

/** What the lexer knows and the tree does not show. */
export interface CoverLexingReport extends LexingReport {
    readonly blocks: readonly Block[];
    readonly unclosed: readonly Unclosed[];
    /** The whole text was refused: it is too long, too deep or no text. */
    readonly isRefused: boolean;
}

/** Refuses what no parser should be asked to read, so that every user of the language is safe from it. */
export class CoverLexer extends DefaultLexer {
    override tokenize(text: string, options?: TokenizeOptions): LexerResult {
        const binary = text.indexOf('\0');
        if (binary >= 0) {
            return refused(binary, 1, 'This file holds bytes that are not text. A plan is plain text in UTF-8.');
        }
        if (text.length > LONGEST_TEXT) {
            const message = `This file has ${text.length} characters; a file may have ${LONGEST_TEXT}. Split it, and join the parts with \`use\`.`;
            return refused(0, 0, message);
        }
        const result = super.tokenize(text, options);
        const tooDeep = firstTooDeep(result.tokens);
        if (tooDeep) {
            const message = `More than ${DEEPEST_BLOCK} blocks are open here, one inside the other. Close some of them with \`}\`.`;
            return refused(tooDeep.startOffset, 1, message);
        }
        const report: CoverLexingReport = {
            diagnostics: result.report?.diagnostics ?? [],
            blocks: matchBraces(result.tokens),
            unclosed: [...unclosedOf(result.tokens, 'text'), ...unclosedOf(result.hidden, 'comment')],
            isRefused: false,
        };
        return { ...result, report };
    }
}

function refused(offset: number, length: number, message: string): LexerResult {
    const report: CoverLexingReport = { diagnostics: [], blocks: [], unclosed: [], isRefused: true };
    return {
        tokens: [],
        hidden: [],
        errors: [{ offset, length, message, line: undefined, column: undefined }],
        report,
    };
}

function firstTooDeep(tokens: readonly IToken[]): IToken | undefined {
    let depth = 0;
    return tokens.find(({ image }) => {
        depth = image === '{' ? depth + 1 : image === '}' ? Math.max(0, depth - 1) : depth;
        return depth > DEEPEST_BLOCK;
    });
}

function unclosedOf(tokens: readonly IToken[], sort: Unclosed['sort']): Unclosed[] {
    return tokens
        .filter(({ image }) => isUnclosed(image))
        .map(({ startOffset, image }) => ({ sort, start: startOffset, end: startOffset + image.length }));
}
