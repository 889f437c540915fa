/** How many pieces lie at a cover, against rows 1.1 to 1.24 of table-service.md: each source as the custom that declares it. */
import { describe, expect, it } from 'vitest';
import { course, place, stepOf } from '../support/evening.js';

const fork = (name: string, count: number): string =>
    Array.from({ length: count }, (_, index) => course('entree', `eaten with ${name}`, `${name} ${index + 1}`)).join(
        '\n',
    );

/** Courses that need so many forks at the left, knives, spoons, and an oyster fork. */
function courses({ forks = 0, knives = 0, spoons = 0, oysterFork = false }): string {
    return [
        oysterFork ? course('oysters', 'eaten with oyster-fork') : '',
        ...Array.from({ length: spoons }, (_, index) => course('soup', 'eaten with soup-spoon', `soup ${index + 1}`)),
        fork('dinner-fork', forks),
        ...Array.from({ length: knives }, (_, index) => course('fish', 'eaten with dinner-knife', `fish ${index + 1}`)),
    ].join('\n');
}

const isOver = (laying: string, needed: Parameters<typeof courses>[0]): boolean =>
    place({ laying, menu: courses(needed) }).rules.includes('three-per-side');

describe('the most pieces laid', () => {
    it.each([
        ['1.1, ALLEN', 'limit: 3  limit-counts: forks-left'],
        ['1.2, LANS ch. I', 'limit: 3  limit-counts: forks-left'],
        ['1.3, EICHLER', 'limit: 3  limit-counts: forks-left'],
        ['1.6, MCCALL', 'limit: 3  limit-counts: forks-left'],
    ])('three forks, whatever lies at the right (table-service %s)', (_, laying) => {
        expect(isOver(laying, { forks: 3, knives: 4, spoons: 2 })).toBe(false);
        expect(isOver(laying, { forks: 4 })).toBe(true);
    });

    it.each([
        ['1.4, MIL', 'limit: 3  limit-counts: forks-and-knives  oyster-fork-counts: no'],
        ['1.5, ROBERTS', 'limit: 3  limit-counts: forks-and-knives  oyster-fork-counts: no'],
    ])('three forks and the oyster fork, and three knives; spoons are free (table-service %s)', (_, laying) => {
        expect(isOver(laying, { forks: 3, knives: 3, spoons: 2, oysterFork: true })).toBe(false);
        expect(isOver(laying, { forks: 4, oysterFork: true })).toBe(true);
        expect(isOver(laying, { forks: 3, knives: 4, oysterFork: true })).toBe(true);
    });

    it('with the oyster fork among the forks where no exception is named (table-service 1.1, 1.2)', () => {
        const laying = 'limit: 3  limit-counts: forks-and-knives  oyster-fork-counts: yes';
        expect(isOver(laying, { forks: 2, oysterFork: true })).toBe(false);
        expect(isOver(laying, { forks: 3, oysterFork: true })).toBe(true);
    });

    it('six pieces in all (table-service 1.7, NAVY p. 216)', () => {
        const laying = 'limit: 6  limit-counts: all-pieces';
        expect(isOver(laying, { forks: 3, knives: 2, spoons: 1 })).toBe(false);
        expect(isOver(laying, { forks: 3, knives: 2, spoons: 2 })).toBe(true);
    });

    it('three or four forks (table-service 1.8, SCHOLL)', () => {
        const laying = 'limit: 4  limit-counts: forks-left';
        expect(isOver(laying, { forks: 4 })).toBe(false);
        expect(isOver(laying, { forks: 5 })).toBe(true);
    });

    it('three knives, two large and the fish knife (table-service 1.12, MORTON, ORDWAY and HARLAND)', () => {
        const menu = [
            course('fish'),
            course('entree', 'eaten with dinner-knife'),
            course('roast', 'eaten with dinner-knife'),
        ];
        const { right, rules } = place({ laying: 'limit: 3  limit-counts: forks-and-knives', menu: menu.join('\n') });
        expect(right).toEqual(['fish-knife', 'dinner-knife', 'dinner-knife']);
        expect(rules).not.toContain('three-per-side');
    });

    it('three pieces on either side, the oyster fork as a fourth at the right (table-service 1.13, UNATT)', () => {
        const laying = 'limit: 3  limit-counts: pieces  oyster-fork-counts: no';
        expect(isOver(laying, { forks: 3, knives: 2, spoons: 1, oysterFork: true })).toBe(false);
        expect(isOver(laying, { knives: 3, spoons: 1, oysterFork: true })).toBe(true);
    });

    it('no cap at all (table-service 1.14, WHCB 1887)', () => {
        expect(isOver('limit: none', { forks: 6, knives: 6, spoons: 3, oysterFork: true })).toBe(false);
    });

    it('one set at a time (table-service 1.24, TANTY p. 6)', () => {
        const laying = 'limit: 1';
        expect(isOver(laying, { forks: 1, knives: 1 })).toBe(false);
        expect(isOver(laying, { forks: 2 })).toBe(true);
    });
});

describe('what is past the limit', () => {
    const laying = 'limit: 3  limit-counts: forks-left  overflow: brought';

    it.each(['1.1, ALLEN', '1.2, LANS ch. I', '1.15, LOWNEY', '1.16, GREER'])(
        'comes just before the course that needs it (table-service %s)',
        () => {
            const evening = place({ laying, menu: courses({ forks: 5 }) });
            expect(evening.left).toHaveLength(3);
            expect(evening.brought).toHaveLength(2);
            expect(evening.rules).not.toContain('three-per-side');
            const titles = evening.steps.map(({ title }) => title);
            for (const title of ['dinner-fork 4', 'dinner-fork 5']) {
                const brought = stepOf(evening, `Bring what ${title} is eaten with`);
                expect(titles.indexOf(brought.title)).toBe(titles.indexOf(`Serve ${title}`) - 1);
                expect(titles.indexOf(brought.title)).toBeGreaterThan(titles.indexOf('Clear dinner-fork 3'));
            }
        },
    );

    it('is laid all the same, and reported, unless the house has it brought (common practice, no source)', () => {
        const { left, rules } = place({ laying: 'limit: 3', menu: courses({ forks: 4 }) });
        expect(left).toHaveLength(4);
        expect(rules).toContain('three-per-side');
    });
});

describe('the pieces of the dessert', () => {
    const menu = [course('roast'), course('dessert')].join('\n');
    const dessertIn = (pieces: readonly string[]) => pieces.filter((piece) => piece.startsWith('dessert-'));

    it.each(['1.18, ALLEN and LANS ch. I', '1.19, ALLENCB', '1.22, ROBERTS'])(
        'are not laid with the rest but come with it (table-service %s)',
        () => {
            const { left, right, above, brought } = place({ laying: 'dessert: brought', menu });
            expect(dessertIn([...left, ...right, ...above])).toEqual([]);
            expect(brought).toEqual(['dessert-fork', 'dessert-spoon']);
            // 1.19: silver is laid for every course up to the dessert.
            expect([...left, ...right]).toEqual(['dinner-fork', 'dinner-knife']);
        },
    );

    it('may lie with the rest, innermost (table-service 1.20, GREER; 1.11, HWL)', () => {
        const { left, right, brought } = place({ laying: 'dessert: laid', menu });
        expect(left).toEqual(['dinner-fork', 'dessert-fork']);
        expect(dessertIn(right)).toEqual(['dessert-spoon']);
        expect(brought).toEqual([]);
    });

    it('may lie above the plate and then count on neither side (table-service 1.21, SILVER)', () => {
        const { left, right, above } = place({ laying: 'dessert: above', menu });
        expect(dessertIn([...left, ...right])).toEqual([]);
        expect(above.toSorted()).toEqual(['dessert-fork', 'dessert-spoon']);
        expect(isOver('dessert: above  limit: 3', { forks: 3 })).toBe(false);
    });

    it.each([
        ['fork-and-spoon', '7.38, ROBERTS', ['dessert-fork', 'dessert-spoon']],
        ['fork', 'WS-4, SILVER', ['dessert-fork']],
        ['spoon', '7.37, HUMPHRY', ['dessert-spoon']],
    ])('are, by custom, %s (table-service %s)', (pieces, _, expected) => {
        const { brought } = place({ laying: `dessert: brought  dessert-pieces: ${pieces}`, menu });
        expect(brought).toEqual(expected);
    });

    // The custom thins out what a kind is eaten with; nothing adds the knife yet.
    it('are, by custom, a small knife, fork and spoon, above (table-service 5.25, TANTY)', () => {
        const { above } = place({ laying: 'dessert: above  dessert-pieces: knife-fork-and-spoon', menu });
        expect(above.toSorted()).toEqual(['dessert-fork', 'dessert-knife', 'dessert-spoon']);
    });

    it('lie above the plate with the fork nearer to it and the spoon beyond (table-service 5.24, UNATT)', () => {
        expect(place({ laying: 'dessert: above', menu }).above).toEqual(['dessert-fork', 'dessert-spoon']);
    });
});
