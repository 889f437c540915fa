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

/** As `formatDocument`, for the lines of the block whose brace was just typed before the cursor. */
export function formatBlock({ folder, path }: Place, position: Position): ProtocolEdit[] {
    const document = folder.documentOf(path);
    const text = document?.getText() ?? '';
    const end = document?.offsetAt(position) ?? 0;
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
