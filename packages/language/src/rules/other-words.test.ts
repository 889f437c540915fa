import { expect, it } from 'vitest';
import { readText } from '../plan/read-text.js';
import { mergeCupboards } from '../plan/merge.js';
import { calledHere, nearlyCalledHere, otherWordsOf } from './other-words.js';

const cupboardOf = (...texts: string[]) =>
    mergeCupboards(texts.map((text) => [readText('house.cover', text)])).cupboard;

it('takes a word however it is written: in capitals, with accents, in two words, of more than one', () => {
    const words = [{ word: 'creme-fraiche', name: 'cream' }];
    for (const written of ['creme-fraiche', 'Crème-fraîche', 'crème fraîche', 'creme-fraiches']) {
        expect(calledHere(written, words), written).toEqual(['cream']);
    }
    expect(calledHere('creme', words)).toEqual([]);
    expect(calledHere('creme-fresh', words)).toEqual([]);
    expect(nearlyCalledHere('creme-fraich', words)).toEqual(['cream']);
});

it('names each thing once, all that one word may mean', () => {
    const words = [
        { word: 'wine-glass', name: 'white-wine-glass' },
        { word: 'wine-glass', name: 'red-wine-glass' },
        { word: 'wine-glasses', name: 'red-wine-glass' },
    ];
    expect(calledHere('wine-glass', words)).toEqual(['white-wine-glass', 'red-wine-glass']);
});

it('adds the words of who declares a thing again, and hands none down to its sorts', () => {
    // The farther file first.
    const cupboard = cupboardOf(
        'plate service-plate { also base }  plate marsh-plate is service-plate  kind bisque is soup',
        'plate service-plate { also charger }  kind soup { also potage }',
    );
    expect(otherWordsOf('piece', cupboard, ['service-plate', 'marsh-plate'])).toEqual([
        { word: 'base', name: 'service-plate' },
        { word: 'charger', name: 'service-plate' },
    ]);
    expect(otherWordsOf('kind', cupboard, ['soup', 'bisque'])).toEqual([{ word: 'potage', name: 'soup' }]);
});

it('knows no other word for what may not stand there, and none that is a name there', () => {
    const cupboard = cupboardOf('kind soup { also potage }  kind dessert { also pudding }');
    // The courses of a menu.
    expect(otherWordsOf('course', cupboard, ['soup', 'Broth'])).toEqual([{ word: 'potage', name: 'soup' }]);
    expect(otherWordsOf('kind', cupboard, ['soup', 'dessert', 'potage'])).toEqual([
        { word: 'pudding', name: 'dessert' },
    ]);
    expect(otherWordsOf('diet', cupboard, [])).toContainEqual({ word: 'kid', name: 'children' });
});
