import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readStretch } from '../plan/read.js';
import { parseMistakenLines } from './mistaken-lines.js';
import { parseText, type Parsed } from './parse.js';
import { readPlainly } from './plain-parser.js';
import { stretchesOf } from './stretches.js';

const examples = join(import.meta.dirname, '../../../../examples');
const texts = readdirSync(examples, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.cover'))
    .map((name) => readFileSync(join(examples, name), 'utf8'));

const read = (text: string, parsed: Parsed) => {
    const { uses, blocks, syntax, misspelt, unclosed } = readStretch('x.cover', text, parsed);
    return { uses, blocks, syntax, misspelt, unclosed };
};

/** What is said of each block of a text that has a mistake: by its lines, where they can be told, and by the whole. */
function bothWays(text: string): { readonly lines: Parsed; readonly block: string }[] {
    return (stretchesOf(text) ?? []).flatMap(({ start, end }) => {
        const block = text.slice(start, end);
        const { stop } = readPlainly(block);
        const lines = stop && parseMistakenLines(block, stop);
        return lines ? [{ lines, block }] : [];
    });
}

describe('lines that can’t be read, parsed by themselves', () => {
    test('say and leave what the whole block does, whatever fingers did to it', () => {
        let compared = 0;
        fc.assert(
            fc.property(
                fc.constantFrom(...texts),
                fc.double({ min: 0, max: 1, noNaN: true }),
                fc.oneof(fc.constant(0), fc.nat({ max: 6 }), fc.nat({ max: 60 })),
                fc.constantFrom('', 'x', '1', ' ', ',', '"', '\n', 'with', 'at 7 min', '}{', 'dish', '//', '$'),
                (text, share, out, put) => {
                    const at = Math.floor(share * text.length);
                    for (const { lines, block } of bothWays(text.slice(0, at) + put + text.slice(at + out))) {
                        compared++;
                        expect(read(block, lines)).toEqual(read(block, parseText(block)));
                    }
                },
            ),
            { numRuns: 400 },
        );
        expect(compared).toBeGreaterThan(30);
    });

    test.each([
        ['a word too many', 'served in soup-bowl', 'served in soup-bowl xx'],
        ['a clause without its value', 'lasts 15 min', 'lasts'],
        ['a heading', 'dish "Squash"', 'dish Squash'],
        ['a character of no meaning', 'lasts 15 min', 'lasts $15 min'],
        ['an unclosed text', 'recipe "soup.md"', 'recipe "soup.md'],
    ])('%s', (_, good, bad) => {
        const menu = `menu {
    course soup "Leek" {
        served in soup-bowl
            at 66 °C
        lasts 15 min
        recipe "soup.md"
    }
    course main "Roast" {
        lasts 30 min
        dish "Squash" {
            served on dinner-plate
            contains nothing
        }
        dish "Duck" {
            served on dinner-plate
            contains milk
        }
    }
}`;
        const [only, ...others] = bothWays(menu.replace(good, bad));
        expect(others).toEqual([]);
        expect(read(only!.block, only!.lines)).toEqual(read(only!.block, parseText(only!.block)));
    });

    test('a clause goes on behind its line, so all of it is taken', () => {
        const block =
            'menu {\n    course soup {\n        lasts 12 min\n        served in xx yy\n            at 64 °C\n    }\n    water still\n}';
        const [{ lines } = { lines: undefined }] = bothWays(block);
        expect(lines && read(block, lines)).toEqual(read(block, parseText(block)));
    });
});
