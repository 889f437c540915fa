import fc from 'fast-check';
import { expect } from 'vitest';
import type { Cupboard, Diet, LocalCode, Substance } from '../../packages/language/src/plan/cupboard.js';
import type { Named } from '../../packages/language/src/plan/origin.js';
import type { Course, Dish, Need, Who } from '../../packages/language/src/plan/types.js';
import { serveCourse } from '../../packages/language/src/service/serving.js';
import type { CourseServing, GuestGroup } from '../../packages/language/src/service/types.js';

// Courses small enough to try every guest with every dish. What may be given and what is liked is said here again, from the
// language's meaning and not from the code under test.

// ---------------------------------------------------------------- small evenings
const ORIGIN = { file: 'supper.cover', start: 0, end: 0 };
const named = (name: string): Named => ({ name, origin: ORIGIN });
const DISHES = ['0', '1', '2', '3'];

/** Dish `n` contains allergen `n`, so that a guest may have any set of dishes by what they are without. The diet is one of choice. */
const CUPBOARD = {
    kinds: new Map(),
    substances: new Map(
        [...DISHES.map((name) => ({ name, sort: 'allergen' })), { name: 'meat', sort: 'ingredient' }].map((each) => [
            each.name,
            { parents: [], ...each } as unknown as Substance,
        ]),
    ),
    diets: new Map(
        [
            { name: 'vegetarian', excludes: [named('meat')] },
            { name: 'highly-susceptible', excludes: [] },
        ].map((each) => [each.name, each as unknown as Diet]),
    ),
} as unknown as Cupboard;
const CODE = { figures: {} } as unknown as LocalCode;

export interface SmallDish {
    readonly hasMeat: boolean;
    readonly isRaw: boolean;
    readonly for: 'rest' | 'vegetarian' | number | `${number} vegetarian`;
}

export interface SmallGuests {
    readonly count: number;
    readonly without: readonly number[];
    readonly isVegetarian: boolean;
    readonly isSusceptible: boolean;
    readonly chose?: number;
}

export interface Small {
    readonly dishes: readonly SmallDish[];
    readonly guests: readonly SmallGuests[];
}

const vegetarian: Need = { sort: 'diet', diet: named('vegetarian'), origin: ORIGIN };
const susceptible: Need = { sort: 'diet', diet: named('highly-susceptible'), origin: ORIGIN };

export function whoOf(wanted: SmallDish['for']): Who {
    if (wanted === 'rest') {
        return { sort: 'rest', origin: ORIGIN };
    }
    const count = Number.parseInt(String(wanted), 10);
    return {
        sort: 'some',
        count: Number.isNaN(count) ? undefined : { count, origin: ORIGIN },
        needs: String(wanted).endsWith('vegetarian') ? [vegetarian] : [],
        origin: ORIGIN,
    };
}

export function serve({ dishes, guests }: Small): CourseServing {
    const course = {
        index: 0,
        dishes: dishes.map(
            ({ hasMeat, isRaw, for: wanted }, index) =>
                ({
                    index,
                    title: DISHES[index]!,
                    kind: named('main'),
                    course: 0,
                    who: whoOf(wanted),
                    contains: {
                        what: [named(DISHES[index]!), ...(hasMeat ? [named('meat')] : [])],
                        origin: ORIGIN,
                    },
                    suits: [],
                    served: isRaw ? { raw: { how: 'raw', origin: ORIGIN } } : {},
                    accompaniments: [],
                }) as unknown as Dish,
        ),
    } as unknown as Course;
    const groups = guests.map(({ count, without, isVegetarian, isSusceptible, chose }, index): GuestGroup => {
        const needs: Need[] = [
            ...(isVegetarian ? [vegetarian] : []),
            ...(isSusceptible ? [susceptible] : []),
            ...(without.length > 0
                ? [{ sort: 'without' as const, what: without.map((dish) => named(DISHES[dish]!)), origin: ORIGIN }]
                : []),
        ];
        const choice = chose === undefined ? [] : [{ text: DISHES[chose]!, origin: ORIGIN }];
        const listed = { name: { text: 'A. Guest', origin: ORIGIN }, needs, chooses: choice, origin: ORIGIN };
        return {
            index,
            count,
            needs,
            children: false,
            named: chose === undefined ? undefined : listed,
            label: needs.map(({ sort }) => sort).join(),
            origin: ORIGIN,
        };
    });
    const coming = guests.reduce((sum, { count }) => sum + count, 0);
    return serveCourse(course, groups, coming, { code: CODE, cupboard: CUPBOARD });
}

/** `expect` for many thousand comparisons: it is asked only where something differs. */
export function same(found: unknown, wanted: unknown): void {
    if (JSON.stringify(found) !== JSON.stringify(wanted)) {
        expect(found).toEqual(wanted);
    }
}

// ---------------------------------------------------------------- what is allowed and what is better
export type Relation = 'chosen' | 'meant' | 'counted' | 'rest' | 'stand-in';

export function relationOf(guest: SmallGuests, dish: SmallDish, place: number): Relation | undefined {
    const forVegetarians = String(dish.for).endsWith('vegetarian');
    // A dish for vegetarians is said to suit them; what it contains still counts.
    if (guest.without.includes(place) || (guest.isVegetarian && dish.hasMeat)) {
        return undefined;
    }
    if (guest.chose === place) {
        return 'chosen';
    }
    if (forVegetarians) {
        const hasNeeds = guest.isSusceptible || guest.without.length > 0;
        return guest.isVegetarian ? 'meant' : hasNeeds ? 'stand-in' : undefined;
    }
    return dish.for === 'rest' ? 'rest' : 'counted';
}

export const countOf = ({ for: wanted }: SmallDish): number | undefined => {
    const count = Number.parseInt(String(wanted), 10);
    return Number.isNaN(count) ? undefined : count;
};

// ---------------------------------------------------------------- all of them, and any of them
/** Every course of two dishes for one or two sorts of guests, four of them at most. */
export function everySmall(): Small[] {
    const wanted: readonly SmallDish['for'][] = ['rest', 'vegetarian', 1, 3, '1 vegetarian'];
    const sorts = [[], [0], [1], [0, 1]].flatMap((without) =>
        [false, true].flatMap((isVegetarian) =>
            [undefined, 0, 1].map((chose) => ({ without, isVegetarian, isSusceptible: false, chose })),
        ),
    );
    const companies = sorts.flatMap((one, place) => [
        [{ ...one, count: 2 }],
        ...sorts.slice(place + 1).flatMap((other) => [
            [
                { ...one, count: 1 },
                { ...other, count: 1 },
            ],
            [
                { ...one, count: 1 },
                { ...other, count: 3 },
            ],
        ]),
    ]);
    return wanted.flatMap((first) =>
        wanted.flatMap((second) =>
            companies.map((guests) => ({
                dishes: [
                    { hasMeat: true, isRaw: false, for: first },
                    { hasMeat: false, isRaw: false, for: second },
                ],
                guests,
            })),
        ),
    );
}

const dish: fc.Arbitrary<SmallDish> = fc.record({
    hasMeat: fc.boolean(),
    isRaw: fc.boolean(),
    for: fc.oneof(
        fc.constantFrom('rest' as const, 'rest' as const, 'vegetarian' as const),
        fc.integer({ min: 0, max: 5 }),
        fc.integer({ min: 1, max: 4 }).map((count) => `${count} vegetarian` as const),
    ),
});
const guests: fc.Arbitrary<SmallGuests> = fc.record({
    count: fc.integer({ min: 0, max: 4 }),
    without: fc.oneof(fc.constant([]), fc.subarray([0, 1, 2, 3])),
    isVegetarian: fc.boolean(),
    isSusceptible: fc.boolean(),
    chose: fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined, freq: 2 }),
});
/** Courses of up to four dishes and eight guests. */
export const anySmall: fc.Arbitrary<Small> = fc
    .record({
        dishes: fc.array(dish, { minLength: 1, maxLength: 4 }),
        guests: fc
            .array(guests, { minLength: 1, maxLength: 8 })
            .filter((all) => all.reduce((sum, { count }) => sum + count, 0) <= 8),
    })
    .map(({ dishes, guests: all }) => ({
        dishes,
        // A choice of another course says nothing about this one.
        guests: all.map((each) => ({ ...each, chose: dishes[each.chose ?? 0] ? each.chose : undefined })),
    }));
