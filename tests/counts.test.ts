import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';

// Who gets which dish, and how many pieces that needs: a small evening, counted by hand.

const text = `event "Lantern supper" {
    date 2026-10-17
    zone America/New_York
    seated 19:00
    guests 10 { 3 vegetarian  1 without milk  2 children }
}
menu {
    course soup "Leek" { served in soup-bowl warmed to 55 °C at 64 °C  lasts 15 min  contains nothing  suits vegetarian }
    course main {
        lasts 30 min
        dish "Steak" is steak for 4 { served on dinner-plate warmed at 60 °C  contains nothing }
        dish "Squash" is vegetable for vegetarian {
            served on dinner-plate warmed at 60 °C
            eaten with dinner-fork
            contains milk
        }
        dish "Hake" is fish for the rest { served on dinner-plate warmed at 60 °C  contains fish  cook 2 extra }
    }
    course dessert "Pear" { served on dessert-plate at 8 °C  lasts 15 min  contains nothing  suits vegetarian }
}
`;

interface Plan {
    readonly service: {
        readonly courses: readonly {
            readonly course: string;
            readonly portions: readonly { readonly dish: string; readonly count: number; readonly cook?: number }[];
            readonly unserved: readonly unknown[];
        }[];
        readonly covers: readonly { readonly count: number; readonly dishes: readonly string[] }[];
        readonly pieces: readonly { readonly piece: string; readonly needed: number }[];
    };
}

describe('ten guests with a choice of three', () => {
    const { service } = planJson(check('supper.cover', filesInMemory({ 'supper.cover': text }))) as unknown as Plan;
    const needed = (piece: string) => service.pieces.find((each) => each.piece === piece)?.needed ?? 0;

    it('are served in the order of the menu, each with one dish a course', () => {
        expect(service.courses.map(({ course }) => course)).toEqual(['Leek', 'main', 'Pear']);
        expect(service.courses.flatMap(({ unserved }) => unserved)).toEqual([]);
        for (const { portions } of service.courses) {
            expect(portions.reduce((sum, { count }) => sum + count, 0)).toBe(10);
        }
    });

    it('get four steaks, three squashes, and three hakes of five cooked', () => {
        const main = service.courses[1]!.portions;
        expect(Object.fromEntries(main.map(({ dish, count }) => [dish, count]))).toEqual({
            Steak: 4,
            Squash: 3,
            Hake: 3,
        });
        expect(main.find(({ dish }) => dish === 'Hake')?.cook).toBe(5);
    });

    it('make three covers', () => {
        expect(Object.fromEntries(service.covers.map(({ dishes, count }) => [dishes[1], count]))).toEqual({
            Steak: 4,
            Squash: 3,
            Hake: 3,
        });
    });

    it.each([
        ['soup-spoon', 10],
        ['soup-bowl', 10],
        ['steak-knife', 4],
        // With the steak and with the squash.
        ['dinner-fork', 4 + 3],
        ['fish-fork', 3],
        ['fish-knife', 3],
        ['dinner-plate', 10],
        ['dessert-fork', 10],
        ['dessert-spoon', 10],
        ['dessert-plate', 10],
        ['service-plate', 10],
        ['napkin', 10],
        ['water-glass', 10],
        ['dinner-knife', 0],
    ])('need of %s: %i', (piece, count) => {
        expect(needed(piece)).toBe(count);
    });
});
