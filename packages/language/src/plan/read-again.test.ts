import { describe, expect, it } from 'vitest';
import { FileReader } from './read-text.js';
import type { Reading } from './types.js';

const MENU = `menu {
    course soup "Squash soup" {
        served in soup-bowl at 64 °C
    }
    // The main
    course main {
        eaten with dinner-fork
        dish "Chicken" is poultry for the rest { served on dinner-plate }
        dish "Squash" is vegetable-main for vegetarian { served on dinner-plate }
    }
}
house "Hall" { own 40 soup-spoon }
`;

/** What is read of a text, and of the same text changed, by the same reader. */
function readTwice(change: (text: string) => string): { readonly before: Reading; readonly now: Reading } {
    const reader = new FileReader('plan.cover');
    const before = reader.read(MENU);
    return { before, now: reader.read(change(MENU)) };
}

describe('a text read again', () => {
    it('is the same reading where only a comment has changed, its places as they are now', () => {
        const { before, now } = readTwice((text) => text.replace('// The main', '// The main course'));
        expect(now).toBe(before);
        const moved = MENU.replace('// The main', '// The main course');
        const [menu] = now.menus;
        expect(moved.slice(menu!.courses[1]!.head.start, menu!.courses[1]!.head.end)).toBe('course main');
        expect(moved.slice(menu!.courses[0]!.head.start, menu!.courses[0]!.head.end)).toBe('course soup "Squash soup"');
        expect(moved.slice(now.houses[0]!.stock[0]!.origin.start)).toMatch(/^40 soup-spoon/);
    });

    it('keeps the courses that say what they said', () => {
        const { before, now } = readTwice((text) => text.replace('"Chicken"', '"Chicken pie"'));
        const [soup, main] = now.menus[0]!.courses;
        expect(soup).toBe(before.menus[0]!.courses[0]);
        expect(main).not.toBe(before.menus[0]!.courses[1]);
        expect(main!.dishes[1]).toBe(before.menus[0]!.courses[1]!.dishes[1]);
        expect(now.houses[0]).toBe(before.houses[0]);
    });

    it('keeps what stands behind something new', () => {
        const { before, now } = readTwice((text) =>
            text.replace('house "Hall" {', 'house "Hall" { own 12 teaspoon, 12 fish-fork\n   '),
        );
        expect(now.houses[0]!.stock.map(({ piece }) => piece.name)).toEqual(['teaspoon', 'fish-fork', 'soup-spoon']);
        expect(now.houses[0]!.stock[2]).toBe(before.houses[0]!.stock[0]);
    });

    it('takes nothing for kept that stands in another thing now', () => {
        const clause = '        eaten with dinner-fork\n';
        const { before, now } = readTwice((text) =>
            text.replace(clause, '').replace('"Chicken" is poultry for the rest {', (head) => `${head}\n${clause}`),
        );
        expect(now.menus[0]!.courses[1]!.dishes[0]).not.toBe(before.menus[0]!.courses[1]!.dishes[0]);
    });

    it.each([
        ['a course before others', ['    course main', '    course salad { lasts 10 min }\n    course main']],
        ['a course taken out', [MENU.slice(MENU.indexOf('    course soup'), MENU.indexOf('    // The main')), '']],
        ['courses moved', ['menu {', 'house "Other" { own 2 teaspoon }\nmenu { // Below']],
        ['a mistake that stays in another course', ['eaten with dinner-fork', 'eaten wiht'], ['Squash soup', 'Soup']],
        ['two mistakes', ['at 64 °C', 'at'], ['for the rest', 'fro the rest'], ['at', 'at 64 °C']],
        [
            'the same written twice',
            ['// The main', 'served in soup-bowl'],
            ['served in soup-bowl\n    course', 'course'],
        ],
    ])('is as read afresh: %s', (_, ...changes) => {
        const reader = new FileReader('plan.cover');
        let text = MENU;
        reader.read(text);
        for (const [words, instead] of [...changes, ['own 40', 'own 41'], ['"Chicken"', '"Chicken pie"']] as const) {
            expect(text).toContain(words!);
            text = text.replace(words!, instead!);
            expect(reader.read(text)).toEqual(new FileReader('plan.cover').read(text));
        }
    });

    // The same is noted twice, as far apart as what is taken out is long: the second stood where the first would come from.
    it('takes nothing out of a course that was not touched', () => {
        const between = 'minutes\n    }\n    course soup { lasts 9 ';
        const menu = (hidden: string) =>
            `menu {\n    course salad {\n        ${hidden} lasts 9 ${between}minutes }\n}\n`;
        const reader = new FileReader('plan.cover');
        reader.read(menu(`//${'x'.repeat(between.length - 2)}`));
        const now = menu('');
        expect(reader.read(now)).toEqual(new FileReader('plan.cover').read(now));
    });
});
