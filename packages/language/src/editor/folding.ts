import { FoldingRangeKind, type FoldingRange } from 'vscode-languageserver';
import { wordsOf, type Word } from './page.js';
import type { Place } from './workspace.js';

/** Blocks, comments of several lines, and the `use` lines at the top. */
export function foldingRanges({ folder, path }: Place): FoldingRange[] {
    const document = folder.documentOf(path);
    if (!document) {
        return [];
    }
    const text = document.getText();
    const words = wordsOf(text);
    const lineOf = (offset: number): number => document.positionAt(offset).line;
    const ranges: FoldingRange[] = [];
    const add = (startLine: number, endLine: number, kind?: FoldingRangeKind): void => {
        if (endLine > startLine) {
            ranges.push({ startLine, endLine, ...(kind === undefined ? {} : { kind }) });
        }
    };
    const open: Word[] = [];
    for (const word of words) {
        if (word.sort === 'open') {
            open.push(word);
        } else if (word.sort === 'close') {
            const opener = open.pop();
            if (opener) {
                // The closing brace stays in sight.
                add(lineOf(opener.start), lineOf(word.start) - 1);
            }
        }
    }
    for (const [first, last] of runs(
        words.filter(({ sort }) => sort === 'comment'),
        lineOf,
    )) {
        add(first, last, FoldingRangeKind.Comment);
    }
    const uses = folder.readingOf(path)?.uses ?? [];
    if (uses.length > 1) {
        add(lineOf(uses[0]!.origin.start), lineOf(uses.at(-1)!.origin.end), FoldingRangeKind.Imports);
    }
    return ranges;
}

/** The lines of comments that follow each other without a line between. */
function runs(comments: readonly Word[], lineOf: (offset: number) => number): [number, number][] {
    const all: [number, number][] = [];
    for (const { start, end } of comments) {
        const last = all.at(-1);
        if (last && lineOf(start) <= last[1] + 1) {
            last[1] = lineOf(end);
        } else {
            all.push([lineOf(start), lineOf(end)]);
        }
    }
    return all;
}
