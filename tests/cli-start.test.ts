import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

// How the program starts: from the code that was compiled when it was built, where that fits, and else without it.

const built = join(import.meta.dirname, '../packages/cli');
let copy: string;
beforeEach(() => {
    copy = mkdtempSync(join(tmpdir(), 'underliner-start-'));
    for (const part of ['bin', 'dist', 'starter', 'package.json']) {
        cpSync(join(built, part), join(copy, part), { recursive: true });
    }
});
afterEach(() => rmSync(copy, { recursive: true }));

function start(...args: string[]) {
    const { stdout, stderr, status } = spawnSync(process.execPath, [join(copy, 'bin/underliner.cjs'), ...args], {
        cwd: copy,
        encoding: 'utf8',
        env: {},
    });
    return { stdout, stderr, status };
}

const checked = { stdout: '2 files checked: nothing found.\n', stderr: '', status: 0 };

function codeFiles(): string[] {
    return readdirSync(join(copy, 'dist'))
        .filter((name) => name.endsWith('.code'))
        .map((name) => join(copy, 'dist', name));
}

test('V8 takes the compiled code of every bundle', () => {
    const bundles = ['main', 'check', 'compile', 'folders', 'rest', 'framework', 'clocks'].map((name) => `${name}.cjs`);
    const taken = `
        const vm = require('node:vm');
        const { Script } = vm;
        const taken = [];
        vm.Script = class extends Script {
            constructor(source, options) {
                super(source, options);
                taken.push(options.cachedData !== undefined && this.cachedDataRejected === false);
            }
        };
        const { loadBundle } = require('./bin/bundle.cjs');
        ${JSON.stringify(bundles)}.forEach((name) => loadBundle(name));
        console.log(taken.join());`;
    expect(codeFiles()).toHaveLength(bundles.length);
    expect(spawnSync(process.execPath, ['-e', taken], { cwd: copy, encoding: 'utf8' }).stdout).toBe(
        `${bundles.map(() => true).join()}\n`,
    );
});

test.each([
    ['check', ['main', 'check', 'cupboard']],
    ['compile', ['main', 'compile', 'cupboard', 'clocks']],
])('`%s` reads none of the other bundles', (verb, needed) => {
    for (const name of readdirSync(join(copy, 'dist'))) {
        if (!needed.includes(name.split('.')[0]!)) {
            rmSync(join(copy, 'dist', name), { recursive: true });
        }
    }
    expect(start(verb, 'starter/first-dinner.cover')).toMatchObject({ stderr: '', status: 0 });
});

test.each([
    ['not there', (path: string) => rmSync(path)],
    ['empty', (path: string) => writeFileSync(path, '')],
    ['cut off', (path: string) => writeFileSync(path, readFileSync(path).subarray(0, 1000))],
    ['of another version', (path: string) => writeFileSync(path, readFileSync(path).fill(1, 4, 8))],
])('compiled code that is %s is done without', (_, spoil) => {
    codeFiles().forEach(spoil);
    expect(start('check', 'starter')).toEqual(checked);
});

test('nothing is written where the program is', () => {
    const state = () =>
        readdirSync(copy, { recursive: true, encoding: 'utf8' })
            .sort()
            .map((name) => [name, statSync(join(copy, name)).mtimeMs]);
    const before = state();
    start('check', 'starter');
    start('explain', 'three-per-side');
    expect(state()).toEqual(before);
});

test('the version is told without the bundles', () => {
    rmSync(join(copy, 'dist'), { recursive: true });
    const { version } = JSON.parse(readFileSync(join(copy, 'package.json'), 'utf8')) as { version: string };
    expect(start('--version')).toEqual({ stdout: `${version}\n`, stderr: '', status: 0 });
    expect(start('-V')).toEqual({ stdout: `${version}\n`, stderr: '', status: 0 });
});
