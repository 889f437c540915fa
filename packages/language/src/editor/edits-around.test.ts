import { describe, expect, it } from 'vitest';
import type { SelectionRange, WorkspaceEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { CLIENT, FOLDER, openPlan } from '../../../../tests/support/open-plan.js';
import { filesInMemory } from '../plan/files.js';
import { editsForRenames } from './file-renames.js';
import { formatBlock } from './formatting.js';
import { selectionRanges } from './selection-ranges.js';
import { Workspace } from './workspace.js';

describe('a growing selection', () => {
    it('goes from the word by its quotes, phrase, clause and block to the file', () => {
        const plan = openPlan('menu { course soup "Roast sq<|>uash" { lasts 15 min } }');
        const [first] = selectionRanges(plan, [plan.folder.documentOf(plan.path)!.positionAt(plan.offset)]);
        const grown: string[] = [];
        for (let range: SelectionRange | undefined = first; range; range = range.parent) {
            grown.push(plan.words(range.range));
        }
        expect(grown).toEqual([
            'Roast squash',
            '"Roast squash"',
            'course soup "Roast squash" { lasts 15 min }',
            ' course soup "Roast squash" { lasts 15 min } ',
            '{ course soup "Roast squash" { lasts 15 min } }',
            'menu { course soup "Roast squash" { lasts 15 min } }',
        ]);
    });

    it('takes any text', () => {
        for (const text of ['<|>', 'menu { cour<|>', '"<|>', '// a <|> comment']) {
            const plan = openPlan(text);
            const at = plan.folder.documentOf(plan.path)!.positionAt(plan.offset);
            expect(selectionRanges(plan, [at])).toHaveLength(1);
        }
    });
});

describe('a brace that closes', () => {
    it('lays out its block and nothing else', () => {
        const plan = openPlan('house   "H" {}\nmenu {\ncourse soup {\nlasts   15 min\n}<|>\n   bread   from soup\n}\n');
        const document = plan.folder.documentOf(plan.path)!;
        const edits = formatBlock(plan, document.positionAt(plan.offset), '}');
        expect(TextDocument.applyEdits(document, edits)).toBe(
            'house   "H" {}\nmenu {\n    course soup {\n        lasts 15 min\n    }\n   bread   from soup\n}\n',
        );
    });

    it('that the editor put there is laid out with its block when the line is left', () => {
        const soup = 'menu {\n    course soup {\n        garnish "Foam" {contains egg}';
        for (const [typed, next] of [
            ['\n        <|>', '\n        lasts   15 min\n    }\n}\n'],
            [' // foam\n        <|>', ''],
            ['<|>', ''],
        ] as const) {
            const plan = openPlan(`${soup}${typed}${next === '' ? '\n    }\n}\n' : next}`);
            const document = plan.folder.documentOf(plan.path)!;
            const edits = formatBlock(plan, document.positionAt(plan.offset), '\n');
            const left = TextDocument.applyEdits(document, edits);
            expect(left).toBe(
                typed.includes('//') ? plan.text : plan.text.replace('{contains egg}', '{ contains egg }'),
            );
        }
    });

    it('does nothing in a text or a comment, or while the rest can not be read', () => {
        for (const text of [
            'menu { } // }<|>',
            'event "}<|>" {}',
            'menu { course soup { served inn \n }<|> }',
            '}<|>',
        ]) {
            const plan = openPlan(text);
            expect(formatBlock(plan, plan.folder.documentOf(plan.path)!.positionAt(plan.offset), '}'), text).toEqual(
                [],
            );
        }
    });
});

describe('a file that gets another name', () => {
    const texts = {
        'house.cover': 'house "H" {}\n',
        'events/supper.cover':
            'use "../house.cover"\nmenu { course soup { recipe "../recipes/soup.md"   contains nothing } }\n',
        'recipes/soup.md': '# Soup\n',
    };

    async function renamed(from: string, to: string): Promise<Record<string, string>> {
        const memory = filesInMemory(texts);
        const workspace = new Workspace({
            list: () => Promise.resolve(Object.keys(texts).filter((path) => path.endsWith('.cover'))),
            read: (_, path) => Promise.resolve(memory.read(path)),
        });
        await workspace.addFolder(FOLDER);
        const folder = workspace.all[0]!;
        for (const plan of folder.plans) {
            folder.checked(plan);
        }
        await workspace.fetchWanted(folder);
        const renames = [{ oldUri: `${FOLDER}/${from}`, newUri: `${FOLDER}/${to}` }];
        const edit: WorkspaceEdit | null = editsForRenames(workspace, renames, {
            ...CLIENT,
            takesVersionedEdits: false,
        });
        return Object.fromEntries(
            Object.entries(edit?.changes ?? {}).map(([uri, edits]) => {
                const path = uri.slice(FOLDER.length + 1);
                return [path, TextDocument.applyEdits(folder.documentOf(path)!, edits)];
            }),
        );
    }

    it('is used by its new name', async () => {
        expect(await renamed('house.cover', 'our-house.cover')).toEqual({
            'events/supper.cover': texts['events/supper.cover'].replace('../house', '../our-house'),
        });
    });

    it('keeps what it uses itself when it moves', async () => {
        expect(await renamed('events/supper.cover', 'supper.cover')).toEqual({
            'events/supper.cover': texts['events/supper.cover'].replaceAll('../', ''),
        });
    });

    it('may be a recipe, or a folder', async () => {
        expect(await renamed('recipes', 'kitchen/recipes')).toEqual({
            'events/supper.cover': texts['events/supper.cover'].replace('../recipes', '../kitchen/recipes'),
        });
        expect(await renamed('events', 'evenings')).toEqual({});
        expect(await renamed('nothing.cover', 'else.cover')).toEqual({});
    });
});
