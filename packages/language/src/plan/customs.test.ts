import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, expectTypeOf, it } from 'vitest';
import { parseText } from '../grammar/parse.js';
import { customSpecs, guestsPerServer, type CustomValueOf } from './customs.js';
import { disagreements } from './disagreements.js';

/** Words that start a clause elsewhere: as a choice they stand in quotes. */
const wordsOfTheLanguage = new Set(['stated']);

const byName = new Map(customSpecs.map((spec) => [spec.name, spec]));

describe('the customs', () => {
    it('have names of their own', () => {
        expect(byName.size).toBe(customSpecs.length);
    });

    it.each(customSpecs)('$name is complete and accepts its default', (spec) => {
        const { choices = [], figure } = spec;
        const words = choices.map((choice) => choice.value);
        expect(new Set(words).size).toBe(words.length);
        expect(words.length + (figure ? 1 : 0)).toBeGreaterThan(0);
        if (figure) {
            expect(figure.low).toBeLessThan(figure.high);
            expect(figure.sources).not.toEqual([]);
        } else {
            expect(words.length).toBeGreaterThan(1);
        }
        if (typeof spec.default === 'string') {
            expect(words).toContain(spec.default);
        } else {
            expect(figure?.low).toBeLessThanOrEqual(spec.default);
            expect(figure?.high).toBeGreaterThanOrEqual(spec.default);
        }
        expect(choices.filter((choice) => choice.sources.length === 0)).toEqual([]);
        expect(spec.title).toMatch(/^[A-Z].*\.$/);
        expect(spec.because).toMatch(/^[\dA-Z].*\.$/);
    });

    it.each(customSpecs)('$name can be written in a house with every value it accepts', ({ name, choices, figure }) => {
        const units = {
            count: '',
            length: ' mm',
            area: ' sq m',
            share: ' %',
            time: ' min',
            volume: ' ml',
            mass: ' g',
            temperature: ' °C',
        };
        const amount = figure ? `${figure.high}${units[figure.dimension]}` : [];
        const values = [...(choices ?? []).map((choice) => choice.value), amount].flat();
        if (figure?.per) {
            values.push(`${String(amount)} per ${figure.per}`);
        }
        for (const word of values) {
            const value = wordsOfTheLanguage.has(word) ? `"${word}"` : word;
            const text = `house "Saltmarsh Hall" { laying { ${name}: ${value}   ${name}: ${value} } }`;
            const { tree, problems } = parseText(text);
            expect(problems, text).toEqual([]);
            expect(tree.items, text).toMatchObject([{ clauses: [{ customs: [{ name }, { name }] }] }]);
        }
    });

    it('type a value as its own words and figures', () => {
        expectTypeOf<CustomValueOf<'dessert'>>().toEqualTypeOf<'above' | 'brought' | 'laid'>();
        expectTypeOf<CustomValueOf<'limit'>>().toEqualTypeOf<number | 'none'>();
        expectTypeOf<CustomValueOf<'edge'>>().toEqualTypeOf<number>();
    });

    it('state the ratio of each style of service', () => {
        const styles = byName.get('service-style')?.choices ?? [];
        expect(styles.map((style) => style.value)).toEqual(Object.keys(guestsPerServer));
        for (const [style, guests] of Object.entries(guestsPerServer)) {
            expect(styles.find(({ value }) => value === style)?.means).toContain(` ${guests} guests a server`);
        }
    });

    it('hold the figures of their sources', () => {
        // To the micrometre, for 24 × 25.4 is not exact in binary.
        const inches = (count: number) => Number((count * 25.4).toFixed(3));
        const range = (name: Parameters<typeof byName.get>[0]) => {
            const spec = byName.get(name);
            return [spec?.default, spec?.figure?.low, spec?.figure?.high];
        };
        // table-service 3.14; 3.11; 3.16
        expect(range('edge')).toEqual([inches(1), inches(1 / 2), inches(2)]);
        // table-service 3.1; 3.5; 3.7
        expect(range('cover-width')).toEqual([inches(24), inches(20), inches(30)]);
        // table-service 3.2
        expect(range('cover-depth')[0]).toBe(inches(15));
        // table-service 3.29; 3.28
        expect(range('cloth-drop').slice(0, 2)).toEqual([inches(12), inches(8)]);
        // table-service 4.16; 4.17
        expect(range('water-fill')).toEqual([3 / 4, 1 / 2, 3 / 4]);
        // table-service 4.22; 4.25
        expect(range('wine-fill')[0]).toBe(2 / 3);
        expect(range('sparkling-fill')[0]).toBe(3 / 4);
        // table-service 4.7; 4.9; 4.10
        expect(range('most-wine-glasses')[0]).toBe(3);
        expect(range('most-glasses')).toEqual([5, 1, 6]);
        // table-service 1.4
        expect(range('limit')[0]).toBe(3);
    });
});

describe('the published disagreements', () => {
    it('are all 39, each once', () => {
        expect(disagreements.map(({ number }) => number)).toEqual(Array.from({ length: 39 }, (_, index) => index + 1));
    });

    it.each(disagreements)('$number. $about: two positions or more, and one way to deal with them', (disagreement) => {
        expect(disagreement.positions.length).toBeGreaterThan(1);
        expect(disagreement.positions.filter(({ sources }) => sources.length === 0)).toEqual([]);
        if ('noCheck' in disagreement) {
            expect(disagreement.noCheck).toMatch(/^[A-Z].*\.$/);
        } else {
            expect(disagreement.carriedBy).not.toEqual([]);
        }
    });

    it('and the customs name each other', () => {
        const fromDisagreements = disagreements.flatMap((disagreement) =>
            'carriedBy' in disagreement ? disagreement.carriedBy.map((name) => `${disagreement.number} ${name}`) : [],
        );
        const fromCustoms = customSpecs.flatMap((spec) => spec.disagreements.map((number) => `${number} ${spec.name}`));
        expect(fromCustoms.toSorted()).toEqual(fromDisagreements.toSorted());
    });
});

describe('the sources', () => {
    const noSource = 'common practice, no source';
    const cited = [
        ...customSpecs.flatMap((spec) => [
            ...(spec.figure?.sources ?? []),
            ...(spec.choices ?? []).flatMap((choice) => choice.sources),
        ]),
        ...disagreements.flatMap(({ positions }) => positions.flatMap(({ sources }) => sources)),
    ];
    const published = [...new Set(cited.filter((source) => source !== noSource))];

    it('have the form of a row', () => {
        expect(published.filter((source) => !/^(table-service|temperature|quantities) [\w.§-]+$/.test(source))).toEqual(
            [],
        );
    });

    it('stand behind every position in a disagreement', () => {
        expect(
            disagreements.flatMap(({ positions }) => positions.flatMap((position) => position.sources)),
        ).not.toContain(noSource);
    });

    // The published facts lie beside the checkout where this project is worked on; elsewhere there is nothing to look up.
    const facts = (file: string) => new URL(`../../../../../shared/sources/${file}.md`, import.meta.url);
    it.runIf(existsSync(facts('table-service')))('exist as rows of the published facts', () => {
        const texts = new Map(
            ['table-service', 'temperature', 'quantities'].map((file) => [file, readFileSync(facts(file), 'utf8')]),
        );
        const missing = published.filter((source) => {
            const [file = '', row = ''] = source.split(' ');
            const starts = row.startsWith('§')
                ? [`## ${row.slice(1)} `, `## ${row.slice(1)}. `, `### ${row.slice(1)} `]
                : [`| ${row} |`, `### ${row} `];
            return !texts
                .get(file)
                ?.split('\n')
                .some((line) => starts.some((start) => line.startsWith(start)));
        });
        expect(missing).toEqual([]);
    });
});
