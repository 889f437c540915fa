/** Bottles, cases and standard drinks against quantities.md §2 and the worked examples of §14.1. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
    CASE_MILLILITRES,
    fewestLeftOver,
    poursPerBottle,
    standardDrinks,
} from '../../packages/language/src/service/bottles.js';

const FLUID_OUNCE = 29.5735295625;
const total = (bottles: readonly { count: number }[]): number => bottles.reduce((sum, each) => sum + each.count, 0);

describe('bottles', () => {
    it('Q7 (CAMP): 50 guests, four hours, a drink an hour, six glasses a bottle', () => {
        expect(total(fewestLeftOver(50 * 4, 750 / 6, [750]))).toBe(34);
    });
    it('Q9 (UBREW): 100 guests, four drinks each, five a bottle', () => {
        expect(total(fewestLeftOver(400, 150, [750]))).toBe(80);
    });
    it('Q11 (WSHOP): five-ounce pours of large bottles', () => {
        expect([1500, 3000, 4000, 5000].map((size) => poursPerBottle(size, 5 * FLUID_OUNCE))).toEqual([10, 20, 27, 33]);
    });
    it('quantities 2.3: whole pours of 750 ml', () => {
        expect([4, 5, 6].map((ounces) => poursPerBottle(750, ounces * FLUID_OUNCE))).toEqual([6, 5, 4]);
        expect([125, 150, 250].map((pour) => poursPerBottle(750, pour))).toEqual([6, 5, 3]);
    });
    it('Q25 (WFD): half a bottle for each of 200 guests is 100 bottles, nine cases', () => {
        const [bottles] = fewestLeftOver(200, 375, [750]);
        expect(bottles).toEqual({ size: 750, count: 100 });
        expect(Math.ceil((bottles!.count * bottles!.size) / CASE_MILLILITRES)).toBe(9);
    });
    it('quantities 2.2: a case is nine litres whatever the bottle', () => {
        expect([12 * 750, 6 * 1500, 24 * 375]).toEqual([CASE_MILLILITRES, CASE_MILLILITRES, CASE_MILLILITRES]);
    });
    it('mixes sizes with the least left over, as trying everything does', () => {
        fc.assert(
            fc.property(fc.integer({ min: 1, max: 60 }), fc.constantFrom(100, 125, 150), (pours, pour) => {
                const sizes = [1500, 750, 375];
                const found = fewestLeftOver(pours, pour, sizes);
                const over =
                    found.reduce((sum, { size, count }) => sum + poursPerBottle(size, pour) * count, 0) - pours;
                let best = Infinity;
                const each = sizes.map((size) => poursPerBottle(size, pour));
                for (let a = 0; a <= pours; a++) {
                    for (let b = 0; b <= pours; b++) {
                        const rest = pours - a * each[0]! - b * each[1]!;
                        const c = Math.max(0, Math.ceil(rest / each[2]!));
                        best = Math.min(best, c * each[2]! - rest < 0 ? Infinity : c * each[2]! - rest);
                    }
                }
                expect(over).toBe(best);
            }),
            { seed: 11, numRuns: 40 },
        );
    });
});

describe('standard drinks (quantities 2.4)', () => {
    it('Q14: 750 ml at 12 % is 5.07 US drinks', () => {
        expect(standardDrinks(750, 0.12, 14)).toBeCloseTo(5.07, 2);
    });
    it('Q13: 25.36 oz at 14 % is 5.9 US drinks', () => {
        expect(standardDrinks(25.36 * FLUID_OUNCE, 0.14, 14)).toBeCloseTo(5.9, 1);
    });
    it('one drink is 12 oz of beer, 5 oz of wine, 1.5 oz of spirit (NIAAA)', () => {
        for (const [ounces, strength] of [
            [12, 0.05],
            [5, 0.12],
            [1.5, 0.4],
        ] as const) {
            expect(standardDrinks(ounces * FLUID_OUNCE, strength, 14)).toBeCloseTo(1, 2);
        }
    });
    it('750 ml at 12 % is 9 UK units of 8 g and 7.1 Australian drinks of 10 g', () => {
        expect(standardDrinks(750, 0.12, 8)).toBeCloseTo(8.9, 1);
        expect(standardDrinks(750, 0.12, 10)).toBeCloseTo(7.1, 1);
    });
});
