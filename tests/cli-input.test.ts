import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import {
    chmodSync,
    mkdirSync,
    mkdtempSync,
    readdirSync,
    readFileSync,
    rmSync,
    statSync,
    symlinkSync,
    writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

// What no plan should be made of, and what no program should choke on: one clear line, the right exit code, nothing lost.

const root = join(import.meta.dirname, '..');
const program = join(root, 'packages/cli/bin/underliner.cjs');
const supper = readFileSync(join(root, 'packages/cli/starter/first-dinner.cover'), 'utf8').replace(
    'use "house.cover"',
    '',
);

let folder: string;
beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'underliner-input-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function underliner(args: readonly string[], input: string | Buffer = '') {
    const { stdout, stderr, status } = spawnSync(process.execPath, [program, ...args], {
        cwd: folder,
        input,
        encoding: 'utf8',
        env: {},
        maxBuffer: 64 * 1024 * 1024,
    });
    return { stdout, stderr, status };
}

function put(name: string, content: string | Buffer): void {
    writeFileSync(join(folder, name), content);
}

describe('what can’t be read', () => {
    const cases: [string, Buffer, string][] = [
        ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13]), 'it is not a text file'],
        [
            '50 MB',
            Buffer.alloc(50 * 1024 * 1024, 'menu { }\n'),
            'it is 50.0 MiB; the largest file that is read is 4 MiB',
        ],
        [
            'lone surrogates',
            Buffer.from('menu { } // \xed\xa0\x80', 'latin1'),
            'its text is not UTF-8; save it as UTF-8',
        ],
        ['UTF-16', Buffer.from('\uFEFFmenu { }', 'utf16le'), 'it is UTF-16 text; save it as UTF-8'],
    ];
    test.each(cases)('%s, as a file', (_, content, why) => {
        put('plan.cover', content);
        const expected = { stdout: '', stderr: `underliner: \`plan.cover\` can't be read: ${why}.\n`, status: 2 };
        expect(underliner(['check', 'plan.cover'])).toEqual(expected);
        expect(underliner(['compile', 'plan.cover', '-o', 'plan.json'])).toEqual(expected);
        expect(readdirSync(folder)).toEqual(['plan.cover']);
    });
    test.each(cases.filter(([name]) => name !== '50 MB'))('%s, on standard input', (_, content, why) => {
        const { stderr, status } = underliner(['check', '-'], content);
        expect({ stderr, status }).toEqual({
            stderr: `underliner: Standard input can't be read: ${why}.\n`,
            status: 2,
        });
    });
    test('a folder where one plan is wanted', () => {
        mkdirSync(join(folder, 'plan.cover'));
        const { stderr, status } = underliner(['compile', 'plan.cover']);
        expect({ stderr, status }).toEqual({
            stderr: "underliner: `plan.cover` can't be read: it is a folder.\n",
            status: 2,
        });
    });
    test('a folder without plans', () => {
        mkdirSync(join(folder, 'empty'));
        const { stderr, status } = underliner(['check', 'empty']);
        expect({ stderr, status }).toEqual({ stderr: 'underliner: There is no .cover file in `empty`.\n', status: 2 });
    });
    test.skipIf(process.getuid?.() === 0)('a file without permission', () => {
        put('plan.cover', 'menu { }');
        chmodSync(join(folder, 'plan.cover'), 0);
        const { stderr, status } = underliner(['check', 'plan.cover']);
        const why = "underliner: `plan.cover` can't be read: there is no permission to read it.\n";
        expect({ stderr, status }).toEqual({ stderr: why, status: 2 });
    });
    test('a file used that leads out of the workspace', () => {
        mkdirSync(join(folder, 'hall/.git'), { recursive: true });
        put('outside.cover', 'house "Outside" { }');
        symlinkSync('../outside.cover', join(folder, 'hall/house.cover'));
        put('hall/plan.cover', `use "house.cover"\n${supper}`);
        const { stdout, stderr, status } = underliner(['check', '--format', 'json', 'hall/plan.cover']);
        expect({ stderr, status }).toEqual({ stderr: '', status: 1 });
        expect((JSON.parse(stdout) as { findings: { start: { line: number } }[] }).findings[0]?.start.line).toBe(1);
    });
});

describe('what is read all the same', () => {
    test('an empty file', () => {
        put('plan.cover', '');
        expect(underliner(['check', 'plan.cover'])).toEqual({
            stdout: '1 file checked: nothing found.\n',
            stderr: '',
            status: 0,
        });
    });
    test('blocks in blocks, far too deep', () => {
        put('plan.cover', `menu { course soup "Soup" { pour "A" ${'{ instead "B" '.repeat(20_000)}`);
        const { stdout, stderr, status } = underliner(['check', '--format', 'github', 'plan.cover']);
        expect({ stderr, status }).toEqual({ stderr: '', status: 1 });
        expect(stdout.split('\n').length).toBeLessThan(10);
    });
    test.each([
        ['a byte-order mark', `\uFEFF${supper}`],
        ['CRLF', supper.replaceAll('\n', '\r\n')],
        ['both', `\uFEFF${supper.replaceAll('\n', '\r\n')}`],
    ])('%s', (_, content) => {
        put('plain.cover', supper);
        put('plan.cover', content);
        const findings = (name: string) => underliner(['check', '--format', 'github', '--show', 'hint', name]).stdout;
        expect(findings('plan.cover')).toBe(findings('plain.cover').replaceAll('plain.cover', 'plan.cover'));
    });
    test('columns are counted in characters', () => {
        // One accent in two parts, one emoji in seven UTF-16 units, two wide letters.
        put('plan.cover', 'menu { course soup "Cre\u0300me 👩🏽‍🍳 米飯" { eaten with soup-spoom } }\n');
        const { stdout } = underliner(['check', '--show', 'error', 'plan.cover']);
        const lines = stdout.split('\n');
        const [place, source, marks] = lines.slice(lines.findIndex((line) => line.includes('unknown-name')));
        expect(place).toContain('plan.cover:1:46: error: No piece is called `soup-spoom`.');
        // The emoji and the two letters are two columns wide each.
        expect(source).toMatch(/^ {3}1 \| menu/);
        expect(marks?.indexOf('^')).toBe('   1 | '.length + 45 + 3);
    });
});

describe('what is written', () => {
    test('fixes keep the byte-order mark, the line ends and the mode', () => {
        const house = 'house "Hall" {\n    own 12 dinner-plate // and no underliner\n}\n';
        const soup = `${house}${supper}`;
        put('plan.cover', `\uFEFF${soup.replaceAll('\n', '\r\n')}`);
        chmodSync(join(folder, 'plan.cover'), 0o640);
        underliner(['check', '--fix', 'plan.cover']);
        const fixed = readFileSync(join(folder, 'plan.cover'), 'utf8');
        expect(/.*in soup-bowl.*/.exec(fixed)?.[0]).toContain('underliner');
        expect(fixed.startsWith('\uFEFF')).toBe(true);
        expect(fixed.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        expect(statSync(join(folder, 'plan.cover')).mode & 0o777).toBe(0o640);
        expect(readdirSync(folder)).toEqual(['plan.cover']);
    });
    test('a plan takes the place of the last one, through a link too', () => {
        put('plan.cover', supper);
        put('last.json', 'last');
        symlinkSync('last.json', join(folder, 'link.json'));
        expect(underliner(['compile', 'plan.cover', '-o', 'link.json']).status).toBe(0);
        expect(readFileSync(join(folder, 'last.json'), 'utf8')).toContain('"A first dinner"');
        expect(readdirSync(folder)).toEqual(['last.json', 'link.json', 'plan.cover']);
    });
    test.each([
        ['compile', []],
        ['draw', []],
        ['calendar', []],
        ['list', ['--what', 'pull']],
    ])('`-o -` of %s is stdout, and no file', (verb, options) => {
        put('plan.cover', supper);
        const words = [verb, 'plan.cover', ...options];
        const { stdout, status } = underliner([...words, '-o', '-']);
        expect(stdout).toBe(underliner(words).stdout);
        expect([status, stdout.length > 20]).toEqual([0, true]);
        expect(readdirSync(folder)).toEqual(['plan.cover']);
    });
    test('the same bytes from any folder, in any zone and language', () => {
        put('plan.cover', supper);
        mkdirSync(join(folder, 'elsewhere'));
        put('elsewhere/plan.cover', supper);
        const compile = (cwd: string, env: Record<string, string>) =>
            spawnSync(process.execPath, [program, 'compile', 'plan.cover'], { cwd, env, encoding: 'utf8' }).stdout;
        const here = compile(folder, { TZ: 'UTC', LC_ALL: 'C' });
        expect(here.length).toBeGreaterThan(1000);
        expect(compile(join(folder, 'elsewhere'), { TZ: 'Pacific/Auckland', LC_ALL: 'de_DE.UTF-8' })).toBe(here);
    });
    test('a reader that closes the pipe is no fault', async () => {
        put('plan.cover', supper);
        const child = spawn(process.execPath, [program, 'compile', 'plan.cover'], { cwd: folder, env: {} });
        child.stdout.destroy();
        let stderr = '';
        child.stderr.on('data', (chunk) => (stderr += String(chunk)));
        const [code] = (await once(child, 'close')) as [number];
        expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    });
    test('everything arrives at a slow reader', () => {
        const compile = `"${process.execPath}" "${program}" compile "${root}/examples/saltmarsh-hall/lantern-supper.cover"`;
        const read = (command: string) => spawnSync('sh', ['-c', command], { encoding: 'utf8' }).stdout;
        const whole = read(compile);
        // More than a pipe holds.
        expect(whole.length).toBeGreaterThan(100_000);
        expect(read(`${compile} | (sleep 0.5; cat)`)).toBe(whole);
    });
});
