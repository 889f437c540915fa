import { workspace, type TextDocument } from 'vscode';
import type { Middleware } from 'vscode-languageclient';
import { CUPBOARD_SCHEME } from 'underliner-language/editor';

/**
 * Older versions and comparisons are documents as well, whose `use` leads nowhere: nothing is to be found in those. A plan
 * can be changed, or lies where a folder of the workspace does.
 */
export function isServed({ uri: { scheme } }: Pick<TextDocument, 'uri'>): boolean {
    return (
        scheme === 'untitled' ||
        scheme === CUPBOARD_SCHEME ||
        workspace.fs.isWritableFileSystem(scheme) === true ||
        (workspace.workspaceFolders ?? []).some(({ uri }) => uri.scheme === scheme)
    );
}

/** Keeps the other documents from the server. */
export function servedDocumentsOnly(): Middleware {
    return {
        didOpen: (document, next) => (isServed(document) ? next(document) : Promise.resolve()),
        didChange: (event, next) => (isServed(event.document) ? next(event) : Promise.resolve()),
        didClose: (document, next) => (isServed(document) ? next(document) : Promise.resolve()),
    };
}
