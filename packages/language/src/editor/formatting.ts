import type { Position, Range, TextEdit as ProtocolEdit } from 'vscode-languageserver';
import { formatEdits } from './format.js';
import { wordsOf } from './page.js';
import { protocolEdits } from './workspace-edit.js';
import type { Place } from './workspace.js';

/** The edits that lay the file out; none where it can't be read to its end. */
export function formatDocument({ folder, path }: Place): ProtocolEdit[] {
    const text = folder.textOf(path);
    return text === undefined ? [] : protocolEdits(folder, path, formatEdits(text));
}

/** As `formatDocument`, for the lines of a range. */
export function formatRange({ folder, path }: Place, range: Range): ProtocolEdit[] {
    const document = folder.documentOf(path);
    return document
        ? protocolEdits(
              folder,
              path,
              formatEdits(document.getText(), {
                  start: document.offsetAt(range.start),
                  end: document.offsetAt(range.end),
              }),
          )
        : [];
}

/** What is typed where a block is laid out: its brace, and Enter, for braces that the editor closed itself. */
export const LAYING_OUT = { brace: '}', lineEnd: '\n' } as const;

/** As `formatDocument`, for the lines of the block whose brace stands before the cursor: just typed, or as the last of the line above. */
export function formatBlock({ folder, path }: Place, position: Position, typed: string): ProtocolEdit[] {
    const document = folder.documentOf(path);
    const text = document?.getText() ?? '';
    const cursor = document?.offsetAt(position) ?? 0;
    const end = typed === LAYING_OUT.lineEnd ? text.slice(0, cursor).trimEnd().length : cursor;
    const open: number[] = [];
    for (const { sort, start, end: stop } of wordsOf(text)) {
        if (sort === 'open') {
            open.push(start);
        } else if (sort === 'close') {
            const start = open.pop();
            if (stop === end && start !== undefined) {
                return protocolEdits(folder, path, formatEdits(text, { start, end }));
            }
        }
    }
    return [];
}
