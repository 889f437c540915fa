import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { AstUtils, GrammarUtils } from 'langium';
import { describe, expect, test } from 'vitest';
import { readFile } from '../plan/read.js';
import { readExample } from '../rules/example.js';
import { rules } from '../rules/index.js';
import { parseText } from './parse.js';
import { knownOf, spanOf, spansOfProperty } from './places.js';
import { parsePlainly, readPlainly } from './plain-parser.js';
import { isUnclosed } from './terminal-values.js';

const root = join(import.meta.dirname, '../../../..');
const TOKEN = /"[^"\n]*"|\/\/.*|[\w\u00C0-\u024F]+(?:-[\w\u00C0-\u024F]+)*|[^\s\w]/g;

/** Every text there is: the cupboard, the examples and what the rules show. */
const texts: [name: string, text: string][] = [
    ...['packages/language/src/cupboard', 'examples', 'packages/cli/starter'].flatMap((folder) => coverFiles(folder)),
    ...rules.flatMap(({ id, examples }) =>
        [...examples.wrong, ...examples.right].flatMap((example, index) =>
            Object.entries(readExample(example.text).texts).map(([name, text]): [string, string] => [
                `${id} ${index} ${name}`,
                text,
            ]),
        ),
    ),
];

function coverFiles(folder: string): [string, string][] {
    return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.cover'))
        .map((name) => [`${folder}/${name}`, readFileSync(join(root, folder, name), 'utf8')]);
}

/** What the plain parser makes of a text, if anything, is what the framework makes of it. */
function expectSame(text: string): void {
    const framework = parseText(text);
    const plain = parsePlainly(text);
    const { misspelt } = readFile('x.cover', text, framework);
    const isUnclosedSomewhere = (text.match(/"[^"\n]*"?|\/\*[^]*/g) ?? []).some(isUnclosed);
    const isPlain = framework.problems.length === 0 && misspelt.length === 0 && !isUnclosedSomewhere;
    if (plain === undefined) {
        expect(isPlain, 'a text without problems that the plain parser does not take').toBe(false);
        return;
    }
    expect(framework.problems).toEqual([]);
    expect(readFile('x.cover', text, { tree: plain, problems: [] })).toEqual(readFile('x.cover', text, framework));
}

describe('the plain parser reads as the framework does', () => {
    test('there are texts to read', () => expect(texts.length).toBeGreaterThan(10));
    test.each(texts)('%s', (_, text) => expectSame(text));

    test.each([59, 60, 61, 20_000])('blocks in blocks, %i deep', (depth) => {
        const text = `menu { course soup "Soup" { pour "A" ${'{ instead "B" '.repeat(depth - 2)}${'} '.repeat(depth)}`;
        expect(parsePlainly(text) !== undefined).toBe(parseText(text).problems.length === 0);
    });

    test('with tokens left out, doubled and exchanged', () => {
        const tokensOf = new Map(texts.map(([, text]) => [text, [...text.matchAll(TOKEN)]]));
        fc.assert(
            fc.property(
                fc.constantFrom(...texts.map(([, text]) => text)),
                fc.nat(),
                fc.nat(),
                fc.constantFrom('out', 'twice', 'exchanged'),
                (text, first, second, change) => {
                    const tokens = tokensOf.get(text)!;
                    const [a, b] = [tokens[first % tokens.length]!, tokens[second % tokens.length]!];
                    const put = { out: '', twice: `${a[0]} ${a[0]}`, exchanged: b[0] }[change];
                    expectSame(text.slice(0, a.index) + put + text.slice(a.index + a[0].length));
                },
            ),
            { numRuns: 300 },
        );
    });
});

test('places are those that the framework finds', () => {
    for (const [, text] of texts) {
        for (const node of AstUtils.streamAst(parseText(text).tree)) {
            for (const property of Object.keys(node).filter((name) => !name.startsWith('$'))) {
                const found = GrammarUtils.findNodesForProperty(node.$cstNode, property);
                expect(spansOfProperty(node, property).map(({ offset, end }) => [offset, end])).toEqual(
                    found.map(({ offset, end }) => [offset, end]),
                );
            }
        }
    }
});

describe('a block that was read before', () => {
    const text = 'menu {\n    course soup { lasts 15 min }\n    course main { lasts 30 min }\n}\n';
    const start = text.indexOf('course main');
    const known = { type: 'Course', end: text.indexOf('}', start) + 1, known: {} };
    const entriesOf = (blocks: NonNullable<Parameters<typeof readPlainly>[1]>) => {
        const [menu] = readPlainly(text, blocks).tree!.items;
        return menu?.$type === 'Menu' ? menu.entries : [];
    };

    test('is not parsed again: a node stands for it', () => {
        const [soup, main, ...others] = entriesOf(new Map([[start, known]]));
        expect(others).toEqual([]);
        expect([knownOf(soup!), spanOf(soup!)!.end]).toEqual([undefined, start - 5]);
        expect([knownOf(main!), spanOf(main!)]).toEqual([
            known.known,
            expect.objectContaining({ offset: start, end: known.end }),
        ]);
        expect(main).toHaveProperty('clauses', []);
    });

    test('is parsed where something else begins there now', () => {
        const [, main] = entriesOf(new Map([[start, { ...known, type: 'Dish' }]]));
        expect(knownOf(main!)).toBeUndefined();
        expect(main).toHaveProperty('clauses', [expect.objectContaining({ $type: 'Lasts' })]);
    });
});
