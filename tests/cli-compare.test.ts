import { chmodSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { execaSync } from 'execa';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// `underliner compare` in a real repository, and as the diff that git itself calls.

const command = join(import.meta.dirname, '../packages/cli/bin/underliner.cjs');
const folder = mkdtempSync(join(tmpdir(), 'underliner-compare-'));
const env = {
    PATH: `${join(folder, 'bin')}${delimiter}${process.env.PATH}`,
    GIT_CONFIG_GLOBAL: join(folder, 'no-config'),
    GIT_CONFIG_NOSYSTEM: '1',
    GIT_PAGER: 'cat',
};
const repository = join(folder, 'events');

function run(program: string, ...words: string[]) {
    const { exitCode, stdout, stderr } = execaSync(program, words, { cwd: repository, env, reject: false });
    return { exitCode, stdout, stderr };
}
const underliner = (...words: string[]) => run('underliner', ...words);

/** Changes the supper as a host on the telephone would. */
function rewrite(from: string, to: string): void {
    const path = join(repository, 'lantern-supper.cover');
    const text = readFileSync(path, 'utf8');
    expect(text).toContain(from);
    writeFileSync(path, text.replace(from, to));
}

beforeAll(() => {
    mkdirSync(join(folder, 'bin'));
    cpSync(join(import.meta.dirname, '../examples/saltmarsh-hall'), repository, { recursive: true });
    const program = join(folder, 'bin', 'underliner');
    writeFileSync(program, `#!/bin/sh\nexec "${process.execPath}" "${command}" "$@"\n`);
    chmodSync(program, 0o755);
    run('git', 'init', '--quiet');
    run('git', 'add', '.');
    run(
        'git',
        '-c',
        'user.name=Chef',
        '-c',
        'user.email=chef@example.org',
        'commit',
        '--quiet',
        '-m',
        'Plan the supper',
    );
    rewrite('guests 84 guaranteed 80 set for 88', 'guests 91 guaranteed 80 set for 95');
});

afterAll(() => rmSync(folder, { recursive: true }));

describe('underliner compare', () => {
    it('tells what changed since a commit, and returns 1', () => {
        const { exitCode, stdout } = underliner('compare', '--git', 'HEAD', 'lantern-supper.cover');
        expect(exitCode).toBe(1);
        expect(stdout).toContain('Guests\n    7 more covers, 91 in all.\n');
        expect(stdout).toContain('7 more soup spoons to pull, 96 in all, none left over.');
    });

    it('returns 0 where nobody is concerned', () => {
        expect(underliner('compare', '--git', 'HEAD', 'mess-night.cover')).toMatchObject({
            exitCode: 0,
            stdout: 'Nothing changes for anybody.',
        });
        expect(underliner('compare', 'summer-lunch.cover', 'summer-lunch.cover').exitCode).toBe(0);
    });

    it('tells two files apart, in Markdown and JSON', () => {
        const { stdout } = underliner('compare', 'summer-lunch.cover', 'mess-night.cover', '--format', 'markdown');
        expect(stdout).toMatch(/^### Allergens and diets\n\n- [^]*\n### Guests\n\n- /);
        const { stdout: json } = underliner('compare', '--git', 'HEAD', 'lantern-supper.cover', '--format', 'json');
        expect((JSON.parse(json) as { changes: object[] }).changes[0]).toEqual({
            subject: 'guests',
            key: 'expected',
            before: 84,
            after: 91,
            unit: 'guests',
            text: '7 more covers, 91 in all',
        });
    });

    it.each([
        [['compare', 'mess-night.cover'], 'Say which two plans'],
        [['compare', '--git', 'nowhere', 'mess-night.cover'], 'The repository has no commit `nowhere`.'],
        [['compare', '--git', '--output=x', 'mess-night.cover'], 'The repository has no commit `--output=x`.'],
        [['compare', 'house.cover', 'mess-night.cover'], '`house.cover` holds no event.'],
    ])('%j says what is missing, and returns 2', (words, message) => {
        const { exitCode, stderr } = underliner(...words);
        expect(stderr).toContain(message);
        expect(exitCode).toBe(2);
    });

    it('is what `git diff` shows once git is set up, also of new files; setting up twice changes nothing', () => {
        expect(underliner('compare', '--set-up-git').exitCode).toBe(0);
        const attributes = readFileSync(join(repository, '.gitattributes'), 'utf8');
        expect(underliner('compare', '--set-up-git').exitCode).toBe(0);
        expect(readFileSync(join(repository, '.gitattributes'), 'utf8')).toBe(attributes);

        const { exitCode, stdout, stderr } = run('git', 'diff');
        expect(stderr).toBe('');
        expect(exitCode).toBe(0);
        expect(stdout).toContain('lantern-supper.cover\n\nGuests\n    7 more covers, 91 in all.\n');
        expect(run('git', 'diff', '--no-ext-diff').stdout).toContain('+    guests 91');

        cpSync(join(repository, 'mess-night.cover'), join(repository, 'second-mess-night.cover'));
        run('git', 'add', 'second-mess-night.cover');
        expect(run('git', 'diff', '--cached').stdout).toMatch(
            /second-mess-night.cover\n\nAllergens and diets\n[^]*\nGuests\n/,
        );
    });
});
