import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { AstUtils, CstUtils, type AstNode } from 'langium';
import { describe, expect, test } from 'vitest';
import { randomText } from '../../../../tests/support/random-plans.js';
import { filesBelow } from '../../../../tests/support/samples.js';
import { parseText } from '../grammar/parse.js';
import { applyEdits } from './fixes.js';
import { formatEdits, formatText } from './format.js';
import { LINE_WIDTH } from './layout.js';

const FIXTURES = join(import.meta.dirname, '../../../../tests/format');
const SEPARATOR = /^\/\/=>.*\n/m;

const shipped = Object.entries({
    ...filesBelow('examples'),
    ...filesBelow('packages/language/src/cupboard'),
    ...filesBelow('packages/cli/starter'),
}).filter(([path]) => path.endsWith('.cover') && !path.startsWith('examples/wrong-plans'));
const tried = Object.entries({ ...filesBelow('tests'), ...filesBelow('examples') }).filter(
    ([path, text]) => path.endsWith('.cover') && isWhole(text),
);

function isWhole(text: string): boolean {
    const { problems, unclosed = [] } = parseText(text);
    return problems.length === 0 && unclosed.length === 0;
}

function formatted(text: string): string {
    const result = formatText(text);
    expect(result).not.toHaveProperty('problems');
    return 'text' in result ? result.text : '';
}

/** The tree without places: what a text means. */
function meaningOf(text: string): unknown {
    const strip = (value: unknown): unknown => {
        if (Array.isArray(value)) {
            return value.map(strip);
        }
        return value !== null && typeof value === 'object'
            ? Object.fromEntries(
                  Object.entries(value)
                      .filter(([key]) => key === '$type' || !key.startsWith('$'))
                      .map(([key, inner]) => [key, strip(inner)]),
              )
            : value;
    };
    return strip(parseText(text).tree);
}

/** The words as they are written: names, figures and quotes are nobody's business here. */
function wordsOf(text: string): string[] {
    return leavesOf(text).flatMap(({ hidden, text: word }) => (hidden ? [] : [word]));
}

/** The comments in order, without the blanks at the end of their lines. */
function commentsOf(text: string): string[] {
    const lines = (comment: string): string =>
        comment
            .split(/\r\n|\n|\r/)
            .map((line) => line.trimEnd())
            .join('\n');
    return leavesOf(text).flatMap(({ hidden, text: word }) => (hidden ? [lines(word)] : []));
}

function leavesOf(text: string) {
    const root: AstNode = AstUtils.findRootNode(parseText(text).tree);
    return root.$cstNode ? CstUtils.flattenCst(root.$cstNode).toArray() : [];
}

/** What holds of every text and its canonical layout. */
function expectHolds(text: string): void {
    const laidOut = formatted(text);
    expect(formatted(laidOut)).toBe(laidOut);
    expect(wordsOf(laidOut)).toEqual(wordsOf(text));
    expect(commentsOf(laidOut)).toEqual(commentsOf(text));
    expect(meaningOf(laidOut)).toEqual(meaningOf(text));
    expect(applyEdits(text, formatEdits(text))).toBe(laidOut);
    const lines = laidOut.split(/\r\n|\n/);
    expect(lines.filter((line) => /[^\S\n]$/.test(line))).toEqual([]);
    expect(laidOut).not.toMatch(/(\r?\n){3}/);
    expect(lines.at(-1)).toBe('');
    expect(lines.at(-2)).not.toBe('');
}

describe('fixtures', () => {
    const fixtures = readdirSync(FIXTURES).filter((name) => name.endsWith('.cover'));

    test.each(fixtures)('%s', (name) => {
        const [before = '', after, ...more] = readFileSync(join(FIXTURES, name), 'utf8').split(SEPARATOR);
        expect(after, 'a line `//=>` between before and after').toBeDefined();
        expect(more).toEqual([]);
        expect(formatted(before)).toBe(after);
        expect(before).not.toBe(after);
        expectHolds(before);
    });
});

describe('files', () => {
    test.each(shipped)('%s is in the canonical layout', (_, text) => expect(formatted(text)).toBe(text));
    test('every whole text of the tests keeps its meaning', () => tried.forEach(([, text]) => expectHolds(text)));
});

describe('what is kept', () => {
    const tidy = 'menu {\n    toast "To the harbour", lasts 5 min\n}\n';

    test('the line ends of the file', () => {
        expect(formatted('menu {\r\ntoast "To the harbour" , lasts 5 min }')).toBe(tidy.replaceAll('\n', '\r\n'));
        expect(formatted('\r\n/* one\r\n two */\r\nmenu { }')).toBe('/* one\r\n two */\r\nmenu { }\r\n');
        expect(formatted('menu {\r\n\n\ntoast "To the harbour" , lasts 5 min }\n')).toBe(tidy);
    });

    test('a byte-order mark', () => {
        expect(formatted(`\uFEFF  ${tidy}`)).toBe(`\uFEFF${tidy}`);
    });

    test('the spelling of numbers, units, quotes and names', () => {
        const text = 'kind soup {\n    portion 5 1/2 fl oz to 3,5 dl-cup\n}\n';
        expect(formatText(text)).toHaveProperty('problems');
        const odd = 'room “Long gallery” {\n    at 21 C\n    aisle 1 1/2 m\n}\n';
        expect(formatted(odd)).toBe(odd);
    });

    test('words that would read as one on one line', () => {
        const text = 'house "Saltmarsh Hall" {\n    own 7\n        pm, 4 dinner-fork\n}\n';
        expect(formatted(text)).toBe(text);
        expectHolds(text);
    });

    test('nothing at all of an empty text', () => {
        expect(formatted('')).toBe('');
        expect(formatted(' \n\t\n')).toBe('');
    });

    test('a text with a mistake, which is told', () => {
        const text = 'menu {\n  course soup {\n lasts }\n}';
        expect(formatText(text)).toEqual({ problems: parseText(text).problems });
        expect(formatEdits(text)).toEqual([]);
    });

    test('a text with an unclosed quote or comment, which is told', () => {
        for (const [text, message] of [
            ['use "house.cover\n', 'This text has no closing quote.'],
            ['use "house.cover"\n/* the rest', 'This comment has no closing `*/`.'],
        ] as const) {
            expect(formatText(text)).toMatchObject({ problems: [{ message }] });
        }
    });
});

describe('long lines', () => {
    test('break after commas only', () => {
        const names = Array.from({ length: 40 }, (_, index) => `ingredient-${index}`).join(', ');
        const laidOut = formatted(`menu { course soup "Soup" { contains ${names} } }`);
        expect(laidOut.split('\n').every((line) => line.length <= LINE_WIDTH)).toBe(true);
        expect(laidOut.split('\n')[3]).toMatch(/^ {12}ingredient-\d+,/);
        expect(
            laidOut.split('\n').filter((line) => line.startsWith('            ') && !line.endsWith(',')),
        ).toHaveLength(1);
    });
});

describe('a part of a text', () => {
    const text = 'menu {\n toast   "A"\n  toast   "B"\n   toast   "C"\n}\n';

    test('changes only the lines that the range touches', () => {
        const start = text.indexOf('"B"');
        const laidOut = applyEdits(text, formatEdits(text, { start, end: start }));
        expect(laidOut).toBe('menu {\n toast   "A"\n    toast "B"\n   toast   "C"\n}\n');
    });

    test('at random, never touches a line outside and never a word', () => {
        fc.assert(
            fc.property(fc.gen(), fc.nat(), fc.nat(), (choose, from, length) => {
                const plan = randomText(choose);
                fc.pre(isWhole(plan));
                const start = from % (plan.length + 1);
                const end = Math.min(plan.length, start + (length % 80));
                const edits = formatEdits(plan, { start, end });
                const first = Math.max(plan.lastIndexOf('\n', start - 1), plan.lastIndexOf('\r', start - 1)) + 1;
                const last = end + (/[\n\r]|$/.exec(plan.slice(end))?.index ?? 0);
                expect(edits.filter((edit) => edit.start < first || edit.end > last)).toEqual([]);
                expect(wordsOf(applyEdits(plan, edits))).toEqual(wordsOf(plan));
                expect(commentsOf(applyEdits(plan, edits))).toEqual(commentsOf(plan));
            }),
            { numRuns: 150, seed: 20261017 },
        );
    });
});

test('plans made at random from the grammar', () => {
    fc.assert(
        fc.property(fc.gen(), fc.boolean(), (choose, isCrLf) => {
            const text = randomText(choose);
            fc.pre(isWhole(text));
            expectHolds(isCrLf ? text.replaceAll('\n', '\r\n') : text);
        }),
        { numRuns: 300, seed: 20261017 },
    );
});
