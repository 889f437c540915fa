import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mergeCupboards } from '../plan/merge.js';
import { clashes, suits } from '../plan/names.js';
import { readText } from '../plan/read-text.js';

const folder = new URL('./', import.meta.url);
const readings = readdirSync(folder)
    .filter((name) => name.endsWith('.cover'))
    .map((name) => readText(name, readFileSync(new URL(name, folder), 'utf8')));
const { substances, diets, codes, pieces, kinds } = mergeCupboards([readings]).cupboard;

/** What a code's list names, without the sorts of what it names already. */
function listOf(code: string): string[] {
    const named = [...substances.values()].filter((each) => each.requiredIn.some((duty) => duty.name === code));
    const names = new Set(named.map(({ name }) => name));
    return named
        .filter(({ parents }) => !parents.some((parent) => names.has(parent.name)))
        .map(({ name }) => name)
        .toSorted();
}

const codesNaming = (allergen: string): string[] =>
    (substances.get(allergen)?.requiredIn ?? []).map(({ name }) => name).toSorted();

describe('allergen duties', () => {
    it('name the nine major allergens of the United States (temperature 3.1)', () => {
        expect(listOf('us-model')).toEqual(
            ['milk', 'egg', 'fish', 'crustaceans', 'tree-nuts', 'peanut', 'wheat', 'soy', 'sesame'].toSorted(),
        );
        expect(listOf('new-york-city')).toEqual(listOf('us-model'));
    });

    it('name the fourteen of the European Union, and the same in the United Kingdom (temperature 3.2)', () => {
        expect(listOf('eu')).toEqual(
            [
                ...['gluten', 'crustaceans', 'egg', 'fish', 'peanut', 'soy', 'milk', 'tree-nuts', 'celery'],
                ...['mustard', 'sesame', 'sulphites', 'lupin', 'molluscs'],
            ].toSorted(),
        );
        expect(listOf('uk')).toEqual(listOf('eu'));
        expect(listOf('scotland')).toEqual(listOf('eu'));
    });

    it('name the priority allergens of Canada, gluten sources with wheat (temperature 3.3)', () => {
        expect(listOf('canada')).toEqual(
            [
                ...['crustaceans', 'molluscs', 'egg', 'fish', 'milk', 'mustard', 'peanut', 'sesame', 'soy'],
                ...['sulphites', 'tree-nuts', 'gluten'],
            ].toSorted(),
        );
    });

    it('name each tree nut by itself in Australia and New Zealand (temperature 3.4)', () => {
        const nuts = [
            'almond',
            'brazil-nut',
            'cashew',
            'hazelnut',
            'macadamia',
            'pecan',
            'pine-nut',
            'pistachio',
            'walnut',
        ];
        expect(listOf('au-nz')).toEqual(
            [
                ...['sulphites', 'gluten', ...nuts, 'crustaceans', 'molluscs', 'fish', 'egg', 'milk'],
                ...['peanut', 'lupin', 'sesame', 'soy'],
            ].toSorted(),
        );
    });

    // Temperature W19 and the test idea below 3.4.
    it.each([
        ['pine-nut', ['au-nz', 'canada', 'new-york-city', 'us-model']],
        ['coconut', []],
        ['lupin', ['au-nz', 'eu', 'scotland', 'uk']],
        ['celery', ['eu', 'scotland', 'uk']],
        ['molluscs', ['au-nz', 'canada', 'eu', 'scotland', 'uk']],
    ])('flag %s where its list does (temperature W19)', (allergen, expected) => {
        expect(codesNaming(allergen)).toEqual(expected);
    });

    it('rest on the list of their own place', () => {
        const rows: Record<string, string> = {
            'us-model': 'temperature 3.1',
            eu: 'temperature 3.2',
            canada: 'temperature 3.3',
            'au-nz': 'temperature 3.4',
        };
        for (const [code, row] of Object.entries(rows)) {
            const without = [...substances.values()]
                .filter(
                    ({ requiredIn, sources }) => requiredIn.some(({ name }) => name === code) && !sources.includes(row),
                )
                .map(({ name }) => name);
            expect(without, code).toEqual([]);
        }
    });

    it('keep a guest from the widest meaning, whatever the code', () => {
        expect(clashes('pine-nut', 'tree-nuts', substances)).toBe(true);
        expect(clashes('chestnut', 'tree-nuts', substances)).toBe(true);
        expect(clashes('barley', 'gluten', substances)).toBe(true);
        expect(clashes('spelt', 'wheat', substances)).toBe(true);
        expect(clashes('lobster', 'shellfish', substances)).toBe(true);
        expect(clashes('coconut', 'tree-nuts', substances)).toBe(false);
        expect(clashes('molluscs', 'crustaceans', substances)).toBe(false);
    });
});

describe('diets', () => {
    it('carry the eleven RestrictedDiet terms (quantities 11)', () => {
        expect([...diets.values()].flatMap(({ term }) => term ?? []).toSorted()).toEqual([
            'DiabeticDiet',
            'GlutenFreeDiet',
            'HalalDiet',
            'HinduDiet',
            'KosherDiet',
            'LowCalorieDiet',
            'LowFatDiet',
            'LowLactoseDiet',
            'LowSaltDiet',
            'VeganDiet',
            'VegetarianDiet',
        ]);
    });

    it('have marks that no two share', () => {
        const marks = [...diets.values()].flatMap(({ mark }) => mark ?? []);
        expect(new Set(marks).size).toBe(marks.length);
    });

    it('leave out something, or ask to be stated', () => {
        const idle = [...diets.values()].filter(({ excludes, statedOnly }) => excludes.length === 0 && !statedOnly);
        expect(idle.map(({ name }) => name)).toEqual([]);
    });
});

describe('local codes', () => {
    // As printed, in the scale of the code.
    it.each([
        ['us-model', 'hot-holding', '135 °F', 'temperature S2'],
        ['us-model', 'cold-holding', '41 °F', 'temperature S1'],
        ['us-model', 'reheating', '165 °F', 'temperature S10'],
        ['us-model', 'cook-whole-meat', '145 °F', 'temperature S11'],
        ['us-model', 'cook-minced-meat', '155 °F', 'temperature S12'],
        ['us-model', 'cook-poultry', '165 °F', 'temperature S13'],
        ['us-model', 'cooling-first', '70 °F', 'temperature S4'],
        ['us-model', 'off-control-time', '4 h', 'temperature S6'],
        ['us-model', 'off-control-cold-time', '6 h', 'temperature S7'],
        ['us-model', 'standard-drink', '14 g', 'quantities 2.4'],
        ['new-york-city', 'hot-holding', '140 °F', 'temperature 2.3'],
        ['uk', 'hot-holding', '63 °C', 'temperature 2.3'],
        ['uk', 'cold-holding', '8 °C', 'temperature 2.3'],
        ['uk', 'standard-drink', '8 g', 'quantities 2.4'],
        ['scotland', 'hot-holding', '63 °C', 'temperature 2.3'],
        ['canada', 'hot-holding', '60 °C', 'temperature 2.3'],
        ['canada', 'cold-holding', '4 °C', 'temperature 2.3'],
        ['au-nz', 'hot-holding', '60 °C', 'temperature 2.3'],
        ['au-nz', 'cold-holding', '5 °C', 'temperature 2.3'],
    ])('%s: %s %s', (code, what, written, source) => {
        const figure = codes.get(code)?.figures[what];
        expect(figure?.size.written).toBe(written);
        expect(figure?.source).toBe(source);
    });

    it('give no cold figure for Scotland, where none is published (temperature 2.3)', () => {
        expect(codes.get('scotland')?.figures['cold-holding']).toBeUndefined();
    });

    it('name zones that there are', () => {
        for (const { zones, name } of codes.values()) {
            expect(zones.length, name).toBeGreaterThan(0);
            for (const zone of zones.filter((each) => each.includes('/'))) {
                expect(() => new Intl.DateTimeFormat('en', { timeZone: zone }), zone).not.toThrow();
            }
        }
    });
});

describe('what suits what', () => {
    it.each([
        ['salad-fork', 'oysters'],
        ['salad-fork', 'soup'],
        ['dinner-fork', 'soup'],
        ['steak-knife', 'fish'],
        ['oyster-fork', 'salad'],
        ['soup-spoon', 'intermezzo'],
    ])('%s does not suit %s', (piece, kind) => {
        expect(
            suits(pieces.get(piece)!, kinds.get(kind)!, { pieces, kinds, drinks: new Map(), substances, diets, codes }),
        ).toBe(false);
    });
});
