import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, realpathSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type {
    CompletionList,
    Diagnostic,
    DocumentSymbol,
    FoldingRange,
    Hover,
    InitializeResult,
    Location,
    Range,
    SemanticTokens,
    SymbolInformation,
    TextEdit,
    WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { Talk } from '../support/talk.js';

// The built language server, as any editor speaks to it.

const examples = fileURLToPath(new URL('../../examples/saltmarsh-hall', import.meta.url));
const hall = fileURLToPath(new URL('hall', import.meta.url));
const PLAN = 'supper.cover';

let folder: string;
let talk: Talk;
let result: InitializeResult;
beforeEach(async () => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'underliner-talk-')));
    cpSync(hall, folder, { recursive: true });
    ({ talk, result } = await Talk.start(folder));
});
afterEach(() => {
    talk.kill();
    rmSync(folder, { recursive: true });
});

const says = (code: string) => (all: Diagnostic[]) => all.some((each) => each.code === code);
const isSilentOn = (code: string) => (all: Diagnostic[]) => !says(code)(all);
const write = (path: string, change: (text: string) => string) =>
    writeFileSync(join(folder, path), change(readFileSync(join(folder, path), 'utf8')));
const CREATED = 1;
const CHANGED = 2;
const DELETED = 3;
const watched = (path: string, type: number) =>
    talk.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: talk.uri(path), type }] });

describe('the language server over stdio', () => {
    it('says what it can and leaves with exit code 0, having said nothing aside', async () => {
        expect(result.serverInfo?.name).toBe('underliner');
        expect(Object.keys(result.capabilities).sort().join(' ')).toBe(
            'codeActionProvider codeLensProvider completionProvider definitionProvider documentFormattingProvider ' +
                'documentHighlightProvider documentLinkProvider documentOnTypeFormattingProvider ' +
                'documentRangeFormattingProvider documentSymbolProvider foldingRangeProvider hoverProvider ' +
                'inlayHintProvider referencesProvider renameProvider selectionRangeProvider ' +
                'semanticTokensProvider textDocumentSync workspace workspaceSymbolProvider',
        );
        await talk.open(PLAN);
        await talk.findings(PLAN);
        expect(await talk.end()).toBe(0);
        expect(talk.log).toBe('');
    });

    // LSP 3.17, Lifecycle Messages.
    it('answers nothing before it is greeted, nor once it is told to shut down', async () => {
        const hover = { position: { line: 0, character: 0 } };
        const early = Talk.ungreeted(folder);
        await expect(early.ask('textDocument/hover', PLAN, hover)).rejects.toMatchObject({ code: -32_002 });
        early.kill();
        await talk.request('shutdown', {});
        await expect(talk.ask('textDocument/hover', PLAN, hover)).rejects.toMatchObject({ code: -32_600 });
    });

    it('finds, fixes and forgets', async () => {
        await talk.open(PLAN);
        await talk.type(PLAN, 'soup-spoon warmed', 'soup-spon warmed');
        const found = await talk.findings(PLAN, says('unknown-name'));
        expect(found.filter(({ code }) => code === 'unknown-name')).toHaveLength(1);
        expect(found.find(({ code }) => code === 'unknown-name')).toMatchObject({
            severity: 1,
            range: talk.range(PLAN, 'soup-spon'),
            codeDescription: { href: 'underliner-rule:/unknown-name.md' },
        });
        const [fix] = await talk.fixes(PLAN, 'soup-spon', 'quickfix');
        expect(fix?.title).toBe('Write `soup-spoon`');
        expect(fix?.diagnostics?.[0]?.code).toBe('unknown-name');
        await talk.apply(fix!.edit!);
        await talk.findings(PLAN, isSilentOn('unknown-name'));
        expect(talk.text(PLAN)).toBe(readFileSync(join(folder, PLAN), 'utf8'));
    });

    it('applies all that is surely meant', async () => {
        await talk.open('house.cover');
        await talk.type('house.cover', 'spare 5 %', 'spare 5 percent');
        await talk.findings('house.cover', says('written-otherwise'));
        const [all] = await talk.fixes('house.cover', 'spare', 'source.fixAll');
        await talk.apply(all!.edit!);
        await talk.findings('house.cover', isSilentOn('written-otherwise'));
        expect(talk.text('house.cover')).toContain('spare 5 %');
    });

    it('tells of files that are not open, and of those that use a changed one', async () => {
        await talk.open('house.cover');
        await talk.type('house.cover', 'local code canada', 'local code canda');
        await talk.findings('house.cover', says('unknown-name'));
        await talk.type('house.cover', 'canda', 'canada');
        await talk.findings('house.cover', isSilentOn('unknown-name'));
        // The plan is not open, and says what the house it uses has come to lack.
        await talk.type('house.cover', 'limit: 3 per side', 'limit: 1 per side');
        await talk.findings(PLAN, says('three-per-side'));
    });

    it('goes back to the disk when a document is closed without saving, and forgets deleted files', async () => {
        await talk.open('house.cover');
        await talk.type('house.cover', 'spare 5 %', 'spare 5');
        await talk.findings('house.cover', says('missing-unit'));
        await talk.close('house.cover');
        await talk.findings('house.cover', isSilentOn('missing-unit'));
        writeFileSync(join(folder, 'new.cover'), 'house "New" { spare 5 }\n');
        await watched('new.cover', CREATED);
        await talk.findings('new.cover', says('missing-unit'));
        unlinkSync(join(folder, 'new.cover'));
        await watched('new.cover', DELETED);
        expect(await talk.findings('new.cover', (all) => all.length === 0)).toEqual([]);
    });

    it('sees files and recipes that others change', async () => {
        await talk.open(PLAN);
        await talk.findings(PLAN, isSilentOn('recipe-missing'));
        const recipe = 'recipes/smoked-beet.md';
        unlinkSync(join(folder, recipe));
        await watched(recipe, DELETED);
        await talk.findings(PLAN, says('recipe-missing'));
        cpSync(join(hall, recipe), join(folder, recipe));
        await watched(recipe, CREATED);
        await talk.findings(PLAN, isSilentOn('recipe-missing'));
        write('house.cover', (text) => text.replace('limit: 3 per side', 'limit: 1 per side'));
        await watched('house.cover', CHANGED);
        await talk.findings(PLAN, says('three-per-side'));
    });

    it('finds what the command line finds', async () => {
        const all = join(folder, 'examples');
        cpSync(examples, all, { recursive: true });
        write('examples/lantern-supper.cover', (text) => text.replace(/warmed to 60 °C/, ''));
        write('examples/summer-lunch.cover', (text) => text.replace('date ', 'dat '));
        const program = fileURLToPath(new URL('../../packages/cli/bin/underliner.cjs', import.meta.url));
        const asked = [program, 'check', all, '--root', all, '--format', 'json', '--show', 'hint'];
        const { stdout } = spawnSync(process.execPath, asked, { cwd: all, encoding: 'utf8' });
        interface Reported {
            readonly findings: readonly { file: string; rule: string; start: { line: number } }[];
        }
        const { findings } = JSON.parse(stdout) as Reported;
        expect(findings.length).toBeGreaterThan(1);
        const { talk: other } = await Talk.start(all);
        try {
            await Promise.all(findings.map(({ file }) => other.findings(file)));
            const told = other.everyFinding().map(({ file, code, range }) => `${file}:${range.start.line + 1} ${code}`);
            expect(told.sort()).toEqual(
                findings.map(({ file, rule, start }) => `${file}:${start.line} ${rule}`).sort(),
            );
            expect(await other.end()).toBe(0);
        } finally {
            other.kill();
        }
    });
});

describe('a client', () => {
    beforeEach(() => talk.open(PLAN));

    it('completes', async () => {
        await talk.type(PLAN, 'eaten with soup-spoon', 'eaten with soup-sp');
        const position = talk.position(PLAN, 'soup-sp', 'soup-sp'.length);
        const { items } = await talk.ask<CompletionList>('textDocument/completion', PLAN, { position });
        expect(items[0]).toMatchObject({
            label: 'soup-spoon',
            textEdit: { newText: 'soup-spoon', range: talk.range(PLAN, 'soup-sp') },
        });
    });

    it('hovers', async () => {
        const position = talk.position(PLAN, 'soup-spoon', 3);
        const hover = await talk.ask<Hover>('textDocument/hover', PLAN, { position });
        expect((hover.contents as { value: string }).value).toContain('The house owns 40');
        expect(await talk.ask('textDocument/hover', PLAN, { position: talk.position(PLAN, 'seated', 3) })).toBeNull();
    });

    it('goes to definitions, into the cupboard too, and reads them there', async () => {
        const position = talk.position(PLAN, 'smoked-beet for', 3);
        expect(await talk.ask<Location>('textDocument/definition', PLAN, { position })).toMatchObject({
            uri: talk.uri('cupboard.cover'),
        });
        const standard = await talk.ask<Location>('textDocument/definition', PLAN, {
            position: talk.position(PLAN, 'dinner-plate', 3),
        });
        expect(standard.uri).toBe('underliner-cupboard:/plates.cover');
        const { text } = await talk.request<{ text: string }>('underliner/virtualText', { uri: standard.uri });
        expect(text.split('\n')[standard.range.start.line]).toMatch(/^plate dinner-plate/);
        const page = await talk.request<{ text: string }>('underliner/virtualText', {
            uri: 'underliner-rule:/three-per-side.md',
        });
        expect(page.text).toMatch(/^# three-per-side/);
        expect(await talk.request('underliner/virtualText', { uri: 'underliner-cupboard:/no.cover' })).toBeNull();
    });

    it('lists references and highlights', async () => {
        const position = talk.position(PLAN, 'soup-spoon', 3);
        const found = await talk.ask<Location[]>('textDocument/references', PLAN, {
            position,
            context: { includeDeclaration: false },
        });
        expect([...new Set(found.map(({ uri }) => uri))]).toEqual(
            expect.arrayContaining([talk.uri(PLAN), talk.uri('house.cover')]),
        );
        expect(await talk.ask('textDocument/documentHighlight', PLAN, { position })).toHaveLength(1);
    });

    it('renames over files, and is told why it may not', async () => {
        await talk.open('cupboard.cover');
        const position = talk.position(PLAN, 'smoked-beet for', 3);
        expect(await talk.ask('textDocument/prepareRename', PLAN, { position })).toMatchObject({
            placeholder: 'smoked-beet',
        });
        const edit = await talk.ask<WorkspaceEdit>('textDocument/rename', PLAN, {
            position,
            newName: 'hay-smoked-beet',
        });
        await talk.apply(edit);
        expect(talk.text(PLAN)).toContain('is hay-smoked-beet for');
        expect(talk.text('cupboard.cover')).toContain('kind hay-smoked-beet is');
        await talk.findings(PLAN, isSilentOn('unknown-name'));
        await expect(
            talk.ask('textDocument/rename', PLAN, { position: talk.position(PLAN, 'soup-spoon', 3), newName: 'x' }),
        ).rejects.toThrow('standard cupboard');
        await expect(
            talk.ask('textDocument/rename', PLAN, {
                position: talk.position(PLAN, 'hay-smoked-beet', 3),
                newName: 'course',
            }),
        ).rejects.toThrow('write it in quotes');
    });

    it('lays out a file, or the lines of a range, and leaves one alone that it can not read', async () => {
        const laidOut = talk.text(PLAN);
        const options = { options: { tabSize: 4, insertSpaces: true } };
        const apply = (edits: TextEdit[]) =>
            talk.apply({
                documentChanges: [{ textDocument: { uri: talk.uri(PLAN), version: talk.version(PLAN) }, edits }],
            });
        expect(await talk.ask('textDocument/formatting', PLAN, options)).toEqual([]);
        await talk.type(PLAN, '    date 2026', 'date   2026');
        await talk.type(PLAN, '        lasts 20', '  lasts   20');
        const range = talk.range(PLAN, 'date   2026');
        await apply(await talk.ask<TextEdit[]>('textDocument/rangeFormatting', PLAN, { range, ...options }));
        expect(talk.text(PLAN)).toContain('    date 2026');
        expect(talk.text(PLAN)).toContain('  lasts   20');
        await apply(await talk.ask<TextEdit[]>('textDocument/formatting', PLAN, options));
        expect(talk.text(PLAN)).toBe(laidOut);
        await talk.type(PLAN, 'menu {', 'menu');
        expect(await talk.ask('textDocument/formatting', PLAN, options)).toEqual([]);
    });

    it('is told figures between and above the lines, what a selection grows to, and what a rename of a file changes', async () => {
        const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
        const hints = await talk.ask<{ label: string }[]>('textDocument/inlayHint', PLAN, { range });
        expect(hints.map(({ label }) => label)).toContain('22 guests');
        const lenses = await talk.ask<{ command: { title: string } }[]>('textDocument/codeLens', PLAN);
        expect(lenses[0]?.command.title).toContain('24 guests');
        const positions = [talk.position(PLAN, 'soup-spoon', 3)];
        const [grown] = await talk.ask<{ range: Range }[]>('textDocument/selectionRange', PLAN, { positions });
        expect(grown?.range).toEqual(talk.range(PLAN, 'soup-spoon'));
        const files = [{ oldUri: talk.uri('house.cover'), newUri: talk.uri('our-house.cover') }];
        await talk.apply(await talk.request<WorkspaceEdit>('workspace/willRenameFiles', { files }));
        expect(talk.text(PLAN)).toContain('use "our-house.cover"');
    });

    it('compiles, sums up, begins a new event and lays out by requests of its own', async () => {
        const uri = talk.uri(PLAN);
        const compiled = await talk.request<{ text: string; uri: string }>('underliner/compile', { uri });
        expect(compiled.uri).toBe(talk.uri('supper.plan.json'));
        expect(JSON.parse(compiled.text)).toMatchObject({ event: { title: 'Quiet supper' } });
        expect(await talk.request('underliner/compile', { uri: talk.uri('house.cover') })).toMatchObject({ errors: 0 });
        expect(await talk.request('underliner/summary', { uri })).toMatchObject({ guests: 24, courses: 3 });
        expect(await talk.request('underliner/summary', { uri: talk.uri('nothing.cover') })).toBeNull();
        const asked = { folder: talk.uri('.'), title: 'Noon', date: '2026-06-20', guests: '12' };
        expect(await talk.request('underliner/newEvent', asked)).toMatchObject({ name: 'noon.cover' });
        const folder = talk.uri('').replace(/\/$/, '');
        const laidOut = await talk.request<object>('underliner/layOutFolder', { uri: folder });
        expect(laidOut).toMatchObject({ told: '0 of 3 plans laid out anew.', isWhole: true });
        const questions = await talk.request<{ key: string }[]>('underliner/questions', { about: 'whatIf', uri });
        expect(questions.map(({ key }) => key)).toContain('guests');
        const typed = { about: 'newEvent', key: 'guests', answer: 'many' };
        expect(await talk.request('underliner/checkAnswer', typed)).toMatchObject({
            problem: expect.stringContaining('How many') as string,
        });
    });

    it('shows the outline, finds symbols, folds, colours and links', async () => {
        const outline = await talk.ask<DocumentSymbol[]>('textDocument/documentSymbol', PLAN);
        expect(outline.map(({ name }) => name)).toEqual(['Quiet supper', 'menu']);
        expect(outline[1]!.children).toHaveLength(3);
        const symbols = await talk.request<SymbolInformation[]>('workspace/symbol', { query: 'brais' });
        expect(symbols.map(({ name, location }) => [name, location.uri])).toContainEqual([
            'Braised chicken',
            talk.uri(PLAN),
        ]);
        const folds = await talk.ask<FoldingRange[]>('textDocument/foldingRange', PLAN);
        expect(folds.length).toBeGreaterThan(8);
        const { data } = await talk.ask<SemanticTokens>('textDocument/semanticTokens/full', PLAN);
        expect(data.length / 5).toBe(17);
        const links = await talk.ask<{ target: string }[]>('textDocument/documentLink', PLAN);
        expect(links.map(({ target }) => target)).toEqual(
            expect.arrayContaining([talk.uri('house.cover'), talk.uri('recipes/smoked-beet.md')]),
        );
    });
});
