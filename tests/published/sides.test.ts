/** Which piece lies where, against rows 2.1 to 2.28 and 7.23 to 7.44 of table-service.md. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { course, place } from '../support/evening.js';

const at = (laying: string, ...courses: string[]) => place({ laying, menu: courses.join('\n') });

describe('the order of use', () => {
    it('runs from the outside in on both sides, whatever the menu (table-service 2.1, nine sources)', () => {
        const eaten: Readonly<Record<string, readonly [fork: string, knife: string]>> = {
            fish: ['fish-fork', 'fish-knife'],
            roast: ['dinner-fork', 'dinner-knife'],
            salad: ['salad-fork', 'salad-knife'],
            cheese: ['cheese-fork', 'cheese-knife'],
        };
        const menus = fc.shuffledSubarray(['fish', 'roast', 'salad'], { minLength: 1 });
        fc.assert(
            fc.property(menus, (kinds) => {
                const courses = kinds.map((kind) => course(kind, `eaten with ${eaten[kind]!.join(' and ')}`));
                const { left, right } = at('limit: none', ...courses);
                expect(left).toEqual(kinds.map((kind) => eaten[kind]![0]));
                expect(right).toEqual(kinds.map((kind) => eaten[kind]![1]));
            }),
        );
    });

    it('puts the fish knife outside the dinner knife (table-service 2.15, HARLAND and MIL)', () => {
        expect(at('', course('fish'), course('roast')).right).toEqual(['fish-knife', 'dinner-knife']);
    });

    it('puts salad fork and knife nearest the plate where salad follows the meat (table-service 2.16, MIL)', () => {
        const { left, right } = at('', course('roast'), course('salad'));
        expect([left.at(-1), right.at(-1)]).toEqual(['salad-fork', 'salad-knife']);
    });

    it('puts them outermost where salad comes first (table-service 2.16 and WS-4, SILVER)', () => {
        const { left, right } = at('salad: before-main', course('salad'), course('roast'));
        expect([left[0], right[0]]).toEqual(['salad-fork', 'salad-knife']);
    });

    it('gives each course its own set, and none is used again (table-service 2.28, MIL and COOKE)', () => {
        const { left, right } = at('limit: none', course('fish'), course('entree'), course('roast'));
        expect(left).toHaveLength(3);
        expect(right).toHaveLength(3);
    });
});

describe('left and right', () => {
    const dinner = [course('oysters'), course('soup'), course('fish'), course('roast')];

    it('forks left, knives right, spoons right of the knives (table-service 2.2)', () => {
        const { left, right } = at('limit: none', ...dinner.slice(1));
        expect(left.every((piece) => piece.endsWith('-fork'))).toBe(true);
        expect(right).toEqual(['soup-spoon', 'fish-knife', 'dinner-knife']);
    });

    it('the oyster fork right and outermost, beyond the spoons (table-service 2.5, seven sources)', () => {
        expect(at('limit: none', ...dinner).right[0]).toBe('oyster-fork');
    });

    it('the oyster fork left and outermost (table-service 1.10, HARLAND)', () => {
        const { left, right } = at('limit: none  oyster-fork: left', ...dinner);
        expect(left[0]).toBe('oyster-fork');
        expect(right).not.toContain('oyster-fork');
    });

    it('the oyster fork across the soup spoon is at the right all the same (table-service 2.6, GREER)', () => {
        expect(at('limit: none  oyster-fork: across-the-spoon', ...dinner).right).toContain('oyster-fork');
    });

    it('with exactly two exceptions: oyster fork and butter spreader (table-service 2.8, UFV-C)', () => {
        const { left, right, rules } = at(
            'limit: none',
            'bread from soup on bread-plate with butter-spreader { contains wheat  butter { contains milk } }',
            ...dinner,
        );
        expect(right.filter((piece) => piece.endsWith('-fork'))).toEqual(['oyster-fork']);
        expect(left).not.toContain('butter-spreader');
        expect(right).not.toContain('butter-spreader');
        expect(rules).not.toContain('bread-without-spreader');
    });
});

describe('a fork without a knife', () => {
    const salad = course('salad', 'eaten with salad-fork');

    it('lies at the right in the place of the knife (table-service 2.9, LANS ch. I; 2.10, GREER)', () => {
        expect(at('fork-without-knife: right', salad)).toMatchObject({ left: [], right: ['salad-fork'] });
    });

    it('lies left with the others, as many prefer (table-service 2.8, UFV-C; 2.10, GREER)', () => {
        expect(at('fork-without-knife: left', salad)).toMatchObject({ left: ['salad-fork'], right: [] });
    });

    it('moves only where no knife is laid for that course (table-service 2.10, GREER)', () => {
        const { left, right } = at('fork-without-knife: right', course('roast'), salad);
        expect(left).toEqual(['dinner-fork']);
        expect(right).toContain('salad-fork');
    });
});

describe('spoons and knives', () => {
    const menu = [course('fish', 'eaten with fish-fork and fish-knife'), course('soup'), course('roast')];

    it('spoons grouped outside the knives (table-service 2.11, GREER)', () => {
        expect(at('spoons: outside-knives', ...menu).right).toEqual(['soup-spoon', 'fish-knife', 'dinner-knife']);
    });

    it('or all in order of use: a starter knife outside the soup spoon (table-service 2.12, IHM-TDH)', () => {
        expect(at('spoons: order-of-use', ...menu).right).toEqual(['fish-knife', 'soup-spoon', 'dinner-knife']);
    });

    it('which is the same where soup comes first (table-service 2.11 and 2.12)', () => {
        const soupFirst = [course('soup'), course('fish'), course('roast')];
        expect(at('spoons: order-of-use', ...soupFirst).right).toEqual(at('', ...soupFirst).right);
    });

    it('the coffee spoon on the saucer (table-service 2.26, UFV-C and UFV-A; 7.40)', () => {
        const coffee = 'coffee after dessert { contains nothing }';
        expect(at('', course('roast'), course('dessert'), coffee)).toMatchObject({
            right: ['dinner-knife'],
            saucer: ['coffee-spoon'],
        });
    });

    it('or laid, right of the knives (table-service 7.40, SILVER)', () => {
        const coffee = 'coffee after dessert with teaspoon { contains nothing }';
        const { right, saucer } = at('coffee-spoon: laid', course('roast'), course('dessert'), coffee);
        expect(right).toEqual(['teaspoon', 'dinner-knife']);
        expect(saucer).toEqual([]);
    });
});

describe('which piece for which dish', () => {
    const isJudged = (kind: string, pieces: string): boolean =>
        at('', course(kind, `eaten with ${pieces}`)).rules.some((rule) => /piece-suits-dish|matched-pair/.test(rule));

    it.each([
        ['oysters', 'oyster-fork', '7.23, LANS'],
        ['shrimp-cocktail', 'oyster-fork', '7.23, LANS and NAVY-FC'],
        ['fruit-cocktail', 'teaspoon', '7.24, AWCB; 7.25, IHM-ACC'],
        ['soup', 'soup-spoon', '7.26, MORTON'],
        ['soup', 'tablespoon', '7.26, MORTON'],
        ['clear-soup', 'bouillon-spoon', '3.73'],
        ['clear-soup', 'dessert-spoon', '7.28, IHM-COVER'],
        ['fish', 'fish-fork and fish-knife', '7.29, MORTON'],
        ['fish', 'fish-fork', '7.29, GREER'],
        ['entree', 'dinner-fork', '7.33, MORTON'],
        ['roast', 'dinner-fork and dinner-knife', '7.34, MIL'],
        ['salad', 'salad-fork and salad-knife', '7.35, MIL'],
        ['salad', 'salad-fork', '7.35, HUMPHRY'],
        ['dessert', 'dessert-fork and dessert-spoon', '7.38, ROBERTS'],
        ['dessert', 'dessert-fork', '7.38, SILVER'],
        ['fruit', 'fruit-fork and fruit-knife', '7.39, IHM-COVER'],
        ['lobster', 'lobster-fork', '7.41, IHM-SPEC'],
    ])('%s with %s suits (table-service %s)', (kind, pieces) => {
        expect(isJudged(kind, pieces)).toBe(false);
    });

    it.each([
        ['soup', 'dinner-fork', '7.26'],
        ['soup', 'oyster-fork', '7.26'],
        ['fish', 'fish-fork and steak-knife', '7.29'],
        ['roast', 'fish-fork and fish-knife', '2.28'],
        ['salad', 'oyster-fork', '7.35'],
        ['intermezzo', 'soup-spoon', '7.36'],
    ])('%s with %s does not (table-service %s)', (kind, pieces) => {
        expect(isJudged(kind, pieces)).toBe(true);
    });
});
