import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MEASURES, type MeasureName } from '../../plan/kitchen-measures.js';
import { readIngredient } from '../../plan/read-ingredient.js';
import { buyable, measurable, sumOf } from './rounding.js';
import { scaleIngredient } from './scale.js';

const scaled = (line: string, factor: number) => {
    const { scaled: measured, inAll, buy } = scaleIngredient(readIngredient(line), factor);
    return [measured?.written, buy?.written, inAll?.written];
};

describe('an ingredient scaled', () => {
    it.each<readonly [string, number, string | undefined, string | undefined]>([
        ['beets, 14 kg', 0.84, '11.8 kg', '11.8 kg'],
        ['400 g mustard', 0.84, '336 g', '340 g'],
        ['400 g mustard', 2.5, '1 kg', '1 kg'],
        ['2.4 kg flour', 0.041, '98 g', '100 g'],
        ['3 g saffron', 0.84, '2.5 g', '10 g'],
        ['1 g saffron', 0.25, '0.25 g', '10 g'],
        ['6 l milk', 0.84, '5.04 l', '5.1 l'],
        ['75 cl wine', 3, '2.25 l', '2.3 l'],
        ['1 lb 4 oz beef', 0.5, '10 oz', '10 oz'],
        ['15 3/4 oz beef', 1.01, '1 lb', '16 oz'],
        ['1 lb 15 oz beef', 1.03, '2 lb', '2 lb'],
        ['1/4 oz yeast', 0.3, '0.075 oz', '1 oz'],
        ['2 cups milk', 3.48, '1 qt 3 cups', undefined],
        ['3 tbsp oil', 3.48, '10 tbsp 1 1/4 tsp', undefined],
        ['1 tsp salt', 2.95, '1 tbsp', undefined],
        ['3 3/4 qt stock', 1.06, '1 gal', '4 qt'],
        ['12 fl oz cream', 3.48, '1 qt 9 3/4 fl oz', '1 1/2 qt'],
        ['10 imp fl oz cream', 1.5, '15 imp fl oz', '15 imp fl oz'],
        ['20 eggs', 0.84, '17', '17'],
        ['2 onions', 0.84, '1 3/4', '2'],
        ['1 lemon', 0.1, '0.1', '1'],
        ['2-3 cloves garlic', 3.48, '7 to 10 cloves', '11 cloves'],
        ['1.5 to 2 kg onions', 2, '3 to 4 kg', '4 kg'],
        ['a pinch of saffron', 3.48, '3 1/2 pinches', '4 pinches'],
        ['salt, to taste', 3.48, undefined, undefined],
    ])('%s, %s times', (line, factor, measured, bought) => {
        expect(scaled(line, factor).slice(0, 2)).toEqual([measured, bought]);
    });

    it('tells what the cans hold together', () => {
        expect(scaled('2 cans (400 g) tomatoes', 2.3)).toEqual(['5 cans', '5 cans', '1.84 kg']);
    });
});

describe('any line at all', () => {
    const words = fc.constantFrom(
        ...[
            '1',
            '2 1/2',
            '½',
            '0.0001',
            '999999',
            '1/0',
            '1,200',
            '-',
            '–',
            'to',
            'x',
            '(',
            ')',
            ',',
            ':',
            '%',
            'of',
            'yield',
            '61 %',
        ],
        ...[
            'lb',
            'oz',
            'kg',
            'g',
            'l',
            'ml',
            'cup',
            'tsp',
            'fl oz',
            'gal',
            'cans',
            'pinch',
            'beets',
            'Ölsamen',
            '\u0000',
            '𝒙',
        ],
    );
    const lines = fc.oneof(
        fc.array(words, { maxLength: 12 }).map((each) => each.join(' ')),
        fc.string({ unit: 'grapheme', maxLength: 60 }),
    );

    it('is read and scaled to figures, or left as it is written', () => {
        fc.assert(
            fc.property(lines, fc.double({ min: 0.001, max: 1000, noNaN: true }), (line, factor) => {
                const { ingredient, scaled: measured, buy } = scaleIngredient(readIngredient(line), factor);
                expect(ingredient.name === '').toBe(ingredient.written === '');
                for (const each of [measured, buy]) {
                    expect(each?.written ?? '1').toMatch(/^[\d.]/);
                    expect(each?.written ?? '').not.toMatch(/NaN|Infinity|undefined|e[+-]/);
                }
            }),
            { numRuns: 2000 },
        );
    });
});

describe('rounding', () => {
    const measures = Object.keys(MEASURES) as MeasureName[];
    const amounts = fc.record({
        measure: fc.constantFrom(...measures),
        value: fc.double({ min: 0.01, max: 50_000, noNaN: true }),
    });

    it('to measure is never nothing, and as near as it says', () => {
        fc.assert(
            fc.property(amounts, ({ measure, value }) => {
                const { system } = MEASURES[measure];
                const rounded = sumOf(measurable(value, system, measure));
                expect(rounded).toBeGreaterThan(0);
                const isMetric = system.startsWith('metric');
                // Half a quarter of the smaller measure told: of 1 tsp, of 1 tbsp beside a cup, of 1 qt beside a gallon.
                const nearness = isMetric && value >= 100 ? 0.005 : 0.125;
                // Below one of the smallest measure told, the bands are as coarse as they are published.
                const smallest = measure === 'fl oz' ? MEASURES['fl oz'].size : 1;
                const most = value < smallest ? 1 : nearness;
                expect(Math.abs(rounded - value) / value).toBeLessThanOrEqual(most + 1e-9);
            }),
        );
    });

    it('to buy is never short, and buys no step too many', () => {
        fc.assert(
            fc.property(amounts, ({ measure, value }) => {
                const { system } = MEASURES[measure];
                const parts = buyable(value, system, measure);
                if (parts) {
                    expect(sumOf(parts)).toBeGreaterThanOrEqual(value * (1 - 1e-9));
                    const largestStep = { 'us-weight': 8, 'us-volume': 384, 'imperial-volume': 1 };
                    const step = system in largestStep ? largestStep[system as keyof typeof largestStep] : 100;
                    expect(sumOf(parts) - value).toBeLessThan(step * (1 + 1e-9));
                }
            }),
        );
    });

    it('keeps what is even', () => {
        fc.assert(
            fc.property(fc.integer({ min: 1, max: 400 }), (quarters) => {
                expect(sumOf(measurable(quarters / 4, 'us-weight', 'oz'))).toBe(quarters / 4);
                expect(sumOf(measurable(quarters, 'metric-weight', 'g'))).toBe(quarters);
            }),
        );
    });
});
