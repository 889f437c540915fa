import { describe, expect, it } from 'vitest';
import { check } from '../check.js';
import { filesInMemory } from '../plan/files.js';

/** What the rules about food that is not cooked through say of a main course of this kind with this `cook to`. */
function saysOf(kind: string, clause: string, contains = 'nothing', notice = ''): string[] {
    const text = `event "Harbour lunch" { date 2026-10-17  zone America/Halifax  seated 12:30  guests 24  ${notice} }
menu {
    course main {
        lasts 35 min
        dish "The dish" is ${kind} { served on dinner-plate warmed at 56 °C  ${clause}  contains ${contains} }
    }
}`;
    const { findings } = check('lunch.cover', filesInMemory({ 'lunch.cover': text }));
    return findings
        .filter(({ rule }) => rule === 'advisory-missing' || rule === 'cook-temperature-low')
        .map(({ message }) => message);
}

describe('cooked through', () => {
    it.each([
        ['steak', 'temperature S11', ['63 °C', '145 °F', '64 °C'], ['62 °C', '144 °F', '52 °C']],
        ['minced-meat', 'temperature S12', ['68 °C', '155 °F', '158 °F'], ['67 °C', '154 °F', '63 °C']],
        ['poultry', 'temperature S13', ['74 °C', '165 °F'], ['73 °C', '164 °F', '63 °C']],
    ])('a %s by %s', (kind, _source, enough, tooLittle) => {
        for (const temperature of enough) {
            expect(saysOf(kind, `cook to ${temperature}`), temperature).toEqual([]);
        }
        for (const temperature of tooLittle) {
            expect(saysOf(kind, `cook to ${temperature}`), temperature).toHaveLength(1);
        }
    });

    it('minced meat at a lower temperature held for longer, temperature S12', () => {
        expect(saysOf('minced-meat', 'cook to 145 °F for 3 min')).toEqual([]);
        expect(saysOf('minced-meat', 'cook to 63 °C for 3 min')).toEqual([]);
        expect(saysOf('minced-meat', 'cook to 150 °F for 1 min')).toEqual([]);
        expect(saysOf('minced-meat', 'cook to 145 °F for 2 min')).toHaveLength(1);
        expect(saysOf('minced-meat', 'cook to 144 °F for 30 min')).toHaveLength(1);
    });

    it.each([
        ['130 °F', 112],
        ['135 °F', 36],
        ['140 °F', 12],
        ['145 °F', 4],
        ['60 °C', 12],
        ['57 °C', 56],
        ['54 °C', 112],
    ])('a roast held at %s for %d min, temperature 2.2 and W17', (temperature, minutes) => {
        expect(saysOf('roast-meat', `cook to ${temperature} for ${minutes} min`)).toEqual([]);
        expect(saysOf('roast-meat', `cook to ${temperature} for ${minutes - 1} min`)).toHaveLength(1);
    });

    it('says what is too short', () => {
        expect(saysOf('roast-meat', 'cook to 60 °C for 5 min')).toEqual([
            '`The dish` is held at 60 °C for 5 min, where a roast needs 12 min, and the menu gives guests no notice of it.',
        ]);
    });

    it.each([
        ['poultry', 'nothing', 'poultry needs 74 °C'],
        ['game', 'venison', 'game needs 74 °C'],
        ['stuffed-meat', 'pork', 'stuffed meat needs 74 °C'],
        ['minced-meat', 'beef', 'minced meat needs 68 °C'],
        ['vegetable-main', 'nothing', 'plant food that is kept hot needs 57 °C'],
        // Whatever its kind, temperature S13.
        ['main', 'chicken, meat-stock', 'poultry needs 74 °C'],
        ['roast-meat', 'turkey', 'poultry needs 74 °C'],
        ['minced-meat', 'chicken', 'poultry needs 74 °C'],
    ])('no notice is enough for %s with %s', (kind, contains, needs) => {
        const notice = 'notice "Some dishes are undercooked; that raises the risk of illness."';
        expect(saysOf(kind, 'cook to 47 °C', contains, notice)).toEqual([`\`The dish\` is cooked to 47 °C; ${needs}.`]);
    });

    it('a notice is enough for whole cuts and fish, temperature S16', () => {
        for (const kind of ['steak', 'chop', 'roast-meat', 'fish', 'egg-dish']) {
            expect(saysOf(kind, 'cook to 47 °C', 'nothing', 'notice "It may be undercooked."'), kind).toEqual([]);
            expect(saysOf(kind, 'cook to 47 °C'), kind).toHaveLength(1);
        }
    });
});
