import type { ParseResult } from 'langium';

/** Something the parser could not read. Offsets are UTF-16 units into the text. */
export interface SyntaxProblem {
    readonly start: number;
    readonly end: number;
    readonly message: string;
}

export function syntaxProblems(text: string, result: ParseResult): SyntaxProblem[] {
    const problems: SyntaxProblem[] = [];
    for (const error of result.lexerErrors) {
        problems.push({ start: error.offset, end: error.offset + error.length, message: error.message });
    }
    for (const error of result.parserErrors) {
        const token = Number.isNaN(error.token.startOffset) ? error.previousToken : error.token;
        const start = token?.startOffset ?? text.length;
        problems.push({ start, end: (token?.endOffset ?? start) + 1, message: error.message });
    }
    return problems.sort((a, b) => a.start - b.start);
}
