import type { Position, SelectionRange } from 'vscode-languageserver';
import { CstUtils } from 'langium';
import { parseText } from '../grammar/parse.js';
import { bracesIn, pageOf, type Page } from './page.js';
import type { Place } from './workspace.js';

interface Span {
    readonly start: number;
    readonly end: number;
}

/** What a selection grows to, from each position: the word, what is in its quotes, the phrase, the clause, the block, the file. */
export function selectionRanges({ folder, path }: Place, positions: readonly Position[]): SelectionRange[] {
    const document = folder.documentOf(path)!;
    const text = document.getText();
    const page = pageOf(text);
    const { tree } = parseText(text);
    return positions.map((position) => {
        const spans = spansAt(page, tree.$cstNode, document.offsetAt(position));
        let outer: SelectionRange | undefined;
        for (const { start, end } of spans.reverse()) {
            const range = { start: document.positionAt(start), end: document.positionAt(end) };
            outer = { range, ...(outer ? { parent: outer } : {}) };
        }
        return outer!;
    });
}

/** From the inside outward, each larger than the one before. */
function spansAt(
    page: Page,
    root: Parameters<typeof CstUtils.findLeafNodeAtOffset>[0] | undefined,
    offset: number,
): Span[] {
    const leaf =
        root && (CstUtils.findLeafNodeAtOffset(root, offset) ?? CstUtils.findLeafNodeAtOffset(root, offset - 1));
    const spans: Span[] = [];
    const add = ({ start, end }: Span): void => {
        const last = spans.at(-1);
        const isLarger = !last || (start <= last.start && end >= last.end && (start < last.start || end > last.end));
        if (isLarger && start <= offset && offset <= end) {
            spans.push({ start, end });
        }
    };
    for (let node = leaf as typeof root | undefined; node?.container; node = node.container) {
        const span = { start: node.offset, end: node.end };
        if (/^["“„].*["”“]$/s.test(page.text.slice(span.start, span.end))) {
            add({ start: span.start + 1, end: span.end - 1 });
        }
        const braces = bracesIn(page, span);
        if (braces) {
            add({ start: braces.open.end, end: braces.close.start });
            add({ start: braces.open.start, end: braces.close.end });
        }
        add(span);
    }
    add({ start: 0, end: page.text.length });
    return spans;
}
