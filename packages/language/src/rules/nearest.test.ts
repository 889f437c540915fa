import { describe, expect, it } from 'vitest';
import { nearest } from './nearest.js';

describe('the nearest name', () => {
    it.each([
        ['soup-spon', ['soup-spoon', 'soup-bowl'], ['soup-spoon']],
        ['fish-frok', ['fish-fork', 'fish-knife'], ['fish-fork']],
        ['Milk', ['milk'], ['milk']],
        ['creme-brulee', ['crème-brûlée'], ['crème-brûlée']],
    ])('of %s forgives a slip of the finger, capitals and accents', (written, names, found) => {
        expect(nearest(written, names)).toEqual(found);
    });

    it('of a short word forgives one letter, or two that changed places', () => {
        expect(nearest('mlik', ['milk'])).toEqual(['milk']);
        expect(nearest('oast', ['oats'])).toEqual(['oats']);
        expect(nearest('egs', ['egg', 'eel'])).toEqual(['egg']);
        // Two letters apart in a word of three is another word: an allergen must not turn into its neighbour.
        expect(nearest('soy', ['rye', 'egg'])).toEqual([]);
        expect(nearest('ox', ['oxo'])).toEqual([]);
    });

    it('of a part is the whole name', () => {
        expect(nearest('nuts', ['tree-nuts', 'brazil-nut', 'peanut'])).toEqual(['tree-nuts']);
        expect(nearest('walnuts', ['walnut', 'black-walnut'])).toEqual(['walnut']);
        expect(nearest('spoons', ['soup-spoon', 'sorbet-spoon'])).toEqual(['sorbet-spoon', 'soup-spoon']);
    });

    it('is the nearest only, at most three, in a fixed order', () => {
        expect(nearest('fork-a', ['fork-e', 'fork-d', 'fork-c', 'fork-b', 'fork-bb'])).toEqual([
            'fork-b',
            'fork-c',
            'fork-d',
        ]);
    });
});
