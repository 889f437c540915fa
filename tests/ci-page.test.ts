import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import type { Log } from 'sarif';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse as readYaml } from 'yaml';

// What docs/ci.md tells to write, written into a real repository and run there.

const root = join(import.meta.dirname, '..');
const page = readFileSync(join(root, 'docs/ci.md'), 'utf8');
const blocks = [...page.matchAll(/^```(\w+)\n([^]*?)^```$/gm)].map(([, language, text]) => ({ language, text: text! }));
const block = (start: string): string => blocks.find(({ text }) => text.startsWith(start))!.text;

const folder = mkdtempSync(join(tmpdir(), 'underliner-ci-'));
const repository = join(folder, 'plans');

/** As a shell runs it, with `underliner` on the path and no settings of this machine. */
function shell(line: string) {
    const env = {
        PATH: [join(folder, 'bin'), process.env.PATH ?? ''].join(delimiter),
        HOME: folder,
        GIT_CONFIG_NOSYSTEM: '1',
    };
    const { status, stdout, stderr } = spawnSync('sh', ['-c', line], { cwd: repository, encoding: 'utf8', env });
    return { status, stdout, stderr };
}
const commit = (message: string) => shell(`git add . && git commit --quiet -m '${message}'`);

function rewrite(name: string, from: string, to: string): void {
    const text = readFileSync(join(repository, name), 'utf8');
    expect(text).toContain(from);
    writeFileSync(join(repository, name), text.replace(from, to));
}

beforeAll(() => {
    mkdirSync(join(folder, 'bin'));
    cpSync(join(root, 'examples/saltmarsh-hall'), repository, { recursive: true });
    const command = join(folder, 'bin', 'underliner');
    writeFileSync(
        command,
        `#!/bin/sh\nexec "${process.execPath}" "${join(root, 'packages/cli/bin/underliner.cjs')}" "$@"\n`,
    );
    chmodSync(command, 0o755);
    shell('git init --quiet && git config user.name Chef && git config user.email chef@example.org');
    expect(commit('Plan the evenings').status).toBe(0);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the hook of git', () => {
    const hook = join(repository, '.git/hooks/pre-commit');
    beforeAll(() => {
        writeFileSync(hook, block('#!/bin/sh'));
        chmodSync(hook, 0o755);
    });
    afterAll(() => rmSync(hook));

    it('lets a clean plan through', () => {
        rewrite('lantern-supper.cover', 'revision 4', 'revision 5');
        expect(commit('Count the revision')).toMatchObject({ status: 0 });
    });

    it('refuses one with an error, and one laid out badly', () => {
        rewrite('lantern-supper.cover', 'served in soup-bowl', 'served in soup-bowll');
        const refused = commit('Slip');
        expect(refused.status).toBe(1);
        expect(refused.stdout + refused.stderr).toContain('No piece is called `soup-bowll`.');
        rewrite('lantern-supper.cover', 'served in soup-bowll', 'served   in soup-bowl');
        expect(commit('Blanks')).toMatchObject({ status: 1 });
        expect(shell('git log --oneline').stdout.trim().split('\n')).toHaveLength(2);
        shell('git reset --quiet --hard');
    });
});

describe('the hooks of the pre-commit framework', () => {
    const hooks = readYaml(readFileSync(join(root, '.pre-commit-hooks.yaml'), 'utf8')) as {
        id: string;
        name: string;
        entry: string;
        language: string;
        files: string;
        pass_filenames?: boolean;
    }[];

    it('are those that the page names', () => {
        const { repos } = readYaml(block('repos:')) as { repos: { hooks: { id: string }[] }[] };
        expect(repos[0]!.hooks.map(({ id }) => id)).toEqual(hooks.map(({ id }) => id));
        expect(hooks.filter(({ name, language }) => !name || language !== 'system')).toEqual([]);
    });

    it('run as the framework calls them: with the files that match, or with none', () => {
        const committed = shell('git ls-files').stdout.trim().split('\n');
        for (const { entry, files, pass_filenames: passes = true } of hooks) {
            const matching = committed.filter((file) => new RegExp(files).test(file));
            expect(matching).toContain('lantern-supper.cover');
            expect(shell(`${entry} ${passes ? matching.join(' ') : ''}`), entry).toMatchObject({ status: 0 });
        }
        expect(shell('git status --porcelain').stdout).toBe('');
    });
});

describe('the workflow', () => {
    const { jobs } = readYaml(block('name: Plans')) as {
        jobs: Record<string, { steps: { name?: string; run?: string; uses?: string }[] }>;
    };
    const steps = Object.values(jobs).flatMap((job) => job.steps);
    const commands = steps.flatMap(({ run = '' }) => (run.startsWith('npx ') ? [run.slice('npx '.length)] : []));

    it('runs its commands, each with exit code 0 on plans that are in order', () => {
        expect(commands).toHaveLength(4);
        for (const command of commands) {
            expect(shell(command), command).toMatchObject({ status: 0 });
        }
        expect((JSON.parse(readFileSync(join(repository, 'plans.sarif'), 'utf8')) as Log).version).toBe('2.1.0');
        expect(existsSync(join(repository, 'carried/captain.html'))).toBe(true);
    });

    it('fails on a plan with an error, which code scanning is told all the same', () => {
        rewrite('lantern-supper.cover', 'served in soup-bowl', 'served in soup-bowll');
        const [layout, annotate, scan, sheets] = commands.map((command) => shell(command));
        expect([layout, annotate, scan, sheets].map((ran) => ran!.status)).toEqual([0, 1, 0, 1]);
        expect(annotate!.stdout).toMatch(/^::error file=lantern-supper\.cover,line=\d+,.*title=unknown-name::/m);
        const { runs } = JSON.parse(readFileSync(join(repository, 'plans.sarif'), 'utf8')) as Log;
        expect(runs[0]!.results!.map(({ ruleId }) => ruleId)).toContain('unknown-name');
        shell('git checkout --quiet .');
    });
});

it('the last command of the page lets git tell what changes for people', () => {
    expect(shell(block('underliner compare --set-up-git'))).toMatchObject({ status: 0 });
    rewrite('lantern-supper.cover', 'guests 84', 'guests 85');
    expect(shell('git diff lantern-supper.cover').stdout).toContain('1 more cover, 85 in all.');
});
