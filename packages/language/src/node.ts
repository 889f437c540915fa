/** The language on a disk: which folder is the workspace, and reading in it and nowhere else. */
import { closeSync, existsSync, fstatSync, openSync, readSync, realpathSync, statSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { decodeText, LARGEST_FILE_BYTES, tooLarge } from './plan/decode-text.js';
import type { Files, FileText } from './plan/files.js';

export { clearEarly } from './node-memory.js';
export { decodeText, LARGEST_FILE_BYTES } from './plan/decode-text.js';

/** What a text file may begin with, and no text here does. */
export const BYTE_ORDER_MARK = '\uFEFF';

/**
 * The workspace that a file belongs to: the nearest folder above it that holds `.git`, else the working folder where
 * the file is inside it, else the file's own folder.
 * @param path of a file or folder, absolute or from `workingFolder`; it need not exist
 * @returns an absolute path
 */
export function workspaceOf(path: string, workingFolder: string): string {
    const absolute = resolve(workingFolder, path);
    const start = isFolder(absolute) ? absolute : dirname(absolute);
    for (let folder = start; ; folder = dirname(folder)) {
        if (existsSync(join(folder, '.git'))) {
            return folder;
        }
        if (folder === dirname(folder)) {
            break;
        }
    }
    return pathInside(workingFolder, absolute) === undefined ? start : resolve(workingFolder);
}

/**
 * The path of `path` from `folder`, with forward slashes, or `undefined` where it is not inside. `''` is the folder.
 */
export function pathInside(folder: string, path: string): string | undefined {
    const inner = relative(folder, path);
    if (inner === '..' || inner.startsWith(`..${sep}`) || isAbsolute(inner)) {
        return undefined;
    }
    return inner.split(sep).join('/');
}

/** The files of one workspace. Each is read once; nothing outside is read, whatever a link points to. */
export class DiskFiles implements Files {
    /** Absolute. */
    readonly root: string;
    readonly #realRoot: string;
    readonly #read = new Map<string, FileText>();

    /** @param root the folder; it must exist */
    constructor(root: string) {
        this.root = resolve(root);
        this.#realRoot = realpathSync.native(this.root);
    }

    read(path: string): FileText {
        const known = this.#read.get(path);
        if (known !== undefined) {
            return known;
        }
        const text = this.#readFromDisk(path);
        this.#read.set(path, text);
        return text;
    }

    /** Lets text that is not on the disk, such as standard input or a change not yet saved, stand for a file. */
    put(path: string, text: string): void {
        this.#read.set(path, { state: 'read', text });
    }

    #readFromDisk(path: string): FileText {
        const absolute = join(this.root, path);
        try {
            if (pathInside(this.#realRoot, realpathSync.native(absolute)) === undefined) {
                return { state: 'unreadable', why: 'it leads out of the workspace' };
            }
            return readText(absolute);
        } catch (failure) {
            return whyNotRead(failure);
        }
    }
}

/** Reads one text file wherever it is. Never throws. The text comes without a byte-order mark. */
export function readTextFile(path: string): FileText {
    try {
        return readText(path);
    } catch (failure) {
        return whyNotRead(failure);
    }
}

function readText(path: string): FileText {
    // Opening a named pipe would wait for a writer for ever.
    const kind = statSync(path);
    if (kind.isDirectory()) {
        return { state: 'unreadable', why: 'it is a folder' };
    }
    if (!kind.isFile()) {
        return { state: 'unreadable', why: 'it is not a file' };
    }
    const file = openSync(path, 'r');
    try {
        const { size } = fstatSync(file);
        if (size > LARGEST_FILE_BYTES) {
            return tooLarge(size);
        }
        const bytes = Buffer.allocUnsafe(size);
        let length = 0;
        for (let read = -1; read !== 0 && length < size; length += read) {
            read = readSync(file, bytes, length, size - length, null);
        }
        return decodeText(bytes.subarray(0, length));
    } finally {
        closeSync(file);
    }
}

function whyNotRead(failure: unknown): FileText {
    const code = failure instanceof Error && 'code' in failure ? failure.code : undefined;
    switch (code) {
        case 'ENOENT':
        case 'ENOTDIR':
            return { state: 'missing' };
        case 'EACCES':
        case 'EPERM':
            return { state: 'unreadable', why: 'there is no permission to read it' };
        case 'ELOOP':
            return { state: 'unreadable', why: 'it is a link that leads back to itself' };
        case 'ENAMETOOLONG':
            return { state: 'unreadable', why: 'its name is too long' };
        default:
            return { state: 'unreadable', why: `the disk says ${String(code ?? failure)}` };
    }
}

function isFolder(path: string): boolean {
    return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
}
