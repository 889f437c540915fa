import { describe, expect, it } from 'vitest';
import { readIngredient } from './read-ingredient.js';

/** The amount as `20 oz`, with both ends of a range, in the smallest measure of its system. */
const SMALLEST = {
    'us-weight': 'oz',
    'us-volume': 'tsp',
    'imperial-volume': 'imp fl oz',
    'metric-weight': 'g',
    'metric-volume': 'ml',
    count: 'pieces',
};
const amountIn = (line: string): string | undefined => {
    const { amount } = readIngredient(line);
    return (
        amount &&
        `${amount.low === amount.high ? amount.low : `${amount.low} to ${amount.high}`} ${SMALLEST[amount.system]}`
    );
};

describe('the amount of an ingredient', () => {
    it.each([
        ['14 kg beets', '14000 g', 'beets'],
        ['beets, 14 kg', '14000 g', 'beets'],
        ['grain mustard: 400 g', '400 g', 'grain mustard'],
        ['butter – 1.2 kg', '1200 g', 'butter'],
        ['butter, 1,2 kg, softened', '1200 g', 'butter, softened'],
        ['500g flour', '500 g', 'flour'],
        ['1 lb 4 oz beef, ground', '20 oz', 'beef, ground'],
        ['1 lb. 4 oz. beef', '20 oz', 'beef'],
        ['Beef, ground, 1 lb 4 oz', '20 oz', 'Beef, ground'],
        ['2 1/2 cups milk', '120 tsp', 'milk'],
        ['2½ cups of milk', '120 tsp', 'milk'],
        ['1-1/2 tsp salt', '1.5 tsp', 'salt'],
        ['½ tsp salt', '0.5 tsp', 'salt'],
        ['1 cup plus 2 tablespoons oil', '54 tsp', 'oil'],
        ['1/3 cup oil', '16 tsp', 'oil'],
        ['1 gal 2 qt stock', '1152 tsp', 'stock'],
        ['8 fl oz cream', '48 tsp', 'cream'],
        ['10 imp fl oz cream', '10 imp fl oz', 'cream'],
        ['75 cl white wine', '750 ml', 'white wine'],
        ['2 dl cream', '200 ml', 'cream'],
        ['1.5 L water', '1500 ml', 'water'],
        ['2-3 onions', '2 to 3 pieces', 'onions'],
        ['1.5 to 2 kg onions', '1500 to 2000 g', 'onions'],
        ['750 g – 1 kg onions', '750 to 1000 g', 'onions'],
        ['20 eggs', '20 pieces', 'eggs'],
        ['eggs, 20', '20 pieces', 'eggs'],
        ['500 g (1 lb 2 oz) flour', '500 g', 'flour'],
        ['500 g/1 lb 2 oz flour', '500 g', 'flour'],
        ['00 flour, 2 kg', '2000 g', '00 flour'],
        ['5-spice powder, 10 g', '10 g', '5-spice powder'],
        ['70 % chocolate, 500 g', '500 g', '70 % chocolate'],
        ['3 cheeses, grated, 2 kg', '2000 g', '3 cheeses, grated'],
        ['7 herbs', '7 pieces', 'herbs'],
    ])('is read from `%s`', (line, amount, name) => {
        expect({ amount: amountIn(line), name: readIngredient(line).name }).toEqual({ amount, name });
    });

    it.each([
        'salt, to taste',
        'a little oil for the pan',
        '1,200 g flour',
        '1/0 cup milk',
        '0 eggs',
        '12-inch tart shell',
        '1234567 g salt',
        '5% vinegar',
        '14 kg',
        '',
    ])('is left to the cook in `%s`', (line) => {
        expect(readIngredient(line)).toEqual({ written: line, name: line });
    });

    it.each([
        ['3 cans corn', 'can', '3 pieces', undefined, 'corn'],
        ['corn, 3 cans', 'can', '3 pieces', undefined, 'corn'],
        ['2 x 400 g tins tomatoes', 'tin', '2 pieces', 400, 'tomatoes'],
        ['10 (3 lb 2 oz) cans condensed soup', 'can', '10 pieces', 50, 'condensed soup'],
        ['10 cans (3 lb 2 oz) condensed soup', 'can', '10 pieces', 50, 'condensed soup'],
        ['10 cans of 3 lb 2 oz condensed soup', 'can', '10 pieces', 50, 'condensed soup'],
        ['condensed soup, 10 cans (3 lb 2 oz)', 'can', '10 pieces', 50, 'condensed soup'],
        ['4 bay leaves', undefined, '4 pieces', undefined, 'bay leaves'],
        ['2 cloves of garlic', 'clove', '2 pieces', undefined, 'garlic'],
        ['a pinch of saffron', 'pinch', '1 pieces', undefined, 'saffron'],
        ['a good butter', undefined, undefined, undefined, 'a good butter'],
    ])('counts what `%s` comes in', (line, container, amount, holds, name) => {
        const read = readIngredient(line);
        expect({ ...read, amount: amountIn(line), holds: read.holds?.low, written: undefined }).toEqual({
            container,
            amount,
            holds,
            name,
        });
    });

    it.each([
        ['watermelon, 2 lb, diced, yield 61 %', 0.61, 'watermelon, diced'],
        ['2 lb watermelon (yield 61%)', 0.61, 'watermelon'],
        ['2 lb watermelon, 61 % yield', 0.61, 'watermelon'],
        ['2 lb watermelon, yield 161 %', undefined, 'watermelon, yield 161 %'],
    ])('knows what is left after trimming: `%s`', (line, usable, name) => {
        expect({ usable: readIngredient(line).usable, name: readIngredient(line).name }).toEqual({ usable, name });
    });

    it('is not searched for in a line that no ingredient fills', () => {
        for (const words of ['1 ', '(', ', 1 g', '1/', '* ', '-']) {
            expect(readIngredient(`1 kg ${words.repeat(100_000)}`).amount).toBeUndefined();
        }
    });
});
