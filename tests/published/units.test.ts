/**
 * Every unit of the language against the figures of temperature.md §9 (NIST Handbook 44, typed here by hand), and every
 * conversion against exact fractions: the reference is fraction.js, which knows no unit; the language converts with `convert`.
 */
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { compile, filesInMemory } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { fromComputing, toComputing, UNITS, type UnitName } from '../../packages/language/src/plan/quantity.js';

const units = Object.keys(UNITS) as UnitName[];

/** One of the unit in the computing unit of its dimension: mm, ml, g, min, share. Decimals and fractions are exact. */
const FACTORS: Readonly<Record<Exclude<UnitName, '°C' | '°F'>, readonly [exact: string, row: string]>> = {
    mm: ['1', 'temperature §9: the computing unit'],
    cm: ['10', 'temperature §9: SI prefix'],
    m: ['1000', 'temperature §9: SI prefix'],
    inch: ['25.4', 'temperature §9: 1 in = 25.4 mm'],
    ft: ['304.8', 'temperature §9: 12 in'],
    'sq ft': ['0.09290304', 'temperature §9: 12 in × 25.4 mm, squared'],
    'sq m': ['1', 'the computing unit'],
    ml: ['1', 'temperature §9: the computing unit'],
    cl: ['10', 'temperature §9: SI prefix'],
    l: ['1000', 'temperature §9: SI prefix'],
    'fl oz': ['29.5735295625', 'temperature §9: US fl oz'],
    'imp fl oz': ['28.4130625', 'temperature §9: imperial fl oz'],
    g: ['1', 'temperature §9: the computing unit'],
    kg: ['1000', 'temperature §9: SI prefix'],
    oz: ['28.349523125', 'temperature §9: oz'],
    lb: ['453.59237', 'temperature §9: lb'],
    s: ['1/60', 'the second by its definition'],
    min: ['1', 'the computing unit'],
    h: ['60', 'the hour by its definition'],
    '%': ['1/100', 'the per cent by its definition'],
};

/** Right to eleven significant digits; the language keeps twelve. */
function expectFigure(computed: unknown, exact: Fraction, row?: string): void {
    const expected = exact.valueOf();
    expect(computed, row).toBeTypeOf('number');
    expect(Math.abs(Number(computed) - expected), `${row ?? ''} ${String(computed)}`).toBeLessThanOrEqual(
        Math.abs(expected) * 1e-11,
    );
}

/** In the computing unit, by fractions alone. */
function exactly(value: Fraction, unit: UnitName): Fraction {
    if (unit === '°C') {
        return value;
    }
    return unit === '°F' ? value.sub(32).mul(5, 9) : value.mul(new Fraction(FACTORS[unit][0]));
}

describe('the figures of temperature §9', () => {
    it('cover every unit of the language', () => {
        expect([...Object.keys(FACTORS), '°C', '°F'].toSorted()).toEqual(units.toSorted());
    });

    it.each(Object.entries(FACTORS))('%s is %s', (unit, [exact, row]) => {
        expectFigure(toComputing(1, unit as UnitName), new Fraction(exact), row);
        expectFigure(toComputing(7350, unit as UnitName), new Fraction(exact).mul(7350), row);
    });

    it('agree with the definitions they come from', () => {
        const inch = new Fraction('25.4');
        const usGallon = inch.pow(3).div(1000).mul(231);
        expect(usGallon.equals('3785.411784')).toBe(true);
        expect(usGallon.div(128).equals(FACTORS['fl oz'][0])).toBe(true);
        expect(new Fraction('4546.09').div(160).equals(FACTORS['imp fl oz'][0])).toBe(true);
        expect(new Fraction(FACTORS.lb[0]).div(16).equals(FACTORS.oz[0])).toBe(true);
        expect(inch.mul(12).equals(FACTORS.ft[0])).toBe(true);
    });

    // Measures of one row that the language has no word for, made up of those it has.
    it.each<readonly [number, UnitName, number, string]>([
        [128, 'fl oz', 3785.411784, 'US gal'],
        [32, 'fl oz', 946.352946, 'US qt'],
        [16, 'fl oz', 473.176473, 'US pt'],
        [8, 'fl oz', 236.5882365, 'US cup'],
        [0.5, 'fl oz', 14.78676478125, 'US tbsp'],
        [160, 'imp fl oz', 4546.09, 'imperial gal'],
        [16, 'oz', 453.59237, 'lb'],
    ])('%s %s are %s, the %s', (amount, unit, expected) => {
        expectFigure(toComputing(amount, unit), new Fraction(String(expected)));
    });

    it('keep the US and the imperial fluid ounce apart', () => {
        expect(toComputing(16, 'fl oz') - toComputing(16, 'imp fl oz')).toBeCloseTo(18.567, 3);
    });
});

describe('degrees', () => {
    it.each<readonly [number, number | string, string]>([
        [-459.67, -273.15, 'absolute zero'],
        [-40, -40, 'where the scales meet'],
        [0, '-160/9', 'zero Fahrenheit'],
        [32, 0, 'ice'],
        [50, 10, 'five ninths of 18'],
        [98.6, 37, 'the body, as printed'],
        [212, 100, 'steam'],
    ])('%s °F are %s °C: %s', (fahrenheit, celsius) => {
        expectFigure(toComputing(fahrenheit, '°F'), new Fraction(celsius));
        expect(fromComputing(new Fraction(celsius).valueOf(), '°F')).toBeCloseTo(fahrenheit, 9);
    });

    it('differ by 1.8 °F for each 1 °C, wherever on the scale (Δ°C = Δ°F/1.8)', () => {
        for (const from of [-40, 0, 41, 135, 211]) {
            expect(toComputing(from + 1.8, '°F') - toComputing(from, '°F')).toBeCloseTo(1, 9);
            expect(toComputing(from + 9, '°F') - toComputing(from, '°F')).toBeCloseTo(5, 9);
        }
    });

    // Code pairs, rounded in print.
    it.each([
        [135, 57.2],
        [165, 73.9],
        [155, 68.3],
        [145, 62.8],
        [180, 82.2],
        [171, 77.2],
        [70, 21.1],
    ])('%s °F is printed as %s °C', (fahrenheit, celsius) => {
        expect(Number(toComputing(fahrenheit, '°F').toFixed(1))).toBe(celsius);
    });
});

describe('against exact fractions', () => {
    // Hundredths, as a chef would write at the finest; up to a tonne, a kilometre, ten weeks.
    const hundredths = fc.integer({ min: -99_999_999, max: 99_999_999 });

    it.each(units)('%s: any figure, to twelve significant digits', (unit) => {
        fc.assert(
            fc.property(hundredths, (count) => {
                const computed = toComputing(count / 100, unit);
                const exact = exactly(new Fraction(count, 100), unit).valueOf();
                // Where degrees nearly cancel, the digits lost are those of the figure written.
                const scale = Math.max(Math.abs(exact), unit === '°F' ? 32 : 0);
                return Math.abs(computed - exact) <= scale * 1e-11;
            }),
        );
    });

    it.each(units)('%s: there and back is the figure written', (unit) => {
        fc.assert(
            fc.property(hundredths, (count) => {
                const back = fromComputing(toComputing(count / 100, unit), unit);
                return Math.abs(back - count / 100) <= Math.max(1, Math.abs(count / 100)) * 1e-10;
            }),
        );
    });
});

describe('through the language', () => {
    type Figure = Readonly<Record<string, string | number>>;
    interface CompiledPlan {
        readonly room: { readonly width: Figure };
        readonly house: { readonly washing: readonly [{ readonly bench: Figure }] };
        readonly menu: {
            readonly courses: readonly [
                {
                    readonly lasts: Figure;
                    readonly dishes: readonly [{ readonly servedAt: Figure; readonly portion: Figure }];
                    readonly pours: readonly [{ readonly amount: Figure; readonly strength: Figure }];
                },
            ];
        };
    }

    /** The compiled plan of a small evening; findings do not matter here. */
    function plan(parts: { course?: string; room?: string; pour?: string; house?: string }): CompiledPlan {
        const { course = '', room = '18 m by 11 m', pour = '100 ml', house = '' } = parts;
        const text = `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 4 }
house "Saltmarsh Hall" { ${house} }
room "Long gallery" ${room} { }
menu { course main "Lamb" { served on dinner-plate ${course}  contains nothing  pour "Country red" ${pour} } }`;
        const files = filesInMemory({ 'supper.cover': text });
        return JSON.parse(compile('supper.cover', files, { despiteErrors: true }).text!) as CompiledPlan;
    }

    const course = (parts: Parameters<typeof plan>[0]) => plan(parts).menu.courses[0];
    const dish = (clauses: string) => course({ course: clauses }).dishes[0];

    /** How a figure of each dimension gets into a plan, where it comes out, and under which key. */
    const WAYS: Readonly<Record<string, readonly [(figure: string) => Figure, key: string]>> = {
        temperature: [(figure) => dish(`at ${figure}`).servedAt, 'celsius'],
        length: [(figure) => plan({ room: `${figure} by ${figure}` }).room.width, 'millimetres'],
        area: [(figure) => plan({ house: `washing { bench ${figure} }` }).house.washing[0].bench, 'squareMetres'],
        volume: [(figure) => course({ pour: figure }).pours[0].amount, 'millilitres'],
        mass: [(figure) => dish(`at 60 °C, portion ${figure}`).portion, 'grams'],
        time: [(figure) => course({ course: `at 60 °C  lasts ${figure}` }).lasts, 'minutes'],
        share: [(figure) => course({ pour: `100 ml { strength ${figure} }` }).pours[0].strength, 'share'],
    };

    it.each(units)('%s: the plan keeps what was written and computes with the right value', (unit) => {
        const [inPlan, key] = WAYS[UNITS[unit].dimension]!;
        for (const figure of ['64', '12.5', '0.75']) {
            const written = `${figure} ${unit}`;
            const { written: shown, [key]: value, ...others } = inPlan(written);
            expect({ shown, others }).toEqual({ shown: written, others: {} });
            expectFigure(value, exactly(new Fraction(figure), unit));
        }
    });

    it('reads a figure below zero with either minus, and without a space before the unit', () => {
        expect(dish('at -10 °C').servedAt).toEqual({ written: '-10 °C', celsius: -10 });
        expect(dish('at \u221210 °C').servedAt.celsius).toBe(-10);
        expect(dish('at 14°F').servedAt.celsius).toBe(-10);
    });
});
