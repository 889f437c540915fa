import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { decodeText, DiskFiles, LARGEST_FILE_BYTES, pathInside, workspaceOf } from './node.js';

let folder: string;
beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'underliner-node-'));
    mkdirSync(join(folder, 'hall/.git'), { recursive: true });
    mkdirSync(join(folder, 'hall/events'));
    mkdirSync(join(folder, 'loose/deep'), { recursive: true });
    writeFileSync(join(folder, 'outside.cover'), 'house "Outside" { }');
    writeFileSync(join(folder, 'hall/house.cover'), 'house "Hall" { }');
    writeFileSync(join(folder, 'hall/marked.cover'), '\uFEFFhouse "Hall" { }\r\n');
    symlinkSync('../outside.cover', join(folder, 'hall/away.cover'));
    symlinkSync('house.cover', join(folder, 'hall/home.cover'));
    symlinkSync('round.cover', join(folder, 'hall/round.cover'));
    symlinkSync('../..', join(folder, 'hall/events/up'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('the workspace', () => {
    test('is the nearest folder above that holds .git', () => {
        expect(workspaceOf('hall/events/supper.cover', folder)).toBe(join(folder, 'hall'));
        expect(workspaceOf('hall', folder)).toBe(join(folder, 'hall'));
    });
    test('is else the working folder, where the file is inside it', () => {
        expect(workspaceOf('deep/supper.cover', join(folder, 'loose'))).toBe(join(folder, 'loose'));
    });
    test('is else the file’s own folder', () => {
        expect(workspaceOf('../loose/deep/supper.cover', join(folder, 'hall'))).toBe(join(folder, 'loose/deep'));
    });
});

describe('reading on a disk', () => {
    const read = (path: string) => new DiskFiles(join(folder, 'hall')).read(path);
    test('gives the text without its byte-order mark and with its own line ends', () => {
        expect(read('marked.cover')).toEqual({ state: 'read', text: 'house "Hall" { }\r\n' });
    });
    test('follows links inside the workspace and none that leave it', () => {
        expect(read('home.cover')).toEqual({ state: 'read', text: 'house "Hall" { }' });
        const leaves = { state: 'unreadable', why: 'it leads out of the workspace' };
        expect(read('away.cover')).toEqual(leaves);
        expect(read('events/up/outside.cover')).toEqual(leaves);
        expect(read('../outside.cover')).toEqual(leaves);
    });
    test('says why a file is not read', () => {
        expect(read('nowhere.cover')).toEqual({ state: 'missing' });
        expect(read('house.cover/inside.cover')).toEqual({ state: 'missing' });
        expect(read('events')).toEqual({ state: 'unreadable', why: 'it is a folder' });
        expect(read('round.cover')).toEqual({ state: 'unreadable', why: 'it is a link that leads back to itself' });
    });
    test('lets other text stand for a file', () => {
        const files = new DiskFiles(join(folder, 'hall'));
        files.put('house.cover', 'house "Other" { }');
        expect(files.read('house.cover')).toEqual({ state: 'read', text: 'house "Other" { }' });
    });
});

describe('bytes that are no text', () => {
    test.each([
        ['zero bytes', Buffer.from([0x50, 0x4b, 3, 4, 0, 0]), 'it is not a text file'],
        ['UTF-16', Buffer.from('\uFEFFmenu', 'utf16le'), 'it is UTF-16 text; save it as UTF-8'],
        ['Latin-1', Buffer.from('Crème', 'latin1'), 'its text is not UTF-8; save it as UTF-8'],
        ['a lone surrogate', Buffer.from([0xed, 0xa0, 0x80]), 'its text is not UTF-8; save it as UTF-8'],
        [
            'too many',
            Buffer.alloc(LARGEST_FILE_BYTES + 1, 'x'),
            'it is 4.1 MiB; the largest file that is read is 4 MiB',
        ],
    ])('%s', (_, bytes, why) => {
        expect(decodeText(bytes)).toEqual({ state: 'unreadable', why });
    });
});

test('a path inside is written with forward slashes', () => {
    expect(pathInside('/hall', '/hall/events/supper.cover')).toBe('events/supper.cover');
    expect(pathInside('/hall', '/hall')).toBe('');
    expect(pathInside('/hall', '/hallway/supper.cover')).toBeUndefined();
    expect(pathInside('/hall', '/hall/..events/supper.cover')).toBe('..events/supper.cover');
});
