// docs/tutorial.md and docs/teaching.md, done as they say: the edits are made, the commands run, and they answer as shown.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const read = (page: string): string => readFileSync(join(root, 'docs', page), 'utf8');
const work = mkdtempSync(join(tmpdir(), 'underliner-tutorial-'));
const folder = join(work, 'dinner');
const clone = join(work, 'clone');
mkdirSync(folder);
cpSync(join(root, 'examples'), join(clone, 'examples'), { recursive: true });
afterAll(() => rmSync(work, { recursive: true }));

/** `<!-- in FILE, in place of: TEXT -->` and a fence with what to write; or a fence of commands with their answers. */
const STEP = /<!-- in (\S+), in place of: ([^]*?) -->\s+```\n([^]*?)\n```|```console\n([^]*?)```/g;

const author = { GIT_AUTHOR_NAME: 'Chef', GIT_AUTHOR_EMAIL: 'chef@saltmarsh.example' };
const env = {
    ...process.env,
    ...author,
    GIT_COMMITTER_NAME: author.GIT_AUTHOR_NAME,
    GIT_COMMITTER_EMAIL: author.GIT_AUTHOR_EMAIL,
    NO_COLOR: '1',
};

function run(command: string, cwd: string): { readonly status: number | null; readonly said: string } {
    const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
    const [program, ...rest] =
        words[0] === 'underliner'
            ? [process.execPath, join(root, 'packages/cli/bin/underliner.cjs'), ...words.slice(1)]
            : words;
    const { status, stdout, stderr } = spawnSync(program!, rest, { cwd, encoding: 'utf8', env });
    return { status, said: `${stdout}${stderr}` };
}

function edit(file: string, old: string, text: string): void {
    const path = join(folder, file);
    const before = readFileSync(path, 'utf8');
    expect(before.split(old), `${file} has this once: ${old}`).toHaveLength(2);
    writeFileSync(
        path,
        before.replace(old, () => text),
    );
}

/** A line `…` stands for whatever is said there. */
function expectAnswer(command: string, said: string, shown: string): void {
    const [head = '', tail] = shown.split('…\n');
    if (tail === undefined) {
        expect(said.trim(), command).toBe(shown.trim());
    } else {
        expect(said.startsWith(head), command).toBe(true);
        expect(said.trim().endsWith(tail.trim()), `${command}\n${said}`).toBe(true);
    }
}

/** Runs the commands of one fence and compares each answer with what is shown. */
function follow(fence: string, cwd: string): void {
    for (const part of fence.split(/^\$ /m).filter((each) => each !== '')) {
        const [command = '', ...shown] = part.split('\n');
        const { status, said } = run(command, cwd);
        expect(status, `${command}\n${said}`).toBeLessThan(2);
        expectAnswer(command, said, shown.join('\n'));
    }
}

describe('the page for teachers', () => {
    it('has commands that answer as it shows', { timeout: 120_000 }, () => {
        const fences = [...read('teaching.md').matchAll(/```console\n([^]*?)```/g)];
        expect(fences.length).toBeGreaterThan(4);
        fences.forEach(([, fence]) => follow(fence!, clone));
    });
});

describe('the tutorial', () => {
    it('is done as it says, and answers as it shows', { timeout: 120_000 }, () => {
        const steps = [...read('tutorial.md').matchAll(STEP)];
        expect(steps.length).toBeGreaterThan(12);
        for (const [, file, old, text, fence] of steps) {
            if (file === undefined) {
                follow(fence!, folder);
            } else {
                edit(file, old!, text!);
            }
        }
    });

    it('draws the cover that it shows, and makes what it promises', () => {
        const shown = readFileSync(join(root, 'docs/pictures/first-dinner-cover.svg'), 'utf8');
        expect(readFileSync(join(folder, 'cover.svg'), 'utf8').trim()).toBe(shown.trim());
        expect(readFileSync(join(folder, 'sheets/captain.pdf'), 'latin1')).toMatch(/^%PDF-/);
        expect(readFileSync(join(folder, 'first-dinner.ics'), 'utf8')).toContain('BEGIN:VEVENT');
        expect(readFileSync(join(folder, 'pull.csv'), 'utf8')).toContain('dinner-fork');
        expect(JSON.parse(readFileSync(join(folder, 'first-dinner.plan.json'), 'utf8'))).toBeTypeOf('object');
    });
});
