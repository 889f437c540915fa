import { describe, expect, it } from 'vitest';
import type { Location, WorkspaceEdit } from 'vscode-languageserver';
import { CLIENT, FOLDER, openPlan, type OpenPlan } from '../../../../tests/support/open-plan.js';
import { applyEdits } from './fixes.js';
import { definitionAt } from './definition.js';
import { highlightsAt, referencesAt } from './references.js';
import { renamableAt, renameAt } from './rename.js';
import { createCoverServices } from './services.js';
import { cupboardText } from './virtual-texts.js';
import { Words } from './words.js';
import { documentLinks } from './document-links.js';

const words = new Words(createCoverServices().cover);

const HOUSE =
    '//- house.cover\nuse "cupboard.cover"\nhouse "Hall" { own 12 marsh-tumbler, 30 salad-fork }\nroom "R" { table T1 to T3: round 60 inch  table K: round 50 inch }\n';
const CUPBOARD =
    '//- cupboard.cover\nglass marsh-tumbler { holds 280 ml }\nkind smoked-beet is appetizer { on salad-plate }\nfork salad-fork { length 170 mm }\n';
const PLAN = `${HOUSE}${CUPBOARD}//- supper.cover\n`;

const lineOf = (plan: OpenPlan, { uri, range }: Location): string => {
    const path = uri.replace(`${FOLDER}/`, '');
    const text = uri.startsWith(FOLDER)
        ? plan.folder.textOf(path)!
        : cupboardText(uri.replace(/^underliner-cupboard:\//, 'cupboard/'))!;
    return `${path}: ${text.split('\n')[range.start.line]!.slice(0, range.start.character)}|${text.split('\n')[range.start.line]!.slice(range.start.character)}`;
};

describe('definition', () => {
    const define = (written: string, client = CLIENT) => {
        const plan = openPlan(written);
        const found = definitionAt(plan, plan.offset, client);
        return found && lineOf(plan, found);
    };

    it('follows `use` to the file that declares the name', () => {
        expect(define(`${PLAN}use "house.cover"\nmenu { course soup { pour "Beer" into marsh-tum<|>bler } }\n`)).toBe(
            'cupboard.cover: glass |marsh-tumbler { holds 280 ml }',
        );
        expect(define(`${PLAN}use "house.cover"\nmenu { course main { dish "Beet" is smoked-beet<|> { } } }\n`)).toBe(
            'cupboard.cover: kind |smoked-beet is appetizer { on salad-plate }',
        );
    });

    it('finds courses, dishes, tables of the range', () => {
        expect(define('menu { course soup "Broth" { }  bread until so<|>up }')).toBe(
            'plan.cover: menu { course |soup "Broth" { }  bread until soup }',
        );
        expect(define('menu { course main { dish "Sirloin" { } } }\nseating { "A. Reed" chooses "Sir<|>loin" }')).toBe(
            'plan.cover: menu { course main { dish |"Sirloin" { } } }',
        );
        expect(define(`${PLAN}use "house.cover"\nevent "S" { guests 4 { 1 vegetarian at T<|>2 } }\n`)).toBe(
            'house.cover: room "R" { table |T1 to T3: round 60 inch  table K: round 50 inch }',
        );
    });

    it('goes to the nearest declaration, and from there to what it is laid over', () => {
        expect(define(`${PLAN}use "house.cover"\nmenu { course salad { eaten with salad-f<|>ork } }\n`)).toBe(
            'cupboard.cover: fork |salad-fork { length 170 mm }',
        );
        expect(define('fork salad-f<|>ork { length 170 mm }')).toMatch(
            /^underliner-cupboard:\/forks\.cover: fork \|salad-fork/,
        );
        expect(define('house "H" { own 4 salad-f<|>ork }')).toMatch(
            /^underliner-cupboard:\/forks\.cover: fork \|salad-fork/,
        );
        expect(define('house "H" { own 4 salad-f<|>ork }', { ...CLIENT, showsVirtualTexts: false })).toBeUndefined();
    });

    it('opens the file of a `use` line, and says nothing elsewhere', () => {
        expect(define(`${PLAN}use "hou<|>se.cover"\n`)).toBe('house.cover: |use "cupboard.cover"');
        expect(define('ho<|>use "H" { }')).toBeUndefined();
        expect(define('house "H" { own 4 no-such-p<|>iece }')).toBeUndefined();
    });

    it('links the paths that lead somewhere', () => {
        const plan = openPlan(`${PLAN}use "house.cover"\nuse "gone.cover"\nmenu { course soup { recipe "a.md" } }\n`);
        plan.folder.hold('a.md', { state: 'read', text: '' });
        expect(documentLinks(plan).map(({ range, target }) => [plan.words(range), target])).toEqual([
            ['house.cover', `${FOLDER}/house.cover`],
            ['a.md', `${FOLDER}/a.md`],
        ]);
    });
});

describe('references', () => {
    const refer = (written: string, declaration = true) => {
        const plan = openPlan(written);
        return referencesAt(plan, plan.offset, declaration, { ...CLIENT, showsVirtualTexts: false }).map((each) =>
            lineOf(plan, each).replace(/: .*?\|.*/, ''),
        );
    };

    it('are in every file whose plan can mean the same, and in no other', () => {
        const other =
            '//- other.cover\nglass marsh-tumbler { holds 1 l }\nmenu { course soup { pour "Ale" into marsh-tumbler } }\n';
        const plan = `${PLAN}use "house.cover"\nmenu { course soup { pour "Beer" into marsh-tum<|>bler } }\n`;
        expect(refer(other + plan)).toEqual(['cupboard.cover', 'house.cover', 'supper.cover']);
        expect(refer(other + plan, false)).toEqual(['house.cover', 'supper.cover']);
    });

    it('of a name of the standard cupboard are in all files', () => {
        expect(
            refer('//- a.cover\nhouse "H" { own 4 fish-fork }\n//- b.cover\nhouse "I" { own 4 fish-f<|>ork }\n'),
        ).toEqual(['a.cover', 'b.cover']);
    });

    it('of a course are not those of its kind', () => {
        expect(
            refer(
                '//- a.cover\nmenu { course soup { } }\n//- b.cover\nmenu { course so<|>up { }  bread until soup }\n',
            ),
        ).toEqual(['b.cover', 'b.cover']);
    });

    it('are highlighted in their own file', () => {
        const plan = openPlan('menu { course soup "Broth" { }  bread from so<|>up until soup }');
        expect(highlightsAt(plan, plan.offset).map(({ range }) => range.start.character)).toEqual([14, 43, 54]);
    });
});

describe('rename', () => {
    const rename = (written: string, name: string) => {
        const plan = openPlan(written);
        return after(plan, renameAt(plan, plan.offset, name, words, CLIENT));
    };
    const after = (plan: OpenPlan, { documentChanges }: WorkspaceEdit): Record<string, string> =>
        Object.fromEntries(
            (documentChanges ?? []).map((change) => {
                if (!('textDocument' in change)) {
                    throw new Error('only texts change');
                }
                const path = change.textDocument.uri.replace(`${FOLDER}/`, '');
                const document = plan.folder.documentOf(path)!;
                expect(change.textDocument.version).toBe(path === plan.path ? 7 : null);
                const edits = change.edits.map(({ range, ...edit }) => ({
                    start: document.offsetAt(range.start),
                    end: document.offsetAt(range.end),
                    text: 'newText' in edit ? edit.newText : '',
                }));
                return [
                    path,
                    applyEdits(
                        document.getText(),
                        edits.sort((a, b) => a.start - b.start),
                    ),
                ];
            }),
        );

    it('changes every file that means the thing', () => {
        const changed = rename(
            `${PLAN}use "house.cover"\nmenu { course soup { pour "Beer" into marsh-tum<|>bler } }\n`,
            'reed-tumbler',
        );
        expect(Object.keys(changed).sort()).toEqual(['cupboard.cover', 'house.cover', 'supper.cover']);
        expect(changed['house.cover']).toContain('own 12 reed-tumbler, 30');
        expect(changed['cupboard.cover']).toContain('glass reed-tumbler {');
    });

    it('keeps quotes, and writes them where the name was given with them', () => {
        expect(
            rename(
                'menu { course soup { pour "Be<|>er" 1 l }  toast after soup, with "Beer" }',
                'Ale of the “house'.replace('“', ''),
            ),
        ).toEqual({
            'plan.cover':
                'menu { course soup { pour "Ale of the house" 1 l }  toast after soup, with "Ale of the house" }',
        });
        expect(rename('fork f<|>a { }\nhouse "H" { own 4 "fa" }', 'fb')['plan.cover']).toBe(
            'fork fb { }\nhouse "H" { own 4 "fb" }',
        );
        expect(rename('fork f<|>a { }\nhouse "H" { own 4 fa }', '"course"')['plan.cover']).toBe(
            'fork "course" { }\nhouse "H" { own 4 "course" }',
        );
    });

    it('changes what stands in the same word too', () => {
        expect(rename('kind stew is soup\nmenu { course ste<|>w { }  bread until stew }', 'ragout')['plan.cover']).toBe(
            'kind ragout is soup\nmenu { course ragout { }  bread until ragout }',
        );
    });

    it.each([
        ['a word of the language', 'fork f<|>a { }', 'course', /`course` is a word of the language.*`"course"`/],
        ['what is no name', 'fork f<|>a { }', 'a b', /can't stand as a name without quotes/],
        ['a quote inside', 'fork f<|>a { }', 'a"b', /neither a quote nor a line end/],
        ['nothing', 'fork f<|>a { }', ' ', /at least one letter/],
        ['a taken name', 'fork f<|>a { }\nfork fb { }', 'fb', /There is a piece called `fb` already/],
        ["a name of the cupboard's", 'fork f<|>a { }', 'fish-fork', /There is a piece called `fish-fork` already/],
        ['a name of the standard cupboard', 'house "H" { own 4 fish-f<|>ork }', 'x', /standard cupboard/],
        ['a course by its kind', 'menu { course so<|>up { } }', 'broth', /`soup` is a kind of the standard cupboard/],
        [
            'a member of a range',
            'room "R" { table T1 to T3: round 1 m }\nseating { "A" at T<|>2 }',
            'T9',
            /`T2` is one of a range of tables that ends at `T3`/,
        ],
        ['a custom', 'house "H" { laying { over<|>flow: brought } }', 'x', /knows by heart/],
        ['a name that nothing declares', 'house "H" { own 4 fa<|>b }', 'x', /Nothing in reach declares `fab`/],
        ['no name', 'ho<|>use "H" { }', 'x', /no name here/],
    ])('refuses %s and says why', (_, written, name, reason) => {
        expect(() => rename(written, name)).toThrow(reason);
    });

    it('begins with the name without its quotes', () => {
        const plan = openPlan('menu { course soup { pour "Be<|>er" 1 l } }');
        const { range, placeholder } = renamableAt(plan, plan.offset);
        expect([plan.words(range), placeholder]).toEqual(['Beer', 'Beer']);
    });
});
