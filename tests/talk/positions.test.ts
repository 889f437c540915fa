import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Diagnostic, DocumentSymbol, Hover, Location, TextEdit } from 'vscode-languageserver-protocol';
import { Talk } from '../support/talk.js';

// Where things are in texts that are not plain letters: the editor counts UTF-16 units, a person counts characters.

const program = fileURLToPath(new URL('../../packages/cli/bin/underliner.cjs', import.meta.url));

/** What stands before the name with the mistake: its length in UTF-16 units, and in characters as they are seen. */
const BEFORE = {
    'an emoji of seven units': { words: '"Soup 👩🏽‍🍳"', units: 14, characters: 8 },
    'an accent in one part': { words: '"Cr\u00E8me"', units: 7, characters: 7 },
    'an accent in two parts': { words: '"Cre\u0300me"', units: 8, characters: 7 },
    'a letter outside the first plane': { words: '"𝔖oup"', units: 7, characters: 6 },
    'a tab': { words: '\t"Soup"\t', units: 8, characters: 8 },
} as const;
const ENDS = { LF: '\n', CRLF: '\r\n', 'CR alone': '\r' } as const;

let folder: string;
let talk: Talk;
/** Another for each test. */
let plan: string;
let plans = 0;
beforeAll(async () => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'underliner-positions-')));
    ({ talk } = await Talk.start(folder));
});
beforeEach(() => {
    plan = `menu-${++plans}.cover`;
});
afterAll(() => {
    talk.kill();
    rmSync(folder, { recursive: true });
});

const isUnknown = (all: readonly Diagnostic[]): boolean => all.some(({ code }) => code === 'unknown-name');
const textWith = (words: string, end: string) =>
    ['menu {', `    course soup ${words} { eaten with soup-spoom`, '    }', '}', ''].join(end);

describe.each(Object.entries(ENDS))('with lines that end in %s', (_, end) => {
    it.each(Object.entries(BEFORE))(
        'after %s the words are where the editor has them',
        async (_name, { words, units }) => {
            const text = textWith(words, end);
            await talk.open(plan, text);
            const finding = (await talk.findings(plan, isUnknown)).find(({ code }) => code === 'unknown-name');
            const start = { line: 1, character: '    course soup '.length + units + ' { eaten with '.length };
            const range = { start, end: { line: 1, character: start.character + 'soup-spoom'.length } };
            expect(finding!.range).toEqual(range);
            expect(talk.range(plan, 'soup-spoom')).toEqual(range);
            // An edit behind it arrives where it was made.
            await talk.type(plan, 'soup-spoom', 'soup-spoon');
            await talk.findings(plan, (all) => all.every(({ code }) => code !== 'unknown-name'));
            const at = { position: talk.position(plan, 'soup-spoon', 3) };
            const hover = await talk.ask<Hover>('textDocument/hover', plan, at);
            expect(hover.range).toEqual(talk.range(plan, 'soup-spoon'));
            const [menu] = await talk.ask<DocumentSymbol[]>('textDocument/documentSymbol', plan);
            expect(menu!.children![0]!.selectionRange.start.line).toBe(1);
            const options = { options: { tabSize: 4, insertSpaces: true } };
            await talk.apply({
                documentChanges: [
                    {
                        textDocument: { uri: talk.uri(plan), version: talk.version(plan) },
                        edits: await talk.ask<TextEdit[]>('textDocument/formatting', plan, options),
                    },
                ],
            });
            // Lines that end in CR alone are no line ends to write: an editor has made them others before.
            const written = end === '\r' ? '\n' : end;
            expect(talk.text(plan)).toContain(`${written}        eaten with soup-spoon${written}`);
            expect(talk.text(plan).replaceAll(written, '')).not.toMatch(/[\r\n]/);
        },
    );
});

it('a name with its accent in two parts is the same name as with one', async () => {
    const text =
        'fork cr\u00E8me-fork { length 150 mm }\nmenu {\n    course soup {\n        eaten with cre\u0300me-fork\n    }\n}\n';
    await talk.open(plan, text);
    const found = await talk.findings(plan);
    expect(found.filter(({ code }) => code === 'unknown-name')).toEqual([]);
    const position = talk.position(plan, 'cre\u0300me-fork', 3);
    const definition = await talk.ask<Location>('textDocument/definition', plan, { position });
    expect(definition.range.start).toEqual({ line: 0, character: 5 });
});

it('a file with a byte-order mark is the same on the disk as in the editor, which takes the mark away', async () => {
    const text = textWith('"Soup"', '\r\n');
    writeFileSync(join(folder, plan), `\uFEFF${text}`);
    await talk.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: talk.uri(plan), type: 1 }] });
    const onDisk = await talk.findings(plan, isUnknown);
    await talk.open(plan, text);
    const inEditor = await talk.findings(plan, isUnknown);
    expect(inEditor).toEqual(onDisk);
});

it.each(Object.entries(BEFORE))('the command line counts characters after %s', (_, { words, characters }) => {
    writeFileSync(join(folder, plan), textWith(words, '\n'));
    const { stdout } = spawnSync(process.execPath, [program, 'check', plan], { cwd: folder, encoding: 'utf8' });
    const column = '    course soup '.length + characters + ' { eaten with '.length + 1;
    expect(stdout).toContain(`${plan}:2:${column}: error: No piece is called \`soup-spoom\`.`);
});
