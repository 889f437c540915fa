import { Disposable, FileSystemError, FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
    decodeText,
    LARGEST_FILE_BYTES,
    LIST_FILES_REQUEST,
    READ_FILE_REQUEST,
    type FileText,
    type ListFiles,
    type ReadFile,
} from 'underliner-language/editor';

const EXTENSION = '.cover';

/** The server reads through the editor, which knows every place that a folder can lie. */
export function answerFileRequests(client: BaseLanguageClient): Disposable {
    return Disposable.from(
        client.onRequest(LIST_FILES_REQUEST, ({ folder }: ListFiles) => listPlans(Uri.parse(folder), '')),
        client.onRequest(READ_FILE_REQUEST, ({ folder, path }: ReadFile) => readText(Uri.parse(folder), path)),
    );
}

/** Searching is not to be had for every folder; looking is. Links, hidden folders and packages are left out. */
async function listPlans(folder: Uri, within: string): Promise<string[]> {
    let entries: readonly [string, FileType][];
    try {
        entries = await workspace.fs.readDirectory(folder);
    } catch {
        return [];
    }
    const found: string[] = [];
    for (const [name, type] of entries) {
        if (type === FileType.File && name.endsWith(EXTENSION)) {
            found.push(within + name);
        } else if (type === FileType.Directory && !name.startsWith('.') && name !== 'node_modules') {
            found.push(...(await listPlans(Uri.joinPath(folder, name), `${within}${name}/`)));
        }
    }
    return found;
}

async function readText(folder: Uri, path: string): Promise<FileText> {
    try {
        const parts = path.split('/');
        if (parts.includes('..')) {
            return { state: 'unreadable', why: 'it leads out of the workspace' };
        }
        const file = Uri.joinPath(folder, ...parts);
        for (let depth = 1; depth < parts.length; depth++) {
            const { type } = await workspace.fs.stat(Uri.joinPath(folder, ...parts.slice(0, depth)));
            if (isLink(type)) {
                return LINK;
            }
        }
        const { type, size } = await workspace.fs.stat(file);
        if (isLink(type)) {
            return LINK;
        }
        if (type === FileType.Directory) {
            return { state: 'unreadable', why: 'it is a folder' };
        }
        // Too many bytes to send on are not read: the decoder says what is wrong with their number alone.
        return decodeText(size > LARGEST_FILE_BYTES ? new Uint8Array(size) : await workspace.fs.readFile(file));
    } catch (failure) {
        return failure instanceof FileSystemError && failure.code === 'FileNotFound'
            ? { state: 'missing' }
            : { state: 'unreadable', why: 'the editor can not read it' };
    }
}

const LINK: FileText = { state: 'unreadable', why: 'it is a link, which may lead out of the workspace' };

function isLink(type: FileType): boolean {
    return (type & FileType.SymbolicLink) !== 0;
}
