import type { TextEdit as ProtocolEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { Client } from './client.js';
import type { TextEdit } from './fixes.js';
import type { Folder } from './folder.js';

/** Edits by file, and files to make, as the client applies them: with the versions they were made for, so that it can refuse late ones. */
export function workspaceEdit(
    folder: Folder,
    edits: ReadonlyMap<string, readonly TextEdit[]>,
    client: Pick<Client, 'takesVersionedEdits'>,
    creates: ReadonlyMap<string, string> = new Map(),
): WorkspaceEdit {
    const files = [...edits].map(([path, own]) => ({
        path,
        uri: folder.uriOf(path),
        edits: protocolEdits(folder, path, own),
    }));
    if (!client.takesVersionedEdits) {
        return { changes: Object.fromEntries(files.map(({ uri, edits: own }) => [uri, own])) };
    }
    const start = { line: 0, character: 0 };
    const made = [...creates].flatMap(([path, text]) => {
        const uri = folder.uriOf(path);
        return [
            { kind: 'create' as const, uri, options: { overwrite: false } },
            { textDocument: { uri, version: null }, edits: [{ range: { start, end: start }, newText: text }] },
        ];
    });
    const changed = files.map(({ path, uri, edits: own }) => ({
        textDocument: { uri, version: folder.versionOf(path) ?? null },
        edits: own,
    }));
    return { documentChanges: [...made, ...changed] };
}

export function protocolEdits(folder: Folder, path: string, edits: readonly TextEdit[]): ProtocolEdit[] {
    const document = folder.documentOf(path);
    return edits.flatMap(({ start, end, text }) =>
        document
            ? [{ range: { start: document.positionAt(start), end: document.positionAt(end) }, newText: text }]
            : [],
    );
}
