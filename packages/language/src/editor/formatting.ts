import type { Range, TextEdit as ProtocolEdit } from 'vscode-languageserver';
import { formatEdits } from './format.js';
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
