import { describe, expect, it } from 'vitest';
import type { DocumentSymbol } from 'vscode-languageserver';
import { openPlan } from '../../../../tests/support/open-plan.js';
import { documentSymbols, flatSymbols, workspaceSymbols } from './document-symbols.js';
import { foldingRanges } from './folding.js';
import { legend, semanticTokens } from './semantic-tokens.js';

const PLAN = `use "a.cover"
use "b.cover"

// One evening,
// two courses.
event "Supper" {
    date 2026-10-17
    seated 19:00
}
menu {
    course soup "Broth" {
        pour "Sherry" 2 fl oz
    }
    course main {
        dish "Sirloin" is steak for the rest {
            eaten with dinner-fork and steak-knife
        }
    }
}
room "Gallery" { table T1 to T3: round 60 inch }
fork marsh-fork { length 170 mm }
`;

function tree(symbols: readonly DocumentSymbol[], depth = 0): string[] {
    return symbols.flatMap(({ name, detail, children }) => [
        `${' '.repeat(depth)}${name}${detail === undefined ? '' : ` (${detail})`}`,
        ...tree(children ?? [], depth + 1),
    ]);
}

describe('outline', () => {
    it('shows events, courses, dishes, pours, tables and pieces as a tree', () => {
        const plan = openPlan(PLAN);
        expect(tree(documentSymbols(plan))).toEqual([
            'Supper (event 2026-10-17 19:00)',
            'menu',
            ' Broth (soup)',
            '  Sherry (2 fl oz)',
            ' main (main)',
            '  Sirloin (steak)',
            'Gallery (room)',
            ' T1 to T3 (round 60 inch)',
            'marsh-fork (fork)',
        ]);
    });

    it('says what the clocks show where something has its time', () => {
        const timed = PLAN.replace('seated 19:00', 'seated 19:00\n    guests 8')
            .replace('round 60 inch', 'round 60 inch, 8 seats')
            .replace(
                'menu {',
                'team { servers 1 }\nmenu {\n    toast "To the marsh" after soup, lasts 4 min\n    coffee after main',
            );
        const lines = tree(documentSymbols(openPlan(timed)));
        expect(lines).toEqual(
            expect.arrayContaining([
                expect.stringMatching(/^ Broth \(soup, 19:0\d\)$/),
                expect.stringMatching(/^ main \(main, 19:\d\d\)$/),
                expect.stringMatching(/^ To the marsh \(toast, 19:\d\d\)$/),
                expect.stringMatching(/^ coffee \((19|20):\d\d\)$/),
            ]),
        );
        // A menu that two events use is at no one time.
        const [menu, event] = [
            'menu { course soup "Broth" { } }',
            'event "S" { seated 19:00  guests 8 }\nteam { servers 1 }\nroom "R" { table T1: round 60 inch, 8 seats }\n',
        ];
        const shared = (events: readonly string[]) =>
            tree(
                documentSymbols(
                    openPlan(
                        `${events.map((name) => `//- ${name}.cover\nuse "menu.cover"\n${event}`).join('')}//- menu.cover\n${menu}<|>\n`,
                    ),
                ),
            )[1];
        expect(shared(['one'])).toMatch(/^ Broth \(soup, 19:0\d\)$/);
        expect(shared(['one', 'two'])).toBe(' Broth (soup)');
    });

    it('selects inside of what it spans, and parents hold their children', () => {
        const inside = ({ range, selectionRange, children = [] }: DocumentSymbol): boolean =>
            selectionRange.start.line >= range.start.line &&
            selectionRange.end.line <= range.end.line &&
            children.every(
                (child) =>
                    child.range.start.line >= range.start.line &&
                    child.range.end.line <= range.end.line &&
                    inside(child),
            );
        expect(documentSymbols(openPlan(PLAN)).every(inside)).toBe(true);
    });

    it('is a list for clients without trees, and is searched over the folder', () => {
        const plan = openPlan(PLAN);
        expect(flatSymbols(plan).find(({ name }) => name === 'Sirloin')?.containerName).toBe('main');
        expect(workspaceSymbols([plan.folder], 'srl').map(({ name }) => name)).toEqual(['Sirloin']);
        expect(workspaceSymbols([plan.folder], 'nothing-here')).toEqual([]);
    });

    it('survives a text that is half typed', () => {
        expect(
            tree(documentSymbols(openPlan('menu {\n course soup "Broth" {\n served in\n }\n course main {'))),
        ).toEqual(['menu', ' Broth (soup)', ' main (main)']);
        expect(documentSymbols(openPlan(''))).toEqual([]);
    });
});

describe('folding', () => {
    it('folds blocks, comments and `use` lines, the closing brace in sight', () => {
        const folds = foldingRanges(openPlan(PLAN)).map(
            ({ startLine, endLine, kind }) => `${startLine}-${endLine}${kind === undefined ? '' : ` ${kind}`}`,
        );
        expect(folds.sort()).toEqual(['0-1 imports', '10-11', '13-16', '14-15', '3-4 comment', '5-7', '9-17']);
    });
});

describe('semantic tokens', () => {
    it('name each name’s sort, what is declared and what the cupboard declares', () => {
        const plan = openPlan(
            'menu {\n    course soup "Broth" { served in marsh-bowl at 64 °C }\n}\nbowl marsh-bowl { for soup }\n',
        );
        const { data } = semanticTokens(plan);
        let [line, character] = [0, 0];
        const tokens: string[] = [];
        for (let index = 0; index < data.length; index += 5) {
            const [down, right, length, type, modifiers] = data.slice(index, index + 5) as [
                number,
                number,
                number,
                number,
                number,
            ];
            [line, character] = [line + down, down === 0 ? character + right : right];
            const words = plan.words({ start: { line, character }, end: { line, character: character + length } });
            const marks = legend.tokenModifiers.filter((_, bit) => modifiers & (1 << bit));
            tokens.push([words, legend.tokenTypes[type], ...marks].join(' '));
        }
        expect(tokens).toEqual([
            'soup type defaultLibrary',
            'marsh-bowl variable',
            'marsh-bowl variable declaration',
            'soup type defaultLibrary',
        ]);
    });

    it('of a range are those of its lines', () => {
        const plan = openPlan(PLAN);
        expect(semanticTokens(plan, plan.rangeOf('eaten with')).data.length).toBe(2 * 5);
        // The first table, the last, and the shape.
        expect(semanticTokens(plan, plan.rangeOf('room "Gallery"')).data.length).toBe(3 * 5);
    });
});
