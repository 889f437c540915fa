/**
 * The heat model against temperature.md: worked examples (§10), saturation pressure (§6.1), losses (§6.2), the reference
 * calculations (§10.1) and the published cooling curves (§11), within the bands that §12 demands.
 * W14 to W16 are in heat-at-the-guest.test.ts. Dropped, as no function here answers them: W2 (ice that melts in a drink), W6 (a
 * specific heat); W17 is a rule (cook-temperature-low), W18 a dishwasher's, W19 and W20 are lists of allergens.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { saturationPressure } from '../../packages/language/src/service/heat/air.js';
import { toComputing } from '../../packages/language/src/plan/quantity.js';
import { chillTime, TIME_CONSTANTS } from '../../packages/language/src/service/chilling/baths.js';
import { bandOf } from '../../packages/language/src/service/heat/band.js';
import { minutesKept, pourNeeded, vesselNeeded, type Ask } from '../../packages/language/src/service/heat/inverse.js';
import { calibrate } from '../../packages/language/src/service/heat/reading.js';
import {
    coolFor,
    heatContent,
    losses,
    mix,
    pourFor,
    pourInto,
    vesselFor,
    type Liquid,
    type Vessel,
} from '../../packages/language/src/service/heat/liquid.js';
import {
    approach,
    contactTemperature,
    minutesTo,
    tauFrom,
    thinTau,
} from '../../packages/language/src/service/heat/newton.js';
import { STILL_ROOM } from '../support/still-room.js';

const fromF = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;
const toF = (celsius: number): number => celsius * 1.8 + 32;

describe('worked examples (temperature 10)', () => {
    it('W1: water in a hot aluminium pan', () => {
        expect(
            mix([
                { heat: 250 * 4.186, celsius: 20 },
                { heat: 500 * 0.9, celsius: 150 },
            ]),
        ).toBeCloseTo(59.09, 1);
    });
    it('W3: cola in a warm glass beaker', () => {
        expect(
            pourInto({ grams: 200, heatCapacity: 4.19 }, 3, { ...BOWL, grams: 250, heatCapacity: 0.84 }, 30),
        ).toBeCloseTo(8.41, 1);
    });
    it('W4: 30 g of water at 26.5 °C gain 1.506 kJ', () => {
        const water = { grams: 30, heatCapacity: 4.184 };
        expect(26.5 + 1506 / heatContent(water, { ...BOWL, participation: 0 })).toBeCloseTo(38.5, 1);
    });
    it('W5: a US gallon from 240 to 175 °F gives off 5.7 × 10² kJ', () => {
        const gallon = { grams: toComputing(128, 'fl oz'), heatCapacity: 4.184 };
        const heat = heatContent(gallon, { ...BOWL, participation: 0 }) * (fromF(240) - fromF(175));
        expect(heat / 1000).toBeCloseTo(571.9, 0);
    });
    it('W7: rebar that warms 425 ml of water from 24.0 to 42.7 °C was at 248 °C', () => {
        const rebar = { ...BOWL, grams: 360, heatCapacity: 0.449 };
        expect(vesselFor(42.7, { grams: 425, heatCapacity: 4.184 }, 24, rebar)).toBeCloseTo(248.4, 0);
    });
    it('W8: copper at 314 °C in 390 ml of water at 22.6 °C', () => {
        const copper = { ...BOWL, grams: 248, heatCapacity: 0.385 };
        expect(pourInto({ grams: 390, heatCapacity: 4.184 }, 22.6, copper, 314)).toBeCloseTo(38.7, 1);
    });
    it('and the pour turned round is the pour', () => {
        const inBowl = pourInto(BROTH, 74, BOWL, 45);
        expect(pourFor(inBowl, BROTH, BOWL, 45)).toBeCloseTo(74, 9);
        expect(vesselFor(inBowl, BROTH, 74, BOWL)).toBeCloseTo(45, 9);
    });
    it('W9: pizza from 350 °F in a room at 75 °F', () => {
        const tau = tauFrom(350, 340, 75, 5);
        expect(1 / tau).toBeCloseTo(0.007408, 5);
        expect(minutesTo(350, 300, 75, tau)! - 5).toBeCloseTo(22.1, 1);
    });
    it('W10: cheesecake from 165 °F in a refrigerator at 35 °F', () => {
        expect(minutesTo(165, 70, 35, tauFrom(165, 150, 35, 10))).toBeCloseTo(107, 0);
    });
    it('W11: pitcher from 40 °F in a room at 70 °F', () => {
        expect(minutesTo(40, 60, 70, tauFrom(40, 45, 70, 60))! / 60).toBeCloseTo(6.03, 2);
    });
    it('W12: saturation pressure at 15 °C, by the coefficients of the table', () => {
        expect(saturationPressure(15) / 100).toBeCloseTo(17.05, 1);
    });
    it('W13: a cup of water by its published fit', () => {
        expect(approach(212, 75, 1 / 0.037, 30)).toBeCloseTo(120, 0);
    });
    it('W21 and W22: the touch of steel and of porcelain at 50 °C', () => {
        expect(contactTemperature(50, 7490)).toBeCloseTo(47.7, 1);
        expect(contactTemperature(50, 1940)).toBeCloseTo(43.6, 1);
    });
});

describe('saturation pressure against IF97 (temperature 6.1)', () => {
    it.each([
        [4, 813.5],
        [20, 2339.2],
        [25, 3169.7],
        [40, 7384.4],
        [60, 19_946],
        [74, 37_009],
        [80, 47_415],
        [90, 70_182],
    ])('is within 0.5 %% at %d °C', (celsius, pascal) => {
        expect(Math.abs(saturationPressure(celsius) / pascal - 1)).toBeLessThan(0.0055);
    });
});

const BROTH: Liquid = { grams: 250, heatCapacity: 4.1 };
const BOWL: Vessel = { grams: 450, heatCapacity: 0.9, participation: 1, surfaceDiameter: 120, wallResistance: 0.005 };

describe('losses (temperature 6.2) and reference calculations (temperature 10.1)', () => {
    it('loses from a soup bowl at 74 °C what the table says, W', () => {
        const bowl = losses(74, { grams: Math.PI * 0.06 ** 2 * 0.04 * 1e6, heatCapacity: 4.1 }, BOWL, STILL_ROOM);
        for (const [found, printed] of [
            [bowl.evaporation, 57],
            [bowl.convection, 5.5],
            [bowl.radiation, 4.4],
            [bowl.side, 11.5],
            [bowl.base, 2.4],
        ] as const) {
            expect(Math.abs(found / printed - 1)).toBeLessThan(0.05);
        }
    });
    it.each([
        [20, 58.7, 53.4],
        [45, 65.8, 58.6],
        [60, 70.0, 61.5],
        [65, 71.5, 62.5],
        [70, 72.9, 63.4],
    ])('poured at 74 °C into a bowl at %d °C', (bowl, poured, after) => {
        expect(Math.abs(pourInto(BROTH, 74, BOWL, bowl) - poured)).toBeLessThan(0.06);
        expect(Math.abs(coolFor(pourInto(BROTH, 74, BOWL, bowl), 4, BROTH, BOWL, STILL_ROOM) - after)).toBeLessThan(
            0.15,
        );
    });
    it.each([
        [110, 63.4],
        [140, 60.5],
        [180, 56.5],
    ])('cools faster the wider it stands: %d mm', (surfaceDiameter, after) => {
        expect(
            Math.abs(
                coolFor(pourInto(BROTH, 74, BOWL, 65), 4, BROTH, { ...BOWL, surfaceDiameter }, STILL_ROOM) - after,
            ),
        ).toBeLessThan(0.15);
    });
    const asked = (wanted: number, minutes = 4): Ask => ({
        side: 'hot',
        liquid: BROTH,
        vessel: BOWL,
        inVessel: coolFor(wanted, -minutes, BROTH, BOWL, STILL_ROOM),
        atFirst: wanted,
        emptyFor: 0,
        room: STILL_ROOM.celsius,
    });
    const limits = { touch: 70, scald: 75 };
    it.each([
        [55, 27],
        [57, 37],
        [60, 52],
        [62, 62.5],
        [63, 68],
    ])('needs for %d °C after 4 min a bowl at %d °C', (wanted, bowl) => {
        const answer = vesselNeeded(asked(wanted), 74, limits);
        expect(Math.abs(('celsius' in answer ? answer.celsius : 0) - bowl)).toBeLessThan(1);
    });
    it('refuses a bowl past the touch limit and says what it would have to be', () => {
        const answer = vesselNeeded(asked(63), 74, { ...limits, touch: 65 });
        expect(answer).toMatchObject({ refused: 'touch-limit', limit: 65 });
        expect(Math.abs(('needed' in answer ? answer.needed : 0) - 68)).toBeLessThan(1);
    });
    it('needs with a bowl at 20 °C a ladle at 86.6 °C for 60 °C after 4 min, and refuses one past 95 °C', () => {
        const needed = pourNeeded(asked(60), 20, limits);
        expect('celsius' in needed && Math.abs(needed.celsius - 86.6)).toBeLessThan(0.5);
        expect(pourNeeded(asked(66), 20, limits)).toMatchObject({ refused: 'boiling', limit: 95 });
    });
    it('refuses what would scald the first guest, and what the code would not let be kept so cool', () => {
        const scalding: Ask = { ...asked(60), atFirst: 67 };
        expect(pourNeeded(scalding, 65, { ...limits, scald: 66 })).toMatchObject({ refused: 'scalds', limit: 66 });
        expect(pourNeeded(asked(50), 65, { ...limits, holding: 63 })).toMatchObject({ refused: 'holding', limit: 63 });
    });
    it('answers by when it must be on the table as the forward model does', () => {
        const start = pourInto(BROTH, 74, BOWL, 65);
        const after = (minutes: number): number => coolFor(start, minutes, BROTH, BOWL, STILL_ROOM);
        const minuteLater = (celsius: number): number => coolFor(celsius, 1, BROTH, BOWL, STILL_ROOM);
        const minutes = minutesKept('hot', 62.5, start, minuteLater);
        expect(minutes).toBeCloseTo(4, 0);
        expect(after(minutes)).toBeCloseTo(62.5, 1);
        expect(minutesKept('hot', 80, start, minuteLater)).toBe(0);
        expect(minutesKept('hot', 10, start, minuteLater)).toBe(120);
    });
    it.each([
        ['fridge', 4, 110, 45],
        ['fridge', 4, 170, 69],
        ['fridge', 4, 230, 93],
        ['ice-water', 0, 18.5, 6],
        ['ice-water', 0, 27, 9],
        ['ice-water', 0, 53, 17],
    ] as const)('brings wine from 22 to 16 °C in the %s as the formula does', (bath, celsius, tau, printed) => {
        const given = { celsius, tau: { ...TIME_CONSTANTS[bath], usual: tau } };
        expect(Math.round(chillTime(22, 16, given)!.usual)).toBe(printed);
    });
});

const DS1 = {
    black: [
        82.3, 78.5, 74.3, 70.7, 67.6, 65.0, 62.5, 60.1, 58.1, 56.1, 54.3, 52.8, 51.2, 49.9, 48.6, 47.2, 46.1, 45.0,
        43.9, 43.0, 41.9, 41.0, 40.1, 39.5,
    ],
    cream: [
        68.8, 64.8, 62.1, 59.9, 57.7, 55.9, 53.9, 52.3, 50.8, 49.5, 48.1, 46.8, 45.9, 44.8, 43.7, 42.6, 41.7, 40.8,
        39.9, 39.3, 38.6, 37.7, 37.0, 36.4,
    ],
};

describe('published curves (temperature 11), within the bands of temperature 12', () => {
    const glass: Vessel = {
        grams: 250,
        heatCapacity: 0.84,
        participation: 1,
        surfaceDiameter: 75,
        wallResistance: 0.003,
    };
    const coffee: Liquid = { grams: 250, heatCapacity: 4.18 };
    it.each(Object.entries(DS1))(
        'DS1 %s coffee: a regression, for the surface factor was kept because it fits',
        (_, curve) => {
            const room = { ...STILL_ROOM, celsius: 17 };
            const errors = curve.map((seen, index) => coolFor(curve[0]!, index * 2, coffee, glass, room) - seen);
            const rms = Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);
            expect(rms).toBeLessThanOrEqual(1.5);
            expect(Math.max(...errors.map(Math.abs))).toBeLessThanOrEqual(2.5);
        },
    );
    it.each([
        [10, 1.5, 40],
        [4, 3, 40],
    ])('DS1: one reading at %d min keeps the next half hour within %d °C', (minutes, error, until) => {
        const room = { ...STILL_ROOM, celsius: 17 };
        const after = (from: number, time: number, scale: number): number =>
            coolFor(from, time, coffee, glass, room, scale);
        for (const curve of Object.values(DS1)) {
            const now = calibrate(curve[0], { celsius: curve[minutes / 2]!, minutes }, after);
            const errors = curve
                .slice(minutes / 2, until / 2 + 1)
                .map((seen, index) => after(now.start, minutes + index * 2, now.scale) - seen);
            expect(Math.max(...errors.map(Math.abs))).toBeLessThanOrEqual(error);
        }
    });
    it('DS2: below 50 °C one time constant is fine', () => {
        const errors = [
            [0, 49.0742],
            [15, 43.8135],
            [30, 39.8782],
            [45, 36.7495],
            [60, 34.4747],
        ].map(([minute, seen]) => approach(49.0742, 26.5, 57.7, minute!) - seen!);
        expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.2);
    });
    it('EAG97, untuned: a cup of water from boiling, within 35 % of the drop', () => {
        const cup: Vessel = {
            grams: 250,
            heatCapacity: 0.9,
            participation: 1,
            surfaceDiameter: 80,
            wallResistance: 0.004,
        };
        const room = { ...STILL_ROOM, celsius: fromF(75) };
        const seen = fromF(approach(212, 75, 1 / 0.037, 10));
        const start = 98;
        const found = coolFor(start, 10, { grams: 237, heatCapacity: 4.19 }, { ...cup, participation: 0 }, room);
        const band = bandOf(start, found, { geometry: true });
        expect(seen).toBeGreaterThan(band.low);
        expect(seen).toBeLessThan(band.high);
    });
    it('LED02, untuned: a shallow pan from boiling, within 35 % of the drop', () => {
        const pan: Vessel = {
            grams: 500,
            heatCapacity: 0.5,
            participation: 0.5,
            surfaceDiameter: 165,
            wallResistance: 0.001,
        };
        const water: Liquid = { grams: Math.PI * 0.0825 ** 2 * 0.0127 * 1e6, heatCapacity: 4.19 };
        const seen = fromF(approach(212, 70, 1 / 0.068, 10));
        const band = bandOf(98, coolFor(98, 10, water, pan, { ...STILL_ROOM, celsius: fromF(70) }), { geometry: true });
        expect(seen).toBeGreaterThan(band.low);
        expect(seen).toBeLessThan(band.high);
    });
    it('STRAT12, untuned: a mug loses its first 15 K in 13 min, the model within half of the drop', () => {
        const mug: Vessel = {
            grams: 350,
            heatCapacity: 0.9,
            participation: 0.8,
            surfaceDiameter: 80,
            wallResistance: 0.005,
        };
        const water: Liquid = { grams: 325, heatCapacity: 4.19 };
        const found = coolFor(82, 13, water, mug, { ...STILL_ROOM, celsius: 22 });
        const band = bandOf(82, found, { geometry: false });
        expect(67).toBeGreaterThan(band.low);
        expect(67).toBeLessThan(band.high);
    });
    it.each([
        ['FW refrigerator, red', 'fridge', 38, 71, 55, 150],
        ['FW refrigerator, white', 'fridge', 38, 71, 45, 180],
        ['CI-TOW freezer', 'freezer', 0, 70, 50, 60],
        ['FW freezer, red', 'freezer', 0, 71, 55, 40],
        ['FW freezer, white', 'freezer', 0, 71, 45, 60],
        ['CI10 freezer', 'freezer', 0, 75, 38, 67],
        ['WAPO freezer', 'freezer', 0, 67, 58, 20],
        ['TT23 freezer', 'freezer', -10, 70, 45, 42],
        ['UYE freezer', 'freezer', -15, 70, 50, 30],
        ['HABR freezer, water', 'freezer', -0.4, 72.5, 58.3, 20],
        ['FW ice water, red', 'ice-water', 32, 71, 55, 10],
        ['FW ice water, white', 'ice-water', 32, 71, 45, 20],
        ['OA ice water', 'ice-water', 32, 71, 50, 21],
        ['WAPO on the counter', 'counter', 67, 40, 46, 20],
    ] as const)(
        'DS4 %s falls inside the range (not the bath never stirred, nor the salted one)',
        (_, bath, fahrenheit, from, to, minutes) => {
            const range = chillTime(fromF(from), fromF(to), { celsius: fromF(fahrenheit), tau: TIME_CONSTANTS[bath] })!;
            expect(minutes).toBeGreaterThanOrEqual(range.soonest);
            expect(minutes).toBeLessThanOrEqual(range.latest);
        },
    );
    it('P11: covered, the loss is 0.62 of the open one', () => {
        const open = 80 - coolFor(80, 0.1, coffee, glass, STILL_ROOM);
        const covered = 80 - coolFor(80, 0.1, coffee, glass, { ...STILL_ROOM, covered: true });
        expect(covered / open).toBeCloseTo(0.62, 2);
    });
    it('temperature 13: a 2 mm steel spoon follows the air in 7 to 11 min', () => {
        expect(thinTau(8000, 0.5, 2, 6)).toBeGreaterThan(7);
        expect(thinTau(8000, 0.5, 2, 10)).toBeLessThan(11.2);
    });
    it('converts temperatures of a step as the table does', () => {
        expect(toF(63)).toBeCloseTo(145.4, 6);
    });
});

describe('the model keeps its books', () => {
    const celsius = fc.double({ min: 25, max: 95, noNaN: true });
    it('mixes to a temperature between the two, whatever the masses', () => {
        fc.assert(
            fc.property(
                celsius,
                celsius,
                fc.integer({ min: 50, max: 500 }),
                fc.integer({ min: 50, max: 900 }),
                (liquid, bowl, grams, weight) => {
                    const found = pourInto({ grams, heatCapacity: 4.1 }, liquid, { ...BOWL, grams: weight }, bowl);
                    expect(found).toBeGreaterThanOrEqual(Math.min(liquid, bowl) - 1e-9);
                    expect(found).toBeLessThanOrEqual(Math.max(liquid, bowl) + 1e-9);
                },
            ),
            { seed: 7 },
        );
    });
    it('loses in a minute what its losses add up to', () => {
        fc.assert(
            fc.property(celsius, (start) => {
                const end = coolFor(start, 1, BROTH, BOWL, STILL_ROOM);
                const lost = (start - end) * heatContent(BROTH, BOWL);
                const at = (temperature: number): number =>
                    (Object.values(losses(temperature, BROTH, BOWL, STILL_ROOM)) as number[]).reduce(
                        (sum, each) => sum + each,
                        0,
                    ) * 60;
                expect(lost).toBeLessThanOrEqual(at(start) * 1.01);
                expect(lost).toBeGreaterThanOrEqual(at(end) * 0.99);
            }),
            { seed: 7, numRuns: 30 },
        );
    });
    it('ends soon whatever it is asked', () => {
        const sheet = { ...BOWL, grams: 1, surfaceDiameter: 5000 };
        for (const minutes of [-1e6, -60, 60, 1e6]) {
            for (const start of [-300, 5, 60, 1e6]) {
                expect(coolFor(start, minutes, { grams: 1, heatCapacity: 4 }, sheet, STILL_ROOM)).not.toBeNaN();
                expect(coolFor(start, minutes, BROTH, BOWL, STILL_ROOM)).not.toBeNaN();
            }
        }
    });
    it('never passes the room on its way down', () => {
        expect(coolFor(90, 600, BROTH, BOWL, { ...STILL_ROOM, surfaceFactor: 0 })).toBeGreaterThanOrEqual(20);
    });
});
