/** The order of courses, against part 7 of table-service.md: each published order under the customs that its source declares. */
import { describe, expect, it } from 'vitest';
import { course, place } from '../support/evening.js';

/** What a menu of these kinds, in this order, is told of its order. */
const disorder = (laying: string, kinds: readonly string[]): readonly string[] => {
    const menu = kinds.map((kind, index) => course(kind, '', `${index + 1}. ${kind}`)).join('\n');
    const { messages, rules } = place({ laying, menu });
    return messages.filter((_, index) => rules[index] === 'courses-out-of-order');
};

// Names of the cupboard for what the sources list.
const TEN = ['oysters', 'clear-soup', 'fish', 'entree', 'roast', 'intermezzo', 'game', 'salad', 'dessert', 'fruit'];
const COOKE = [
    'oysters',
    'soup',
    'fish',
    'roast',
    'entree',
    'intermezzo',
    'game',
    'salad',
    'cheese',
    'dessert',
    'fruit',
];
const CLASSICAL = [
    ...[
        'starter',
        'soup',
        'fish',
        'entree',
        'releve',
        'intermezzo',
        'roast',
        'vegetable',
        'sweet',
        'savoury',
        'cheese',
    ],
    'fruit',
];
const SILVER = ['salad', 'main'];
const NAVY = ['shrimp-cocktail', 'soup', 'main', 'salad', 'dessert'];
const LANS = ['oysters', 'soup', 'fish', 'entree', 'roast', 'intermezzo', 'game', 'dessert'];

describe('a published order is accepted under the customs of its source', () => {
    it.each<readonly [string, string, readonly string[]]>([
        ['7.4, COOKE à la Russe', 'entree: after-roast  intermezzo: before-game  cheese: with-salad', COOKE],
        ['7.11, SILVER four pieces', 'salad: before-main', SILVER],
        ['7.10, NAVY p. 220', 'salad: after-main', NAVY],
        ['7.13, 7.14, LANS', 'entree: before-roast  intermezzo: before-game', LANS],
        ['7.6, UKMENU', 'intermezzo: before-roast  entree: before-roast  cheese: after-savoury', CLASSICAL],
        ['7.7, IHM-11', 'cheese: after-savoury', CLASSICAL.filter((kind) => kind !== 'cheese')],
        ['7.15, FARMER', 'cheese: after-dessert', ['soup', 'roast', 'dessert', 'cheese']],
        ['7.15, HARTLEY and COOKE', 'cheese: with-salad', ['soup', 'roast', 'salad', 'cheese', 'dessert']],
        ['7.15, UKMENU', 'cheese: after-savoury', ['soup', 'roast', 'sweet', 'savoury', 'cheese', 'fruit']],
        ['7.8, IHM-17', 'intermezzo: before-releve', ['soup', 'fish', 'intermezzo', 'releve', 'roast']],
        ['7.15, IHM-17', 'cheese: before-dessert', ['soup', 'roast', 'cheese', 'sweet', 'savoury']],
        ['7.16, AWCB: soup first', '', ['soup', 'main', 'dessert']],
        ['7.16, AWCB: one small course, then soup', '', ['oysters', 'soup', 'main', 'dessert']],
    ])('table-service %s', (_, laying, kinds) => {
        expect(disorder(laying, kinds)).toEqual([]);
    });
});

describe('and found out of order under the custom of another', () => {
    it.each<readonly [string, string, readonly string[]]>([
        ['7.10 against 7.11: salad before the main course', 'salad: after-main', SILVER],
        ['7.11 against 7.10: salad after the main course', 'salad: before-main', NAVY],
        ['7.14 against 7.3: entrée after the roast', 'entree: before-roast', ['soup', 'roast', 'entree']],
        ['7.3 against 7.14: entrée before the roast', 'entree: after-roast', ['soup', 'entree', 'roast']],
        [
            '7.13 against 7.6: sorbet after the roast',
            'intermezzo: before-roast',
            ['soup', 'roast', 'intermezzo', 'game'],
        ],
        [
            '7.6 against 7.13: sorbet before the roast',
            'intermezzo: before-game',
            ['soup', 'intermezzo', 'roast', 'game'],
        ],
        ['7.6 against 7.8: sorbet after the relevé', 'intermezzo: before-releve', ['releve', 'intermezzo', 'roast']],
        ['7.15, FARMER: cheese before the sweet', 'cheese: after-dessert', ['roast', 'cheese', 'dessert']],
        ['7.15, IHM-17: cheese after the sweet', 'cheese: before-dessert', ['roast', 'dessert', 'cheese']],
        ['7.15, UKMENU: cheese before the savoury', 'cheese: after-savoury', ['roast', 'cheese', 'savoury', 'fruit']],
    ])('table-service %s', (_, laying, kinds) => {
        expect(disorder(laying, kinds)).not.toEqual([]);
    });

    it('not where the house takes its courses as they are written', () => {
        const asWritten = 'salad: as-written  entree: as-written  intermezzo: as-written  cheese: as-written';
        for (const kinds of [SILVER, NAVY, ['soup', 'roast', 'entree'], ['soup', 'roast', 'intermezzo', 'game']]) {
            expect(disorder(asWritten, kinds), kinds.join(' ')).toEqual([]);
        }
    });
});

describe('what all sources agree on is no custom', () => {
    const asWritten = 'salad: as-written  entree: as-written  intermezzo: as-written  cheese: as-written';
    it.each<readonly [string, readonly string[]]>([
        ['7.16: the dinner begins with soup, or one small course and then soup', ['fish', 'soup', 'main']],
        ['7.17: fish follows soup (COOKE, KLEIN, UKMENU, HARTLEY and MIL)', ['fish', 'soup']],
        ['7.17: fish comes before the roast', ['soup', 'roast', 'fish']],
        ['7.6: the sweet comes after the main course', ['soup', 'sweet', 'main']],
        ['7.6: the fruit ends the meal', ['soup', 'fruit', 'main']],
    ])('table-service %s', (_, kinds) => {
        expect(disorder(asWritten, kinds)).not.toEqual([]);
    });

    it.each<readonly [string, number, readonly string[]]>([
        ['7.1, LOWNEY: ten courses', 10, TEN],
        ['7.2, NAVY p. 220: as few as three', 3, ['soup', 'main', 'dessert']],
        ['7.6, UKMENU: twelve before the coffee', 12, CLASSICAL],
    ])('and how many courses there are is no matter: table-service %s', (_, count, kinds) => {
        const customs = 'salad: as-written  intermezzo: as-written  cheese: as-written';
        expect(kinds).toHaveLength(count);
        expect(disorder(customs, kinds)).toEqual([]);
    });
});
