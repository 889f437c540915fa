import type { FileText } from './files.js';

/** Plans are written by hand: a file beyond this many bytes is something else, and is not read. */
export const LARGEST_FILE_BYTES = 4 * 1024 * 1024;

/** The text of bytes that claim to be a file: UTF-8, with or without a byte-order mark, which is left out. */
export function decodeText(bytes: Uint8Array): FileText {
    if (bytes.length > LARGEST_FILE_BYTES) {
        return tooLarge(bytes.length);
    }
    if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
        return { state: 'unreadable', why: 'it is UTF-16 text; save it as UTF-8' };
    }
    if (bytes.includes(0)) {
        return { state: 'unreadable', why: 'it is not a text file' };
    }
    try {
        return { state: 'read', text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
    } catch {
        return { state: 'unreadable', why: 'its text is not UTF-8; save it as UTF-8' };
    }
}

/** What is said of a file that is not read for its size. */
export function tooLarge(bytes: number): FileText {
    const size = (Math.ceil((bytes / 1024 / 1024) * 10) / 10).toFixed(1);
    const limit = LARGEST_FILE_BYTES / 1024 / 1024;
    return { state: 'unreadable', why: `it is ${size} MiB; the largest file that is read is ${limit} MiB` };
}
