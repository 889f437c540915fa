/** Napkin, bread plate, service plate, glasses and clearing, against parts 4 to 6, 9 and 11 of table-service.md. */
import { describe, expect, it } from 'vitest';
import { course, place, stepOf, type Place } from '../support/evening.js';

const at = (laying: string, ...courses: string[]) => place({ laying, menu: courses.join('\n') });
const bread = 'bread from soup on bread-plate with butter-spreader { contains wheat  butter { contains milk } }';
const dinner = [course('soup'), course('fish'), course('roast'), course('salad'), course('dessert')];

/** The title of the step in which a piece leaves. */
const leavesIn = (evening: Place, piece: string): string | undefined =>
    evening.steps.find(({ cleared }) => cleared.some((id) => id.endsWith(` ${piece}`)))?.title;

describe('the napkin', () => {
    it.each([
        ['left', '5.1, LANS and five more'],
        ['on-plate', '5.2, MIL, UFV-C and WHCB'],
        ['below-bread-plate', '5.4, BLUE and UFV-B'],
    ])('lies %s by custom (table-service %s)', (where) => {
        expect(at(`napkin: ${where}`, ...dinner).napkin).toBe(where);
    });

    it('moves left of the forks where a first course is waiting on the plate (table-service 5.3, UFV-C)', () => {
        const waiting = course('appetizer', 'served on salad-plate at 8 °C  preset');
        expect(at('napkin: on-plate', waiting, ...dinner).napkin).toBe('left');
    });
});

describe('the bread plate', () => {
    it('is laid where bread is served (table-service 5.8 and 5.11, MIL)', () => {
        expect(at('', bread, ...dinner).breadPlate).toBe('bread-plate');
    });

    it('is not laid at a formal dinner (table-service 5.9, ALLENCB and four more)', () => {
        const plain = 'bread from soup { contains wheat }';
        expect(at('bread-plate: none', plain, ...dinner).breadPlate).toBeUndefined();
        expect(at('bread-plate: none', plain, ...dinner).rules).not.toContain('bread-without-plate');
    });

    it('leaves after the salad (table-service 5.13 and 11.1, AWCB and UFV-A)', () => {
        const cheese = course('cheese', 'served on cheese-plate');
        const menu = [...dinner.slice(0, 4), cheese, dinner[4]!];
        expect(leavesIn(at('bread-leaves: after-salad  cheese: before-dessert', bread, ...menu), 'bread-plate')).toBe(
            'Clear salad',
        );
    });

    it('leaves before dessert (table-service 5.14, AWCB42 p. 81)', () => {
        const cheese = course('cheese', 'served on cheese-plate');
        const menu = [...dinner.slice(0, 4), cheese, dinner[4]!];
        expect(
            leavesIn(at('bread-leaves: before-dessert  cheese: before-dessert', bread, ...menu), 'bread-plate'),
        ).toBe('Clear cheese');
    });

    it('leaves at one and the same moment by both where dessert follows the salad (table-service 5.13 and 5.14)', () => {
        const by = (custom: string) => leavesIn(at(`bread-leaves: ${custom}`, bread, ...dinner), 'bread-plate');
        expect([by('after-salad'), by('before-dessert')]).toEqual(['Clear salad', 'Clear salad']);
    });

    it('leaves with the soup it was eaten with (table-service 11.2, WF)', () => {
        expect(leavesIn(at('bread-leaves: with-its-course', bread, ...dinner), 'bread-plate')).toBe('Clear soup');
    });

    it('takes its spreader along (table-service 5.13, AWCB)', () => {
        const evening = at('', bread, ...dinner);
        expect(leavesIn(evening, 'butter-spreader')).toBe(leavesIn(evening, 'bread-plate'));
    });
});

describe('salt and pepper', () => {
    const cheese = course('cheese', 'served on cheese-plate');
    const menu = [...dinner.slice(0, 4), cheese, dinner[4]!];

    it('leave before dessert (table-service 5.14 and 6.20)', () => {
        const evening = at('salt-and-pepper-leave: before-dessert  cheese: before-dessert', ...menu);
        expect(leavesIn(evening, 'salt-and-pepper')).toBe('Crumb the table');
    });

    it('leave with the salad, as the bread plates do (table-service 5.13, AWCB and UFV-A)', () => {
        const evening = at('salt-and-pepper-leave: after-salad  cheese: before-dessert', ...menu);
        expect(leavesIn(evening, 'salt-and-pepper')).toBe('Clear salad');
    });
});

describe('the service plate', () => {
    const menu = [course('appetizer', 'served on salad-plate at 8 °C'), ...dinner];

    it('lies there when guests sit and holds the first courses (table-service 5.15, NAVY p. 220)', () => {
        const evening = at('', ...menu);
        expect(evening.servicePlate).toBe('service-plate');
        expect(evening.steps[0]!.standing).toContain('service-plate service-plate');
        expect(stepOf(evening, 'Serve appetizer').standing).toContain('service-plate service-plate');
    });

    it('stays until the hot plate of the course after the soup takes its place (table-service 5.16, NAVY and three more)', () => {
        expect(leavesIn(at('service-plate: until-hot-plate', ...menu), 'service-plate')).toBe('Serve fish');
    });

    it('leaves together with the soup plate (table-service 5.17, AWCB and EICHLER)', () => {
        expect(leavesIn(at('service-plate: with-soup-plate', ...menu), 'service-plate')).toBe('Clear soup');
    });

    it('stays for the soup where a cold fish course comes before it (table-service 5.18, ETS)', () => {
        const coldFish = course('fish', 'served on fish-plate at 6 °C');
        const evening = at('', coldFish, course('soup'), course('roast'));
        expect(stepOf(evening, 'Serve soup').standing).toContain('service-plate service-plate');
    });

    it('leaves no guest without a plate before the salad is cleared (table-service 5.19, AWCB and three more)', () => {
        const { steps } = at('service-plate: until-hot-plate', ...menu);
        const served = steps.findIndex(({ title }) => title === 'Serve fish');
        expect(steps.slice(0, served + 1).filter(({ bare }) => bare)).toEqual([]);
    });
});

describe('clearing', () => {
    const evening = at('limit: none', bread, ...dinner);

    it('takes everything of one course before the next is served (table-service 6.15, WF and four more)', () => {
        dinner.forEach((_, index) => {
            const own = new RegExp(`^${index + 1} `);
            const clear = evening.steps.filter(({ sort }) => sort === 'clear')[index]!;
            const after = evening.steps.slice(evening.steps.indexOf(clear));
            expect(after.flatMap(({ standing }) => standing.filter((id) => own.test(id)))).toEqual([]);
        });
    });

    it('takes each set with its course, used or not (table-service 6.16, MIL)', () => {
        const { cleared } = stepOf(evening, 'Clear fish');
        expect(cleared).toEqual(expect.arrayContaining(['2 fish-fork', '2 fish-knife']));
    });

    it('is followed by crumbing after the salad, before the dessert (table-service 6.20 and 6.24, LOWNEY and BENTON)', () => {
        const titles = evening.steps.map(({ title }) => title);
        expect(titles.indexOf('Crumb the table')).toBe(titles.indexOf('Clear salad') + 1);
        expect(titles.indexOf('Crumb the table')).toBe(titles.indexOf('Serve dessert') - 1);
    });

    it('finds a first course that waits on the table when guests sit (table-service 6.31, ALLENCB and EICHLER)', () => {
        const waiting = course('appetizer', 'served on salad-plate at 8 °C  preset');
        const { steps } = at('', waiting, ...dinner);
        expect(steps[0]!.standing).toContain('1 salad-plate');
        expect(steps.map(({ title }) => title)).not.toContain('Serve appetizer');
    });

    it('finds it there too where the house has every first course waiting (table-service 6.31, ALLENCB and EICHLER)', () => {
        const first = course('appetizer', 'served on salad-plate at 8 °C');
        expect(at('first-course: waiting', first, ...dinner).steps[0]!.standing).toContain('1 salad-plate');
    });
});

describe('glasses', () => {
    const white = 'pour "White" 100 ml into white-wine-glass is light-white-wine';
    const red = 'pour "Red" 100 ml into red-wine-glass is full-red-wine';
    const sparkling = 'pour "Sparkling" 100 ml into sparkling-flute is sparkling-wine';

    it('stand in order of use beside the water (table-service 4.2, LOWNEY; 4.5, LANS ch. VI)', () => {
        const menu = [course('fish', red), course('roast', white)];
        expect(at('glass-order: in-order-of-use', ...menu).glasses).toEqual([
            'water-glass',
            'red-wine-glass',
            'white-wine-glass',
        ]);
    });

    it('stand water, white, red from the left, whatever the menu, where the custom says so (table-service 4.6, MIL)', () => {
        const menu = [course('fish', red), course('roast', white)];
        expect(at('glass-order: white-before-red', ...menu).glasses).toEqual([
            'water-glass',
            'white-wine-glass',
            'red-wine-glass',
        ]);
    });

    it('are one for each kind of wine poured (table-service 4.15, BAR-A and LANS)', () => {
        const menu = [course('fish', white), course('roast', red), course('dessert', sparkling)];
        expect(at('', ...menu).glasses).toEqual([
            'water-glass',
            'white-wine-glass',
            'red-wine-glass',
            'sparkling-flute',
        ]);
    });

    it('stay through the dinner (table-service 4.30, AWCB, LANS and NAVY)', () => {
        const evening = at('glasses-leave: stay', course('fish', white), course('roast'));
        expect(leavesIn(evening, 'white-wine-glass')).toBe('Guests leave');
    });

    it('each leave with the course it was set for (table-service 4.31, MIL)', () => {
        const evening = at('glasses-leave: with-their-course', course('fish', white), course('roast'));
        expect(leavesIn(evening, 'white-wine-glass')).toBe('Clear fish');
    });

    it('for the dessert wine are put on afterwards where the plan says so (table-service 4.32, BEETON07)', () => {
        const evening = at('', course('roast'), course('dessert', `${sparkling}, brought with the course`));
        expect(evening.glasses).toEqual(['water-glass']);
        expect(stepOf(evening, 'Bring what dessert is eaten with').brought).toContain('2 sparkling-flute');
    });
});

describe('how full a glass may be, as a custom', () => {
    const isOver = (laying: string, kind: string, ml: number): boolean =>
        place({
            laying,
            menu: course('main', `pour "Drink" ${ml} ml into highball-glass is ${kind}`),
        }).rules.includes('pour-overfills-glass');
    const capacity = (kind: string, laying: string): number => {
        let most = 0;
        for (let ml = 1; ml < 1000 && !isOver(laying, kind, ml); ml += 1) {
            most = ml;
        }
        return most;
    };
    const brim = capacity('beer', '');

    it.each([
        ['wine-fill: 33 %', 'light-white-wine', 1 / 3, '4.23, POUR'],
        ['wine-fill: 50 %', 'full-red-wine', 1 / 2, '4.24, POUR'],
        ['wine-fill: 67 %', 'full-red-wine', 2 / 3, '4.22, BAR-A'],
        ['sparkling-fill: 75 %', 'sparkling-wine', 3 / 4, '4.25, POUR'],
    ])('%s for %s (table-service %s)', (laying, kind, share) => {
        expect(capacity(kind, laying) / brim).toBeCloseTo(share, 1);
    });

    it.each([
        ['water-fill: 67 %', '4.19, UFV-A', true],
        ['water-fill: 100 %', '4.20, LANS', false],
        ['wine-fill: 100 %', '4.20, LANS', false],
    ])('`%s` (table-service %s): accepted %s', (laying, _, accepted) => {
        expect(!place({ laying, menu: dinner.join('\n') }).rules.includes('custom-out-of-range')).toBe(accepted);
    });
});

describe('plates and bowls', () => {
    const found = (clauses: string, rule: string) => at('', course('main', clauses)).rules.includes(rule);

    it('are hot for hot dishes and cold for cold ones (table-service 9.1, LANS, AWCB42 and BCHE)', () => {
        expect(found('served on dinner-plate at 60 °C', 'hot-dish-cold-plate')).toBe(true);
        expect(found('served on dinner-plate warmed at 60 °C', 'hot-dish-cold-plate')).toBe(false);
        expect(found('served on dinner-plate warmed at 6 °C', 'cold-dish-warm-plate')).toBe(true);
        expect(found('served on dinner-plate chilled at 6 °C', 'cold-dish-warm-plate')).toBe(false);
    });

    it('are heated for soup (table-service 9.2, LANS ch. V)', () => {
        const soup = (clauses: string) => at('', course('soup', clauses)).rules;
        expect(soup('served in soup-plate at 65 °C')).toContain('hot-soup-cold-bowl');
        expect(soup('served in soup-plate warmed at 65 °C')).not.toContain('hot-soup-cold-bowl');
    });

    it('are cold for salad (table-service 9.6, AWCB)', () => {
        expect(at('', course('salad', 'served on salad-plate warmed at 6 °C')).rules).toContain('cold-dish-warm-plate');
    });
});

describe('coffee', () => {
    it('comes after the dessert, last of all (table-service 5.27, NAVY p. 221; 7.22, FARMER)', () => {
        const { steps } = at('', ...dinner, 'coffee after dessert { contains nothing }');
        expect(steps.slice(-2).map(({ sort }) => sort)).toEqual(['coffee', 'farewell']);
    });
});
