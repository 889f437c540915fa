import { readdirSync, readFileSync } from 'node:fs';
import fc, { type GeneratorValue } from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { askNextRule, check, PlanChecker, type Checked } from './check.js';
import { planText } from './output/plan-json.js';
import { filesInMemory } from './plan/files.js';
import { FileReader } from './plan/read-text.js';
import type { Reading } from './plan/types.js';
import { rules } from './rules/index.js';
import type { Service } from './service/types.js';

// A plan that is checked again after each change says what it says when it is checked for the first time.

const HALL = new URL('../../../examples/saltmarsh-hall/', import.meta.url);
const hall = (): Record<string, string> =>
    Object.fromEntries(
        readdirSync(HALL, { recursive: true, encoding: 'utf8' })
            .filter((path) => /\.(cover|md|json)$/.test(path))
            .map((path) => [path, readFileSync(new URL(path, HALL), 'utf8')]),
    );
const EVENTS = ['lantern-supper.cover', 'summer-lunch.cover', 'mess-night.cover'];
const OF_EACH = ['house.cover', 'cupboard.cover', 'long-gallery.cover'];

/** All that anybody can read of it, with every place. */
const said = (checked: Checked): unknown => ({
    findings: checked.findings.map(({ fixes, ...finding }) => ({ ...finding, fixes })),
    broken: checked.broken.map(({ rule }) => rule),
    plan: planText(checked, true),
});

/** A reader that keeps what it has read, for each file. */
function readerOf(): (file: string, text: string) => Reading {
    const readers = new Map<string, FileReader>();
    const last = new Map<string, { text: string; reading: Reading }>();
    return (file, text) => {
        const known = last.get(file);
        if (known?.text === text) {
            return known.reading;
        }
        const reader = readers.get(file) ?? new FileReader(file);
        readers.set(file, reader);
        const reading = reader.read(text);
        last.set(file, { text, reading });
        return reading;
    };
}

class Typed {
    readonly texts = hall();
    readonly #checker: PlanChecker;
    readonly #readText = readerOf();

    constructor(readonly event: string) {
        this.#checker = new PlanChecker(event);
    }

    again(): Checked {
        return this.#checker.check(filesInMemory(this.texts), { readText: this.#readText });
    }

    /** Looks at it and asks so many rules. */
    inPassing(asked: number): void {
        const seen = this.again();
        for (let rule = 0; rule < asked; rule++) {
            askNextRule(seen);
        }
    }

    fresh(): Checked {
        return check(this.event, filesInMemory(this.texts));
    }
}

const TYPED = ['x', '1', ' ', '\n', '"', '{', '}', '// ', '12', 'soup-spoon', 'milk', 'gluten', ' 64 °C', 'vegan'];

/** A text after something that a person may do to it. */
function edited(text: string, choose: GeneratorValue): string {
    const nat = (max: number): number => choose(fc.nat, { max });
    const at = nat(text.length);
    const lines = text.split('\n');
    const [from, to] = [nat(lines.length - 1), nat(lines.length - 1)];
    const ways: (() => string)[] = [
        () => text.slice(0, at) + TYPED[nat(TYPED.length - 1)]! + text.slice(at),
        () => text.slice(0, at) + TYPED[nat(3)]! + text.slice(at),
        () => text.slice(0, at) + text.slice(at + 1 + nat(10)),
        () => text.slice(0, at) + text.slice(at + 1),
        () => lines.toSpliced(from, 0, lines[to]!).join('\n'),
        () => lines.toSpliced(from, 1).join('\n'),
        () => lines.toSpliced(from, 1).toSpliced(to, 0, lines[from]!).join('\n'),
        () => `// a line more\n${text}`,
    ];
    return ways[nat(ways.length - 1)]!();
}

describe('a plan checked again', () => {
    it.each(EVENTS)(
        'says of %s after any changes what it says at first sight',
        (event) => {
            fc.assert(
                fc.property(fc.gen(), (choose) => {
                    const typed = new Typed(event);
                    typed.again();
                    const steps = choose(fc.integer, { min: 4, max: 10 });
                    for (let step = 0; step < steps; step++) {
                        const file = [event, event, event, ...OF_EACH][choose(fc.nat, { max: 5 })]!;
                        const before = typed.texts[file]!;
                        // Often it was looked at meanwhile, and not to the end.
                        for (let hasty = choose(fc.nat, { max: 2 }); hasty > 0; hasty--) {
                            typed.texts[file] = edited(before, choose);
                            typed.inPassing(choose(fc.nat, { max: rules.length }));
                            typed.texts[file] = before;
                        }
                        typed.texts[file] = edited(before, choose);
                        expect(said(typed.again()), `${step}`).toEqual(said(typed.fresh()));
                        // Taken back as often as not, as one who tries something does.
                        if (choose(fc.boolean)) {
                            typed.texts[file] = before;
                            expect(said(typed.again()), `${step}, taken back`).toEqual(said(typed.fresh()));
                        }
                    }
                }),
                { numRuns: process.env.SLOW ? 100 : 10, seed: 20261129, endOnFailure: true },
            );
        },
        600_000,
    );

    it('says who drinks what when a section has come out the same from others', () => {
        const typed = new Typed('summer-lunch.cover');
        typed.texts['summer-lunch.cover'] = typed.texts['summer-lunch.cover']!.replace(
            '"Pale rosé" 120 ml',
            '"Pale rosé"',
        );
        void typed.again().findings;
        expect(typed.texts['summer-lunch.cover']).not.toBe(hall()['summer-lunch.cover']);
        typed.texts['house.cover'] = typed.texts['house.cover']!.replace('white-wine-glass', 'white -wine-glass');
        expect(typed.texts['house.cover']).not.toBe(hall()['house.cover']);
        expect(said(typed.again())).toEqual(said(typed.fresh()));
    });
});

describe('what a change does not touch', () => {
    /** Of all rules, those that are asked again after a change. */
    function askedAfter(change: (text: string) => string, file = 'lantern-supper.cover'): readonly string[] {
        const typed = new Typed('lantern-supper.cover');
        void typed.again().findings;
        typed.texts[file] = change(typed.texts[file]!);
        expect(typed.texts[file]).not.toBe(hall()[file]);
        const asked: string[] = [];
        const spies = rules.map((rule) => {
            const { check: original } = rule;
            return vi.spyOn(rule, 'check').mockImplementation((input) => {
                asked.push(rule.id);
                original(input);
            });
        });
        void typed.again().findings;
        spies.forEach((spy) => spy.mockRestore());
        // It is asked every time, for it judges what the others have said.
        return asked.filter((id) => id !== 'waiver-without-effect');
    }

    it('is not asked again: no rule for a comment or a line more', () => {
        expect(askedAfter((text) => `// One more.\n\n${text}`)).toEqual([]);
        expect(askedAfter((text) => text.replace('menu {', 'menu {\n    // What is served.'))).toEqual([]);
    });

    it('is asked again where it is touched, and few others are', () => {
        const unused = '\nspoon marsh-spoon is teaspoon { length 120 mm }\n';
        const asked = askedAfter((text) => `${text}${unused}`);
        expect(asked).toContain('unknown-name');
        expect(asked).not.toContain('cold-at-the-guest');
        expect(asked.length).toBeLessThan(rules.length / 4);
        expect(askedAfter((text) => text.replace(/\d+ °C/, '41 °C'))).toContain('serving-temperature');
    });

    it('is not asked again for what a dish is called, unless it names it', () => {
        const asked = askedAfter((text) => text.replace('"Grilled sirloin"', '"Charred sirloin"'));
        expect(asked).toContain('hot-below-holding');
        expect(asked).not.toContain('pieces-overlap');
        expect(asked.length).toBeLessThan(rules.length / 3);
    });

    it('is not asked again for how many of a piece the house owns, unless it counts them', () => {
        const asked = askedAfter((text) => text.replace(/own (\d)/, 'own 1$1'), 'house.cover');
        expect(asked).toContain('stock-short');
        expect(asked).not.toContain('three-per-side');
        expect(asked.length).toBeLessThan(rules.length / 3);
    });

    it('is not asked again for what lies beside a dish, unless it asks what is in it', () => {
        const asked = askedAfter((text) => text.replace('"Toasted pumpkin seed"', '"Toasted pumpkin seeds"'));
        expect(asked).toContain('allergens-not-stated');
        expect(asked).not.toContain('three-per-side');
        expect(asked).not.toContain('table-waits');
        expect(asked.length).toBeLessThan(rules.length / 4);
    });

    it('stays the very same: covers, seats, drinks and the warmth of other dishes', () => {
        const typed = new Typed('lantern-supper.cover');
        const before = { ...typed.again().service };
        const change = (from: string, to: string): Service => {
            typed.texts['lantern-supper.cover'] = typed.texts['lantern-supper.cover']!.replace(from, to);
            expect(typed.texts['lantern-supper.cover']).not.toBe(hall()['lantern-supper.cover']);
            return typed.again().service;
        };
        const named = change('"Toasted pumpkin seed"', '"Toasted pumpkin seeds"');
        expect(named.variations).toBe(before.variations);
        expect(named.drinks).toBe(before.drinks);

        const dishes = [...before.heat.dishes];
        const cooler = change('warmed to 60 °C at 62 °C', 'warmed to 61 °C at 62 °C');
        const others = cooler.heat.dishes.filter((dish) => dishes.includes(dish));
        expect(cooler.seats).toBe(before.seats);
        expect(cooler.variations).toBe(before.variations);
        expect(others.length).toBe(dishes.length - 1);
    });
});
