import fc from 'fast-check';
import { AstUtils } from 'langium';
import { describe, expect, test } from 'vitest';
import { randomText } from '../../../../tests/support/random-plans.js';
import type { Course, Menu } from './generated/ast.js';
import { DEEPEST_BLOCK, LONGEST_TEXT } from './limits.js';
import { parseText } from './parse.js';

const SUPPER = `event "Lantern night" {
    date 2026-10-17
    guests 84 guaranteed 80 {
        6 vegetarian
    }
    revision 4
}

menu {
    course soup "Squash soup" {
        served in soup-bowl at 64 °C
        lasts 15 min
        contains milk
    }
    course main "Sirloin" {
        lasts 30 min
        dish "Sirloin" for the rest { contains milk }
        dish "Squash" for vegetarian { contains nothing }
    }
    course dessert "Custard" {
        lasts 20 min
        contains egg, milk
    }
    coffee after dessert
}

team { servers 7 }
`;

function menuOf(text: string): Menu {
    return parseText(text).tree.items.find((item) => item.$type === 'Menu')!;
}

function coursesOf(text: string): Course[] {
    return menuOf(text).entries.filter((entry) => entry.$type === 'Course');
}

/** What a course says: its kind, and how many clauses and dishes it has. */
function outline(text: string): string[] {
    return coursesOf(text).map(({ kind, clauses, dishes }) => `${kind} ${clauses.length}+${dishes.length}`);
}

/** The supper with one line written otherwise. */
function supperWith(line: string, instead: string): string {
    expect(SUPPER).toContain(line);
    return SUPPER.replace(line, instead);
}

describe('a text without mistakes', () => {
    test('is read whole', () => {
        expect(parseText(SUPPER)).toMatchObject({ problems: [], mistyped: [], unclosed: [] });
        expect(outline(SUPPER)).toEqual(['soup 3+0', 'main 1+2', 'dessert 2+0']);
    });

    test('loses its quotes and has its names composed', () => {
        const { tree } = parseText('kind cre\u0300me is “crème”');
        expect(tree.items[0]).toMatchObject({ name: 'cr\u00E8me', parent: 'cr\u00E8me' });
    });

    test('is what the grammar makes at random', () => {
        const plans = fc.sample(
            fc.gen().map((choose) => randomText(choose)),
            { numRuns: 400, seed: 20261017 },
        );
        // A unit is a unit where a name such as `mm` could stand right after a number.
        const broken = plans.filter((text) => parseText(text).problems.length > 0);
        expect(broken.length).toBeLessThanOrEqual(4);
    });
});

describe('a mistake in one course', () => {
    const LINE = 'served in soup-bowl at 64 °C';

    test.each([
        'served in',
        'served on at 64 °C',
        'served in soup-bowl at',
        'served in soup bowl at 64 °C',
        'served @ 64 °C',
        'eaten',
        'cook',
        'cook 74 °C',
        'contains milk and cream',
        'contains course, milk',
        'left off for guests',
        'pour Dry riesling 4 fl oz { contains sulphites }',
        'dish',
        'dish "Squash"',
        '"Squash soup"',
        '20 min',
        'wild words of no meaning',
        'bread on bread-plate',
        'course main',
        '{ contains milk }',
        ',',
    ])('leaves what follows in it and the other courses: %s', (words) => {
        const text = supperWith(LINE, words);
        const { problems, tree } = parseText(text);
        expect(problems.length).toBeGreaterThan(0);
        expect(problems.length).toBeLessThanOrEqual(2);
        const [soup] = coursesOf(text);
        expect(soup!.clauses.map(({ $type }) => $type)).toEqual(expect.arrayContaining(['Lasts', 'Contains']));
        expect(outline(text).slice(1)).toEqual(['main 1+2', 'dessert 2+0']);
        expect(menuOf(text).entries.at(-1)!.$type).toBe('Coffee');
        expect(tree.items.map(({ $type }) => $type)).toEqual(['Event', 'Menu', 'Team']);
    });

    test('keeps what was typed of a clause', () => {
        const [soup] = coursesOf(supperWith(LINE, 'served in soup-bowl warmed to'));
        expect(soup!.clauses[0]).toMatchObject({
            $type: 'Served',
            phrases: [{ vessel: 'soup-bowl', state: 'warmed' }],
        });
    });

    test('is mended where one word is meant', () => {
        const text = supperWith('lasts 15 min', 'lats 15 min');
        expect(parseText(text).problems).toMatchObject([{ hint: 'Did you mean `lasts`?', suggestion: 'lasts' }]);
        expect(outline(text)).toEqual(outline(SUPPER));
    });
});

describe('braces', () => {
    /** Every brace of the supper, by the words of its line. */
    const braces = [...SUPPER.matchAll(/[{}]/g)].map(({ 0: brace, index }) => {
        const line = SUPPER.slice(0, index).split('\n').length;
        return [`${brace} of line ${line}`, index] as const;
    });

    test.each(braces)('%s left out', (_, index) => {
        const text = SUPPER.slice(0, index) + SUPPER.slice(index + 1);
        const { problems, tree } = parseText(text);
        expect(problems).toHaveLength(1);
        expect(tree.items.map(({ $type }) => $type)).toEqual(['Event', 'Menu', 'Team']);
        expect(outline(text).map((course) => course.split(' ')[0])).toEqual(['soup', 'main', 'dessert']);
    });

    test.each(braces.filter(([, index]) => SUPPER[index] === '}'))('%s written twice', (_, index) => {
        const text = `${SUPPER.slice(0, index)}} ${SUPPER.slice(index)}`;
        const { problems, tree } = parseText(text);
        expect(problems).toMatchObject([{ message: 'This closing brace `}` closes nothing.' }]);
        expect(tree.items.map(({ $type }) => $type)).toEqual(['Event', 'Menu', 'Team']);
        expect(outline(text)).toEqual(outline(SUPPER));
    });

    test('a missing one is told at the heading of its block', () => {
        const text = supperWith(
            '        contains milk\n    }\n    course main',
            '        contains milk\n    course main',
        );
        const [problem] = parseText(text).problems;
        expect(text.slice(problem!.start, problem!.end)).toBe('course soup "Squash soup" {');
        expect(problem!.message).toBe('This block has no closing brace `}`.');
    });
});

describe('a block whose first word is mistyped', () => {
    test.each([
        ['event "Lantern night"', 'evnt "Lantern night"'],
        ['menu {', 'menue {'],
        ['course main', 'coursse main'],
        ['course dessert', 'corse dessert'],
        ['dish "Squash"', 'dihs "Squash"'],
        ['guests 84', 'gusts 84'],
        ['team {', 'taem {'],
    ])('is read as what it is: %s, written %s', (right, wrong) => {
        const text = supperWith(right, wrong);
        const { problems, mistyped } = parseText(text);
        expect(problems).toEqual([]);
        const [word, meant] = [wrong.split(' ')[0]!, right.split(' ')[0]!];
        const start = text.indexOf(wrong);
        expect(mistyped).toEqual([{ word, meant, start, end: start + word.length }]);
        expect(outline(text)).toEqual(outline(SUPPER));
    });

    test('that is near no other is the block it looks like', () => {
        const text = supperWith('course main', 'gang main');
        expect(parseText(text)).toMatchObject({ problems: [], mistyped: [] });
        expect(coursesOf(text)[1]).toMatchObject({ misspelt: 'gang', kind: 'main' });
    });
});

describe('texts that are none', () => {
    const only = (text: string, message: RegExp): void => {
        const { problems } = parseText(text);
        expect(problems).toHaveLength(1);
        expect(problems[0]!.message).toMatch(message);
        expect(problems[0]!.start).toBeGreaterThanOrEqual(0);
        expect(problems[0]!.end).toBeLessThanOrEqual(text.length);
    };

    test('nothing', () => {
        for (const text of ['', ' \n', '\uFEFF', '// a word\n', '/* one */']) {
            expect(parseText(text)).toMatchObject({ problems: [], tree: { $type: 'File' } });
        }
    });

    test('bytes that are not text', () => only('\x7FELF\x02\x01\0\0\0event "x" {', /bytes that are not text/));
    test('half of a surrogate pair', () => only('menu { \uD83C }', /can’t be shown/));
    test('blocks without end', () => {
        only('{'.repeat(10_000), /More than 60 blocks are open/);
        only(`menu { course soup "Soup" { pour "A" ${'{ instead "B" '.repeat(10_000)}`, /More than 60 blocks are open/);
    });
    test('as many blocks as may be open', () => {
        const text = `menu { course soup "Soup" { pour "A" ${'{ instead "B" '.repeat(DEEPEST_BLOCK - 2)}`;
        expect(parseText(text + '} '.repeat(DEEPEST_BLOCK)).problems).toEqual([]);
    });
    test('a text that goes on and on', () =>
        only('menu { }\n'.repeat(LONGEST_TEXT / 8), /characters; a file may have/));
    test('more comments than the stack takes', () => only('// a\n'.repeat(190_000), /too much to read in one piece/));
    test('the parser is well again after them', () => expect(parseText(SUPPER).problems).toEqual([]));
});

test('ends a text that breaks off at its last word', () => {
    for (const [text, words] of [
        ['event', 'event'],
        ['event "Lantern night"\n', '"Lantern night"'],
        ['menu { course soup "Soup" { lasts', 'lasts'],
    ] as const) {
        const [problem] = parseText(text).problems.filter(({ message }) => !message.includes('closing brace'));
        expect(text.slice(problem!.start, problem!.end)).toBe(words);
    }
});

test('every node knows its place', () => {
    const text = supperWith('served in soup-bowl at 64 °C', 'served in soup-bowl at\n        latss 3 min');
    for (const node of AstUtils.streamAst(parseText(text).tree)) {
        const { offset, end } = node.$cstNode!;
        expect(offset).toBeGreaterThanOrEqual(0);
        expect(end).toBeLessThanOrEqual(text.length);
        expect(offset).toBeLessThanOrEqual(end);
    }
});
