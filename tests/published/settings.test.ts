/**
 * The ten worked settings of table-service.md, each compiled under the customs its source declares and compared piece by piece,
 * outer to inner, with the printed answer. Where the source is silent the test is silent.
 */
import { readFileSync } from 'node:fs';
import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';

interface Piece {
    readonly piece: string;
}

interface Step {
    readonly title: string;
    readonly sort: string;
    readonly cleared: readonly string[];
    readonly standing: readonly string[];
    readonly bare: boolean;
}

/** The part of the compiled plan that the settings are about. */
interface Plan {
    readonly service: {
        readonly covers: readonly {
            readonly cover: {
                readonly servicePlate?: string;
                readonly napkin: string;
                readonly breadPlate?: Piece;
            } & Readonly<Record<'left' | 'right' | 'above' | 'glasses' | 'brought', readonly Piece[]>>;
            readonly steps: readonly Step[];
        }[];
    };
}

function setting(name: string) {
    const file = `${name}.cover`;
    const text = readFileSync(new URL(`settings/${file}`, import.meta.url), 'utf8');
    const checked = check(file, filesInMemory({ [file]: text }));
    expect(checked.broken).toEqual([]);
    expect(checked.findings.filter((finding) => finding.severity === 'error')).toEqual([]);
    const plan = planJson(checked) as unknown as Plan;
    const { cover, steps } = plan.service.covers[0]!;
    const names = (list: readonly Piece[]): string[] => list.map((piece) => piece.piece);
    return {
        rules: checked.findings.map((finding) => finding.rule),
        left: names(cover.left),
        right: names(cover.right),
        above: names(cover.above),
        glasses: names(cover.glasses),
        brought: names(cover.brought),
        cover,
        steps,
    };
}

/** What stands at the cover once the step of this title is over. */
function standingAfter(steps: readonly Step[], title: string): readonly string[] {
    return steps.find((step) => step.title === title)!.standing;
}

describe('WS-1 US military formal dinner (MIL)', () => {
    const ws = setting('ws-1-military');
    it('lays left and right, outer to inner', () => {
        expect(ws.left).toEqual(['fish-fork', 'dinner-fork', 'salad-fork']);
        expect(ws.right).toEqual(['oyster-fork', 'soup-spoon', 'fish-knife', 'dinner-knife', 'salad-knife']);
    });
    it('folds the napkin on the service plate, with the butter plate upper left', () => {
        expect(ws.cover.servicePlate).toBe('service-plate');
        expect(ws.cover.napkin).toBe('on-plate');
        expect(ws.cover.breadPlate?.piece).toBe('bread-plate');
    });
    it('stands water, white and red from left to right', () => {
        expect(ws.glasses).toEqual(['water-glass', 'white-wine-glass', 'red-wine-glass']);
    });
    it('lays no dessert piece', () => {
        expect([...ws.left, ...ws.right, ...ws.above].filter((piece) => piece.startsWith('dessert'))).toEqual([]);
    });
    it('keeps within three forks, the oyster fork apart, and three knives', () => {
        expect(ws.rules).not.toContain('three-per-side');
    });
    it('takes every set of pieces and its glass away with its course', () => {
        for (const [title, gone] of [
            ['Clear Fish', ['3 fish-fork', '3 fish-knife', '3 white-wine-glass']],
            ['Clear Meat', ['4 dinner-fork', '4 dinner-knife', '4 red-wine-glass']],
        ] as const) {
            const step = ws.steps.find((each) => each.title === title)!;
            expect(step.cleared).toEqual(expect.arrayContaining([...gone]));
        }
    });
});

describe('WS-2 US Navy wardroom formal dinner (NAVY pp. 220–221)', () => {
    const ws = setting('ws-2-navy');
    it('lays left and right, outer to inner', () => {
        expect(ws.left).toEqual(['dinner-fork', 'salad-fork']);
        expect(ws.right).toEqual(['oyster-fork', 'soup-spoon', 'dinner-knife']);
    });
    it('has the service plate, salt and pepper, and glasses for water and wine on the table at the start', () => {
        expect(standingAfter(ws.steps, 'Guests sit')).toEqual(
            expect.arrayContaining(['service-plate service-plate', 'salt-and-pepper salt-and-pepper']),
        );
        expect(ws.glasses).toEqual(['water-glass', 'red-wine-glass']);
    });
    it('serves shrimp and soup on the service plate and swaps it for the heated dinner plate', () => {
        const onServicePlate = (title: string): boolean =>
            standingAfter(ws.steps, title).includes('service-plate service-plate');
        expect(onServicePlate('Serve Shrimp cocktail')).toBe(true);
        expect(onServicePlate('Serve Soup')).toBe(true);
        expect(onServicePlate('Serve Main course')).toBe(false);
    });
    it('leaves no guest without a plate before the main course is in front of them', () => {
        const until = ws.steps.findIndex((step) => step.title === 'Serve Main course');
        expect(ws.steps.slice(0, until + 1).filter((step) => step.bare)).toEqual([]);
    });
    it('leaves only glasses of the original setting after the salad, and crumbs then', () => {
        const standing = standingAfter(ws.steps, 'Clear Salad').filter((id) => !/napkin|salt-and-pepper/.test(id));
        expect(standing).toEqual(['glass water-glass', '3 red-wine-glass']);
        const titles = ws.steps.map((step) => step.title);
        expect(titles[titles.indexOf('Clear Salad') + 1]).toBe('Crumb the table');
    });
    it('brings dessert with its silver, and coffee after', () => {
        expect(ws.brought).toEqual(['dessert-fork', 'dessert-spoon']);
        expect(ws.steps.at(-2)!.title).toBe('Serve coffee');
    });
});

describe('WS-4 Silver Institute settings (SILVER)', () => {
    it.each([
        ['four', ['salad-fork', 'place-fork'], ['teaspoon', 'place-knife']],
        ['five', ['place-fork', 'salad-fork'], ['soup-spoon', 'teaspoon', 'place-knife']],
        ['six', ['first-course-fork', 'place-fork'], ['teaspoon', 'first-course-knife', 'place-knife']],
        ['seven', ['first-course-fork', 'place-fork'], ['soup-spoon', 'teaspoon', 'first-course-knife', 'place-knife']],
    ])('lays the %s-piece setting', (count, left, right) => {
        const ws = setting(`ws-4-silver-${count}`);
        expect({ left: ws.left, right: ws.right }).toEqual({ left, right });
        if (count === 'six' || count === 'seven') {
            expect(ws.brought).toEqual(['dessert-fork']);
        }
    });
});

describe('WS-5 dinner in courses, 1892 (MORTON)', () => {
    it('lays the pieces it lists where a house has no limit', () => {
        const ws = setting('ws-5-morton-none');
        const count = (name: string): number => [...ws.left, ...ws.right].filter((piece) => piece === name).length;
        expect({ large: count('dinner-knife'), small: count('fish-knife') }).toEqual({ large: 2, small: 1 });
        expect({ large: count('dinner-fork'), small: count('fish-fork'), oyster: count('oyster-fork') }).toEqual({
            large: 3,
            small: 1,
            oyster: 1,
        });
        expect(count('soup-spoon')).toBe(1);
        expect(ws.rules).not.toContain('three-per-side');
    });
    it('is flagged under a limit of three forks', () => {
        expect(setting('ws-5-morton-three').rules).toContain('three-per-side');
    });
});

describe('WS-6 dinner, 1903 (HARLAND p. 21)', () => {
    const ws = setting('ws-6-harland');
    it('lays left and right, outer to inner, with the oyster fork at the left', () => {
        expect(ws.left).toEqual(['oyster-fork', 'fish-fork', 'dinner-fork', 'dinner-fork']);
        expect(ws.right).toEqual(['soup-spoon', 'fish-knife', 'dinner-knife', 'dinner-knife']);
        expect(ws.cover.napkin).toBe('left');
    });
    it('is flagged with four forks at the left under a limit of three', () => {
        expect(setting('ws-6-harland-limit').rules).toContain('three-per-side');
    });
});

describe('WS-7 formal dinner, 1907 (LOWNEY)', () => {
    const ws = setting('ws-7-lowney');
    it('lays oyster fork, soup spoon, then knives in order of use at the right', () => {
        expect(ws.right.slice(0, 3)).toEqual(['oyster-fork', 'soup-spoon', 'fish-knife']);
        expect(ws.right.slice(3).every((piece) => piece === 'dinner-knife')).toBe(true);
    });
    it('lays the other forks in order of use at the left, and what is past the limit just before its course', () => {
        expect(ws.left).toEqual(['fish-fork', 'dinner-fork', 'dinner-fork']);
        expect(ws.brought.slice(0, 2)).toEqual(['dinner-fork', 'salad-fork']);
        const titles = ws.steps.map((step) => step.title);
        expect(titles.indexOf('Bring what Game is eaten with')).toBe(titles.indexOf('Serve Game') - 1);
    });
    it('stands wine glasses to the right of the water in order of use', () => {
        expect(ws.glasses).toEqual(['water-glass', 'white-wine-glass', 'sherry-glass', 'red-wine-glass']);
    });
});

describe('WS-8 formal dinner, 1922 (LANS chs. I, II, VI)', () => {
    const ws = setting('ws-8-lansdown');
    it('stops at three forks at the left', () => {
        expect(ws.left).toEqual(['fish-fork', 'dinner-fork', 'dinner-fork']);
    });
    it('lays the right side outer to inner', () => {
        expect(ws.right).toEqual(['oyster-fork', 'soup-spoon', 'fish-knife', 'dinner-knife', 'dinner-knife']);
    });
    it('brings the salad fork and the dessert silver with their courses', () => {
        expect(ws.brought).toEqual(['salad-fork', 'dessert-fork', 'dessert-spoon']);
        expect(ws.cover.breadPlate).toBeUndefined();
        expect(ws.rules).not.toContain('three-per-side');
    });
});

describe('WS-12 glass plans', () => {
    it('stands the first-used wine nearest the knife (BEETON07)', () => {
        const wines = setting('ws-12-glasses-beeton').glasses.filter((glass) => glass !== 'water-glass');
        expect(wines).toEqual(['sherry-glass', 'sparkling-flute', 'claret-glass']);
        expect(setting('ws-12-glasses-beeton').glasses[0]).toBe('sherry-glass');
    });
    it('accepts six glasses where the house lays six (WHCB p. 508) and flags them where it does not', () => {
        const ws = setting('ws-12-glasses-white-house');
        expect(ws.glasses).toHaveLength(6);
        expect(ws.rules).not.toContain('too-many-glasses');
        expect(setting('ws-12-glasses-white-house-default').rules).toContain('too-many-glasses');
    });
    it('stands water, white, red from left to right (MIL)', () => {
        expect(setting('ws-12-glasses-military').glasses).toEqual([
            'water-glass',
            'white-wine-glass',
            'red-wine-glass',
        ]);
    });
    it('stands up to three wines to the right of the water in order of use (LANS)', () => {
        const ws = setting('ws-12-glasses-lansdown');
        expect(ws.glasses).toEqual(['water-glass', 'sherry-glass', 'white-wine-glass', 'sparkling-flute']);
        expect(ws.rules).not.toContain('too-many-glasses');
    });
});

describe('WS-14 meal without a knife (LANS ch. I)', () => {
    it('gives the fork the place of the knife, with the teaspoon outside it', () => {
        const ws = setting('ws-14-no-knife');
        expect({ left: ws.left, right: ws.right }).toEqual({ left: [], right: ['teaspoon', 'luncheon-fork'] });
    });
});

describe('WS-15 twelve-course dinner with wines (FARMER)', () => {
    const ws = setting('ws-15-farmer');
    it('accepts its order of courses under its own customs', () => {
        expect(ws.rules).not.toContain('courses-out-of-order');
        expect(ws.steps.filter((step) => step.sort === 'serve')).toHaveLength(12);
    });
    it('pours sherry, champagne, white and claret in that order, each in a glass that suits it and at a fitting temperature', () => {
        expect(ws.glasses.filter((glass) => glass !== 'water-glass')).toEqual([
            'sherry-glass',
            'sparkling-flute',
            'white-wine-glass',
            'claret-glass',
        ]);
        expect(ws.rules).not.toContain('glass-suits-drink');
        expect(ws.rules).not.toContain('wine-temperature');
    });
    it('serves coffee last', () => {
        expect(ws.steps.at(-2)!.sort).toBe('coffee');
    });
});

describe('row 1.11 six forks laid at once (HWL p. 448)', () => {
    it('is flagged under a limit of three and accepted under none', () => {
        const forks = ['oyster-fork', 'fish-fork', 'dinner-fork', 'salad-fork', 'dinner-fork', 'dessert-fork'];
        expect(
            setting('row-1-11-six-forks-none')
                .left.concat(setting('row-1-11-six-forks-none').right)
                .filter((piece) => piece.endsWith('-fork'))
                .toSorted(),
        ).toEqual(forks.toSorted());
        expect(setting('row-1-11-six-forks-none').rules).not.toContain('three-per-side');
        expect(setting('row-1-11-six-forks-three').rules).toContain('three-per-side');
    });
});
