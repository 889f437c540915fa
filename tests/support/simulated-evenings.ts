/** Evenings for the tests of the simulation, as plain data. */
import fc from 'fast-check';
import type { Evening, EveningTable } from '../../packages/language/src/service/run/evening.js';

const SECOND = 1 / 60;

export const PACE: Evening['pace'] = {
    walking: 60_000,
    platesATrip: 3,
    coversATrip: 4,
    handingOver: 10 * SECOND,
    settingDown: 5 * SECOND,
    clearingCover: 6 * SECOND,
    crumbingCover: 5 * SECOND,
    relayingPiece: 3 * SECOND,
    pouringGlass: 8 * SECOND,
    tasting: 0.5,
    offeringBread: 5 * SECOND,
    seatingTime: 10,
    coffeeTime: 15,
    tripSpread: 0.3,
};

const TEAM: Evening['team'] = {
    captains: 1,
    servers: 3,
    runners: 2,
    lines: 2,
    stations: [5 * SECOND],
    lineRole: 'plating line',
    sommeliers: 0,
    bussers: 0,
};

/** Soup, then a main course with wine. */
export function table(name: string, guests: number, fromPass: number): EveningTable {
    const work = { plates: Array<number>(guests).fill(0), pieces: 0, temperedPieces: 0, tastes: 0, rounds: [] };
    return {
        name,
        guests,
        fromPass,
        courses: [
            { ...work, glasses: 0, bread: guests },
            { ...work, glasses: guests, bread: 0 },
        ],
        coffee: { guests, pieces: 3 * guests },
        waters: guests,
        toasts: [],
    };
}

/** Five tables of eight, two courses and coffee. */
export function evening(): Evening {
    const course = { spread: 2, isCrumbed: false, dishes: [{ isAhead: false }] };
    return {
        tables: ['A', 'B', 'C', 'D', 'E'].map((name, index) => table(name, 8, 6000 + 2000 * index)),
        courses: [
            { ...course, lasts: 15 },
            { ...course, lasts: 30 },
        ],
        speeches: [],
        coffee: { after: 1 },
        isWaterPouredBeforeSeating: true,
        isWinePouredFirst: true,
        isClearedOneByOne: false,
        team: TEAM,
        pace: PACE,
    };
}

const dish = fc.record({
    stations: fc.option(fc.array(fc.double({ min: 0, max: 0.4, noNaN: true }), { minLength: 1, maxLength: 3 }), {
        nil: undefined,
    }),
    isAhead: fc.boolean(),
});

const course = fc.record({
    lasts: fc.integer({ min: 5, max: 30 }),
    spread: fc.integer({ min: 0, max: 4 }),
    startsAt: fc.option(fc.integer({ min: 0, max: 90 }), { nil: undefined }),
    standsBefore: fc.constant(undefined),
    isCrumbed: fc.boolean(),
    dishes: fc.array(dish, { minLength: 2, maxLength: 2 }),
});

const work = fc.record({
    plates: fc.array(fc.nat(1), { minLength: 1, maxLength: 10 }),
    pieces: fc.nat(8),
    temperedPieces: fc.nat(8),
    glasses: fc.nat(8),
    tastes: fc.nat(1),
    rounds: fc.array(fc.integer({ min: 1, max: 8 }), { maxLength: 2 }),
    bread: fc.nat(8),
});

const speech = fc.record({
    speech: fc.constant(0),
    isToast: fc.boolean(),
    after: fc.option(fc.integer({ min: -1, max: 2 }), { nil: undefined }),
    isBeforeNext: fc.boolean(),
    at: fc.option(fc.integer({ min: 0, max: 120 }), { nil: undefined }),
    lasts: fc.integer({ min: 1, max: 10 }),
    pour: fc.option(fc.nat(2), { nil: undefined }),
});

/** Three courses at up to seven tables, with any team. */
export const evenings: fc.Arbitrary<Evening> = fc.record({
    tables: fc
        .array(
            fc.record({
                guests: fc.integer({ min: 1, max: 10 }),
                fromPass: fc.integer({ min: 1000, max: 40_000 }),
                courses: fc.array(work, { minLength: 3, maxLength: 3 }),
                coffee: fc.record({ guests: fc.nat(8), pieces: fc.nat(24) }),
                waters: fc.nat(8),
                toasts: fc.array(fc.nat(8), { minLength: 2, maxLength: 2 }),
            }),
            { minLength: 1, maxLength: 7 },
        )
        .map((tables) => tables.map((each, index): EveningTable => ({ name: `T${index + 1}`, ...each }))),
    courses: fc.array(course, { minLength: 3, maxLength: 3 }),
    speeches: fc.array(speech, { maxLength: 2 }),
    coffee: fc.option(fc.record({ after: fc.nat(2) }), { nil: undefined }),
    isWaterPouredBeforeSeating: fc.boolean(),
    isWinePouredFirst: fc.boolean(),
    isClearedOneByOne: fc.boolean(),
    team: fc.record({
        captains: fc.nat(1),
        servers: fc.integer({ min: 1, max: 9 }),
        runners: fc.nat(3),
        lines: fc.nat(2),
        stations: fc.array(fc.double({ min: 0.01, max: 0.3, noNaN: true }), { minLength: 1, maxLength: 3 }),
        lineRole: fc.constantFrom('plating line' as const, 'plater' as const),
        sommeliers: fc.nat(1),
        bussers: fc.nat(2),
    }),
    pace: fc.constant(PACE),
});
