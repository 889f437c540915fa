import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseText } from '../grammar/parse.js';
import { FileReader, readFile, readText } from './read-text.js';
import { stretchesOf } from '../grammar/stretches.js';

const examples = join(import.meta.dirname, '../../../../examples');
const texts = readdirSync(examples, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.cover'))
    .map((name): [string, string] => [name, readFileSync(join(examples, name), 'utf8')]);
const all = texts.map(([, text]) => text).join('\n');

/** What fingers do to a text: put in a character or some, take some out. */
const edit = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    out: fc.oneof({ weight: 6, arbitrary: fc.constant(0) }, fc.nat({ max: 3 }), fc.nat({ max: 400 })),
    put: fc.oneof(
        { weight: 4, arbitrary: fc.constantFrom('x', '1', ' ', '\n', '.', '-', 'é') },
        fc.constantFrom('"', '{', '}', '//', '/*', '*/', '“', '”', '\0'),
        fc.constantFrom(
            'kind heron is soup { hot }',
            'use "house.cover"',
            'menu {',
            'course soup "Leek" { cold }',
            '} }',
        ),
        fc.constant(''),
    ),
});

function edited(text: string, { at, out, put }: { at: number; out: number; put: string }): string {
    const offset = Math.floor(at * text.length);
    return text.slice(0, offset) + put + text.slice(offset + out);
}

describe('what is read again after a change is what is read afresh', () => {
    test('after any changes one after the other', () => {
        fc.assert(
            fc.property(
                fc.constantFrom(all, ...texts.map(([, text]) => text)),
                fc.array(edit, { minLength: 1, maxLength: 6 }),
                (start, edits) => {
                    const reader = new FileReader('x.cover');
                    reader.read(start);
                    let text = start;
                    for (const each of edits) {
                        text = edited(text, each);
                        expect(reader.read(text)).toEqual(readText('x.cover', text));
                    }
                },
            ),
            { numRuns: 50 },
        );
    });

    // Within a menu the courses that were not touched are not read again.
    test('after any changes to the menu, some at once', () => {
        const menus = texts.flatMap(([, text]) => {
            const menu = (stretchesOf(text) ?? [])
                .map(({ start, end }) => text.slice(start, end))
                .find((block) => /\bmenu \{/.test(block) && (block.match(/\n {4}course /g)?.length ?? 0) > 2);
            return menu === undefined ? [] : [`house "Hall" { own 40 soup-spoon }\n${menu}`];
        });
        expect(menus.length).toBeGreaterThan(3);
        fc.assert(
            fc.property(
                fc.constantFrom(...menus),
                fc.array(fc.array(edit, { minLength: 1, maxLength: 2 }), { minLength: 2, maxLength: 8 }),
                (start, steps) => {
                    const reader = new FileReader('x.cover');
                    reader.read(start);
                    let text = start;
                    for (const edits of steps) {
                        // A mistake is mostly taken back.
                        text = edits.reduce(edited, stretchesOf(text) ? text : start);
                        expect(reader.read(text)).toEqual(readText('x.cover', text));
                    }
                },
            ),
            { numRuns: 60 },
        );
    });

    test('a block that was not touched stays the very same, where it is now', () => {
        const reader = new FileReader('x.cover');
        const before = reader.read('kind a is soup {\n}\nkind b is soup {\n}\n');
        const [first, second] = before.kinds;
        const after = reader.read('kind aa is soup {\n}\nkind b is soup {\n}\n');
        expect(after.kinds[0]).not.toBe(first);
        expect(after.kinds[1]).toBe(second);
        expect(second!.nameOrigin).toEqual({ file: 'x.cover', start: 25, end: 26 });
    });
});

describe('stretches', () => {
    test.each(texts)('%s read in stretches is as read in one', (_, text) => {
        expect(stretchesOf(text)?.length).toBeGreaterThan(1);
        expect(readText('x.cover', text)).toEqual(readFile('x.cover', text, parseText(text)));
    });

    test.each(['menu {', '}', 'menu { } }', 'event "A" { // }', '/* } */ menu {'])('`%s` has none', (text) => {
        expect(stretchesOf(text)).toBeUndefined();
    });

    test('no brace in a text or a comment ends one', () => {
        const text = 'room "A } {" { } // }\nmenu { /* { */ }';
        expect(stretchesOf(text)?.map(({ start, end }) => text.slice(start, end))).toEqual([
            'room "A } {" { }',
            ' // }\nmenu { /* { */ }',
            '',
        ]);
    });
});
