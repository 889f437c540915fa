import {
    chmodSync,
    closeSync,
    fsyncSync,
    openSync,
    readSync,
    realpathSync,
    renameSync,
    rmSync,
    statSync,
    writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { BYTE_ORDER_MARK } from 'underliner-language/node';
import { CannotRun } from './cannot-run.js';

const READABLE_BY_ALL = 0o666;

/** Writes a changed text over a file that was read, with the byte-order mark it had. */
export function rewriteText(path: string, text: string, shown: string): void {
    writeWhole(path, startsWithByteOrderMark(path) ? BYTE_ORDER_MARK + text : text, shown);
}

function startsWithByteOrderMark(path: string): boolean {
    const mark = Buffer.from(BYTE_ORDER_MARK);
    const start = Buffer.alloc(mark.length);
    const file = openSync(path, 'r');
    try {
        return readSync(file, start) === mark.length && start.equals(mark);
    } finally {
        closeSync(file);
    }
}

/**
 * Writes a whole file or nothing: to a temporary name in the same folder, which then takes the file's place.
 * Keeps the mode of a file that is there, and writes through a link to what it points to.
 * @param shown the path as the user knows it, for the message
 * @throws CannotRun where the file can't be written
 */
export function writeWhole(path: string, content: string | Uint8Array, shown: string): void {
    let target = path;
    let temporary: string | undefined;
    try {
        const there = statSync(path, { throwIfNoEntry: false });
        if (there !== undefined) {
            if (there.isDirectory()) {
                throw new CannotRun(`\`${shown}\` can't be written: it is a folder.`);
            }
            target = realpathSync(path);
            if (!there.isFile()) {
                // A device or a pipe, such as /dev/stdout, has nothing to lose and no place to take.
                writeTo(target, content, 'w');
                return;
            }
        }
        const name = join(dirname(target), `.${basename(target)}.${process.pid}.tmp`);
        const mode = there ? there.mode & 0o7777 : READABLE_BY_ALL;
        temporary = name;
        writeTo(name, content, 'wx', mode);
        if (there) {
            chmodSync(name, mode);
        }
        renameSync(name, target);
    } catch (failure) {
        if (temporary !== undefined) {
            rmSync(temporary, { force: true });
        }
        throw failure instanceof CannotRun ? failure : new CannotRun(`\`${shown}\` can't be written: ${why(failure)}.`);
    }
}

function writeTo(path: string, content: string | Uint8Array, flags: string, mode?: number): void {
    const file = openSync(path, flags, mode);
    try {
        const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
        for (let done = 0; done < bytes.length;) {
            done += writeSync(file, bytes, done);
        }
        if (flags === 'wx') {
            fsyncSync(file);
        }
    } finally {
        closeSync(file);
    }
}

function why(failure: unknown): string {
    const code = failure instanceof Error && 'code' in failure ? failure.code : undefined;
    switch (code) {
        case 'ENOENT':
        case 'ENOTDIR':
            return 'its folder is not there';
        case 'EACCES':
        case 'EPERM':
            return 'there is no permission';
        case 'EROFS':
            return 'the disk is read-only';
        case 'ENOSPC':
            return 'the disk is full';
        default:
            return `the disk says ${String(code ?? failure)}`;
    }
}
