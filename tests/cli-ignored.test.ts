import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

// Which files of a folder are looked at: those that git would not ignore, as git itself says.

const program = join(import.meta.dirname, '../packages/cli/bin/underliner.cjs');
let folder: string;

beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'underliner-ignored-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function put(files: Readonly<Record<string, string>>): void {
    for (const [path, text] of Object.entries(files)) {
        mkdirSync(dirname(join(folder, path)), { recursive: true });
        writeFileSync(join(folder, path), text);
    }
}
/** No list of the user's own, and no other setting of this machine. */
const git = (input: string, ...words: string[]): string =>
    spawnSync('git', ['-c', 'core.excludesFile=', ...words], {
        cwd: folder,
        input,
        encoding: 'utf8',
        env: { PATH: process.env.PATH ?? '', GIT_CONFIG_NOSYSTEM: '1', HOME: folder },
    }).stdout;
const underliner = (args: readonly string[], cwd = folder) =>
    spawnSync(process.execPath, [program, ...args], { cwd, encoding: 'utf8', env: {} });
/** The files that `format --check` lists: each of them is badly laid out. */
const looked = (...args: string[]): string[] =>
    underliner(['format', '--check', ...args])
        .stdout.split('\n')
        .filter(Boolean)
        .toSorted();

const BADLY_LAID_OUT = 'menu {course soup "Leek" {lasts 15 min}}\n';
const plans = [
    ...['supper', 'draft-a', 'Draft-b', 'old draft', 'café', 'keep'].map((name) => `${name}.cover`),
    ...['out/a', 'out/deep/b', 'events/out/c', 'events/2025/d', 'events/2025/keep', 'events/2026/d', 'events/draft-x'],
    ...['house/private/e', 'house/private/open/f', 'house/g', 'tmp/x/y/z', 'a b/c d'],
].map((path) => (path.endsWith('.cover') ? path : `${path}.cover`));

describe('a folder', () => {
    it('is looked through without the files that git ignores, lists of inner folders and takings back included', () => {
        git('', 'init', '--quiet');
        put(Object.fromEntries(plans.map((path) => [path, BADLY_LAID_OUT])));
        put({
            '.gitignore':
                '# drafts\ndraft-*.cover\n/out/\nevents/2025/*\n!events/2025/keep.cover\nold\\ draft.cover\ntmp/**/z.cover\n',
            'events/.gitignore': '!draft-x.cover\nout\n',
            'house/.gitignore': 'private/*\n!private/open/\n',
            'a b/.gitignore': 'c d.cover\n',
            '.git/info/exclude': 'café.cover\n',
        });
        const ignored = git(plans.map((path) => `${path}\0`).join(''), 'check-ignore', '-z', '--stdin')
            .split('\0')
            .filter(Boolean);
        expect(ignored).toContain('old draft.cover');
        expect(ignored).not.toContain('events/draft-x.cover');
        expect(ignored.length).toBeGreaterThan(6);
        expect(looked()).toEqual(plans.filter((path) => !ignored.includes(path)).toSorted());
        // From an inner folder the lists of the outer ones hold as well.
        expect(
            underliner(['format', '--check', '.'], join(folder, 'events')).stdout.split('\n').filter(Boolean),
        ).toEqual(['2025/keep.cover', '2026/d.cover', 'draft-x.cover']);
    });

    it('is looked at where it, or a file in it, is named', () => {
        git('', 'init', '--quiet');
        put({ '.gitignore': 'out/\n', 'out/a.cover': BADLY_LAID_OUT, 'b.cover': BADLY_LAID_OUT });
        expect(looked('out')).toEqual(['out/a.cover']);
        expect(looked('out/a.cover')).toEqual(['out/a.cover']);
        expect(looked('**/*.cover')).toEqual(['b.cover']);
    });

    it('is looked through whole where there is no repository', () => {
        put({ '.gitignore': 'out/\n', 'out/a.cover': BADLY_LAID_OUT, 'b.cover': BADLY_LAID_OUT });
        expect(looked()).toEqual(['b.cover', 'out/a.cover']);
    });
});

describe('one file that can’t be read', () => {
    it.each(['check', 'format'])('does not keep %s from the others, and is told with exit code 2', (verb) => {
        put({ 'a.cover': BADLY_LAID_OUT, 'c.cover': BADLY_LAID_OUT });
        writeFileSync(join(folder, 'b.cover'), Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0]));
        for (const paths of [['.'], ['a.cover', 'b.cover', 'c.cover']]) {
            const { stdout, stderr, status } = underliner([verb, ...paths, ...(verb === 'format' ? ['--check'] : [])]);
            expect(stderr).toBe("underliner: `b.cover` can't be read: it is not a text file.\n");
            expect(status).toBe(2);
            expect(stdout).toMatch(/a\.cover[^]*c\.cover/);
        }
        const { stdout, stderr, status } = underliner(['check', 'gone.cover', 'a.cover']);
        expect([stderr, status]).toEqual(['underliner: There is no file `gone.cover`.\n', 2]);
        expect(stdout).toContain('1 file checked');
    });

    it('is all that is said where there is no other', () => {
        expect(underliner(['check', 'x.cover', 'y.cover'])).toMatchObject({
            stdout: '',
            stderr: 'underliner: There is no file `x.cover`.\nunderliner: There is no file `y.cover`.\n',
            status: 2,
        });
    });
});
