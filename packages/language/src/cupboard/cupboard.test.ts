import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseText } from '../grammar/parse.js';
import type { Figure, Piece } from '../plan/cupboard.js';
import { mergeCupboards } from '../plan/merge.js';
import { suits } from '../plan/names.js';
import { readText } from '../plan/read-text.js';
import type { NameSort } from '../plan/types.js';

const folder = new URL('./', import.meta.url);
const files = readdirSync(folder)
    .filter((name) => name.endsWith('.cover'))
    .toSorted()
    .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));
const readings = files.map(({ name, text }) => readText(name, text));
const { cupboard, twice } = mergeCupboards([readings]);

const MM_PER_INCH = 25.4;
const ML_PER_FL_OZ = 29.5735;

/** One clause of a declaration as the parser leaves it. */
interface Clause {
    readonly $type: string;
    readonly source?: string;
}

/** Every clause of every declaration, with where it stands. */
const clauses = files.flatMap(({ name, text }) =>
    (parseText(text).tree.items ?? []).flatMap((item) => {
        const {
            name: declared,
            facts,
            clauses: others,
        } = item as { name?: string; facts?: Clause[]; clauses?: Clause[] };
        return (facts ?? others ?? []).map((clause) => ({ where: `${name}: ${declared} ${clause.$type}`, clause }));
    }),
);

function piece(name: string): Piece {
    const found = cupboard.pieces.get(name);
    expect(found, name).toBeDefined();
    return found!;
}

function figure(name: string, measure: string): Figure {
    const found = piece(name).measures[measure];
    expect(found, `${name} ${measure}`).toBeDefined();
    return found!;
}

/** The middle of the published range, mm. */
function middle(name: string, measure: string): number {
    const { low, high } = figure(name, measure);
    return (low + high) / 2;
}

function expectFalling(sizes: readonly number[]): void {
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    expect(new Set(sizes).size).toBe(sizes.length);
}

describe('the standard cupboard', () => {
    it('reads without a finding', () => {
        const findings = readings.flatMap((reading) => [
            ...reading.syntax.map(({ message }) => message),
            ...[...reading.written, ...reading.unitProblems].map(({ origin }) => `${origin.file}: ${origin.start}`),
            ...reading.repeats.map(({ clause }) => clause),
            ...[...reading.misspelt, ...reading.strangers].map(({ word }) => word),
        ]);
        expect(findings).toEqual([]);
    });

    it('holds nothing but declarations, and each once', () => {
        expect(
            readings.flatMap(({ uses, events, menus, houses, rooms, teams, guests }) =>
                [uses, events, menus, houses, rooms, teams, guests].flat(),
            ),
        ).toEqual([]);
        expect(twice.map(({ name }) => name)).toEqual([]);
    });

    it('has at least 45 pieces and 35 kinds of dish', () => {
        expect(cupboard.pieces.size).toBeGreaterThanOrEqual(45);
        expect(cupboard.kinds.size).toBeGreaterThanOrEqual(35);
    });

    it('has pieces of every family', () => {
        const families = new Set([...cupboard.pieces.values()].map(({ family }) => family));
        expect([...families].toSorted()).toEqual([
            'bowl',
            'cup',
            'fork',
            'gear',
            'glass',
            'knife',
            'linen',
            'plate',
            'spoon',
        ]);
    });

    it('has no other word for a thing that is the name of one of its sort', () => {
        const sorts = [cupboard.pieces, cupboard.kinds, cupboard.drinks, cupboard.substances, cupboard.diets];
        const taken = sorts.flatMap((things) =>
            [...things.values()].flatMap(({ name, also }) =>
                also.filter((word) => things.has(word)).map((word) => `${name}: ${word}`),
            ),
        );
        expect(taken).toEqual([]);
        expect(cupboard.diets.get('gluten-free')!.also).toContain('coeliac');
    });

    it('declares every name it uses', () => {
        const declares: Partial<Record<NameSort, (name: string) => boolean>> = {
            piece: (name) => cupboard.pieces.has(name),
            kind: (name) => cupboard.kinds.has(name) || cupboard.drinks.has(name),
            drink: (name) => cupboard.drinks.has(name),
            'kind-or-drink': (name) => cupboard.kinds.has(name) || cupboard.drinks.has(name),
            substance: (name) => cupboard.substances.has(name),
            diet: (name) => cupboard.diets.has(name),
            code: (name) => cupboard.codes.has(name),
        };
        const unknown = readings.flatMap(({ file, occurrences }) =>
            occurrences
                .filter(({ sort, name, role }) => role === 'uses' && declares[sort]?.(name) !== true)
                .map(({ sort, name }) => `${file}: ${sort} ${name}`),
        );
        expect(unknown).toEqual([]);
    });

    it('derives everything from something of its own sort, and nothing from itself', () => {
        for (const kinds of [cupboard.kinds, cupboard.drinks]) {
            for (const kind of kinds.values()) {
                expect(new Set(kind.lineage).size, kind.name).toBe(kind.lineage.length);
            }
        }
    });

    it('gives a glass to every drink that is poured into one, and holds the usual pour', () => {
        const overfull = [...cupboard.drinks.values()].flatMap(({ name, vessels, portion }) => {
            const named = vessels.flatMap((vessel) => vessel.names.map((each) => each.name));
            return named
                .filter(
                    (glass) =>
                        portion && portion.low.value >= (cupboard.pieces.get(glass)?.measures.holds?.high ?? Infinity),
                )
                .map((glass) => `${name}: ${glass}`);
        });
        expect(overfull).toEqual([]);
        expect(
            [...cupboard.drinks.values()].filter(({ vessels }) => vessels.length === 0).map(({ name }) => name),
        ).toEqual([]);
    });

    it('eats every kind with pieces that suit it', () => {
        const strange = [...cupboard.kinds.values()].flatMap((kind) =>
            (kind.eaten ?? [])
                .flat()
                .filter((use) => !suits(piece(use.piece.name), kind, cupboard))
                .map((use) => `${kind.name}: ${use.piece.name}`),
        );
        expect(strange).toEqual([]);
    });

    it('stands every vessel on a plate', () => {
        const notPlates = [...cupboard.pieces.values()].flatMap(({ name, on }) =>
            on.filter((under) => piece(under.name).family !== 'plate').map((under) => `${name} on ${under.name}`),
        );
        expect(notPlates).toEqual([]);
    });

    it('stands every bowl and cup on a plate wider than its foot', () => {
        const wide = [...cupboard.pieces.values()].flatMap(({ name, measures, on }) =>
            on
                .filter((under) => (measures.across?.low ?? 0) >= figure(under.name, 'across').high)
                .map((under) => `${name} on ${under.name}`),
        );
        expect(wide).toEqual([]);
    });

    it('pairs pieces of the cover that are not of one family', () => {
        const atTheCover = [...cupboard.pieces.values()].filter((each) => each.family !== 'gear');
        const alike = atTheCover.flatMap(({ name, family, pairs }) =>
            pairs.filter((pair) => piece(pair.name).family === family).map((pair) => `${name} with ${pair.name}`),
        );
        expect(alike).toEqual([]);
    });

    it('measures with the words the rules know, the smaller figure first', () => {
        const words = new Set([
            'length',
            'width',
            'across',
            'depth',
            'height',
            'holds',
            'surface',
            'widest',
            'stainless',
            'porcelain',
            'glass',
            'horn',
            'linen',
            'compartments',
            'pieces',
            'racks',
        ]);
        const dimension = (word: string): string => {
            if (['compartments', 'pieces', 'racks'].includes(word)) {
                return 'count';
            }
            if (word === 'holds') {
                return 'volume';
            }
            if (word === 'widest') {
                return 'share';
            }
            return ['length', 'width', 'across', 'depth', 'height', 'surface'].includes(word) ? 'length' : 'mass';
        };
        for (const { name, measures } of cupboard.pieces.values()) {
            for (const [word, { low, high, size }] of Object.entries(measures)) {
                expect(words.has(word), `${name} ${word}`).toBe(true);
                expect(size.dimension, `${name} ${word}`).toBe(dimension(word));
                expect(low, `${name} ${word}`).toBeGreaterThan(0);
                expect(high, `${name} ${word}`).toBeGreaterThanOrEqual(low);
            }
        }
    });
});

describe('the sources of the standard cupboard', () => {
    const cited = [...new Set(clauses.flatMap(({ clause }) => clause.source ?? []))];
    const published = cited.filter((source) => source !== 'common practice');

    it('stand beside every figure', () => {
        const figures = /^(FactMeasure|FactTines|KindRange|KindPortion|KindCookTo|KindStrength|CodeFigure)$/;
        const stated = clauses.filter(({ clause }) => figures.test(clause.$type));
        expect(stated.length).toBeGreaterThan(300);
        expect(stated.filter(({ clause }) => !clause.source).map(({ where }) => where)).toEqual([]);
    });

    it('stand beside what a piece is for, stands on and pairs with', () => {
        const claims = clauses.filter(({ clause }) => /^Fact(For|On|Pairs)$/.test(clause.$type));
        expect(claims.filter(({ clause }) => !clause.source).map(({ where }) => where)).toEqual([]);
    });

    it('stand behind every piece, kind, drink, substance, diet and code', () => {
        const unfounded = [
            cupboard.pieces,
            cupboard.kinds,
            cupboard.drinks,
            cupboard.substances,
            cupboard.diets,
            cupboard.codes,
        ].flatMap((all) => [...all.values()].filter(({ sources }) => sources.length === 0).map(({ name }) => name));
        expect(unfounded).toEqual([]);
    });

    it('have the form of a row or a section', () => {
        expect(
            published.filter(
                (source) => !/^(table-service|temperature|quantities) [A-Z]{0,2}\d+(\.\d+)?$/.test(source),
            ),
        ).toEqual([]);
        expect(published.length).toBeGreaterThan(50);
    });

    // The published facts lie beside the checkout where this project is worked on; elsewhere there is nothing to look up.
    const facts = (file: string) => new URL(`../../../../../shared/sources/${file}.md`, import.meta.url);
    it.runIf(existsSync(facts('table-service')))('exist as rows or sections of the published facts', () => {
        const lines = new Map(
            ['table-service', 'temperature', 'quantities'].map((file) => [
                file,
                readFileSync(facts(file), 'utf8').split('\n'),
            ]),
        );
        const missing = published.filter((source) => {
            const [file = '', row = ''] = source.split(' ');
            const starts = [`| ${row} |`, `## ${row}. `, `### ${row} `];
            return !lines.get(file)?.some((line) => starts.some((start) => line.startsWith(start)));
        });
        expect(missing).toEqual([]);
    });
});

describe('the sizes of the standard cupboard', () => {
    it('rank plates as published (table-service 3.60)', () => {
        const plates = ['service-plate', 'dinner-plate', 'entree-plate', 'dessert-plate', 'bread-plate'];
        expectFalling(plates.map((name) => middle(name, 'across')));
    });

    it('rank the fourteen spoons as published (table-service 3.73)', () => {
        const spoons = [
            'iced-beverage-spoon',
            'soup-spoon',
            'dessert-spoon',
            'place-spoon',
            'cream-soup-spoon',
            'teaspoon',
            'five-o-clock-spoon',
            'ice-cream-spoon',
            'citrus-spoon',
            'bouillon-spoon',
            'coffee-spoon',
            'chocolate-spoon',
            'demitasse-spoon',
            'salt-spoon',
        ];
        expect(spoons).toHaveLength(14);
        expectFalling(spoons.map((name) => middle(name, 'length')));
    });

    it('make salad plate and salad silver smaller than those for meat (table-service 3.75)', () => {
        expect(figure('salad-plate', 'across').high).toBeLessThan(figure('dinner-plate', 'across').low);
        expect(figure('salad-fork', 'length').high).toBeLessThan(figure('dinner-fork', 'length').low);
        expect(figure('salad-knife', 'length').high).toBeLessThan(figure('dinner-knife', 'length').low);
    });

    it('make the oyster fork smaller than the salad fork, with three tines (table-service 3.74)', () => {
        expect(figure('oyster-fork', 'length').high).toBeLessThan(figure('salad-fork', 'length').low);
        expect(piece('oyster-fork').tines).toEqual({ low: 3, high: 3 });
    });

    it('keep the soup spoon inside the wider published range (table-service 3.70)', () => {
        const { low, high } = figure('soup-spoon', 'length');
        expect(low).toBeGreaterThanOrEqual(5.75 * MM_PER_INCH);
        expect(high).toBeLessThanOrEqual(8.25 * MM_PER_INCH);
    });

    // Figures read off the source's own row by hand, in inches.
    it.each([
        ['dinner-knife', 'length', 9.5, 10, 'table-service 3.61'],
        ['dinner-fork', 'length', 7.5, 8, 'table-service 3.62'],
        ['luncheon-knife', 'length', 9, 9, 'table-service 3.63'],
        ['place-fork', 'length', 7.25, 7.25, 'table-service 3.64'],
        ['fish-fork', 'length', 7.25, 7.75, 'table-service 3.66'],
        ['lobster-fork', 'length', 6.75, 8, 'table-service 3.67'],
        ['teaspoon', 'length', 5.875, 5.875, 'table-service 3.69'],
        ['dessert-spoon', 'length', 7, 7.25, 'table-service 3.71'],
        ['service-plate', 'across', 10, 11, 'table-service 3.50'],
        ['entree-plate', 'across', 8.5, 9.5, 'table-service 3.54'],
        ['dessert-plate', 'across', 7.5, 8, 'table-service 3.55'],
        ['bread-plate', 'across', 6, 6.5, 'table-service 3.56'],
        ['soup-plate', 'across', 8, 8.5, 'table-service 3.57'],
        ['napkin', 'length', 20, 24, 'table-service 3.36'],
        ['cream-soup-bowl', 'across', 4.5, 5, 'quantities 8'],
    ])('hold %s %s as published', (name, measure, low, high, source) => {
        const found = figure(name, measure);
        expect(found.low).toBeCloseTo(low * MM_PER_INCH, 6);
        expect(found.high).toBeCloseTo(high * MM_PER_INCH, 6);
        expect(found.source).toBe(source);
    });

    it.each([
        ['tea-cup', 190, 190, 'table-service 3.59'],
        ['demitasse-cup', 100, 100, 'table-service 3.59'],
        ['water-glass', 8 * ML_PER_FL_OZ, 12 * ML_PER_FL_OZ, 'quantities 8'],
        ['white-wine-glass', 240, 360, 'quantities 8'],
        ['sparkling-flute', 180, 180, 'quantities 8'],
        ['tasting-glass', 215, 215, 'quantities 8'],
    ])('let %s hold what is published, ml', (name, low, high, source) => {
        const found = figure(name, 'holds');
        expect(found.low).toBeCloseTo(low, 1);
        expect(found.high).toBeCloseTo(high, 1);
        expect(found.source).toBe(source);
    });

    it('eat the dishes of the published list with the pieces it names (table-service 7.23 to 7.41)', () => {
        const eaten = (kind: string) => (cupboard.kinds.get(kind)?.eaten ?? []).flat().map((use) => use.piece.name);
        expect(eaten('oysters')).toEqual(['oyster-fork']);
        expect(eaten('shrimp-cocktail')).toEqual(['oyster-fork']);
        expect(eaten('fruit-cocktail')).toContain('teaspoon');
        expect(eaten('soup')).toEqual(['soup-spoon']);
        expect(eaten('fish')).toEqual(['fish-fork', 'fish-knife']);
        expect(eaten('asparagus')).toContain('joint-fork');
        expect(eaten('caviar')).toEqual(['caviar-knife']);
        expect(eaten('roast')).toEqual(['dinner-fork', 'dinner-knife']);
        expect(eaten('salad')).toEqual(['salad-fork', 'salad-knife']);
        expect(eaten('sorbet')).toEqual(['sorbet-spoon']);
        expect(eaten('dessert')).toEqual(['dessert-fork', 'dessert-spoon']);
        expect(eaten('fruit')).toContain('fruit-knife');
        expect(eaten('lobster')).toContain('lobster-fork');
    });
});
