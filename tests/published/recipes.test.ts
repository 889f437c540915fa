/**
 * Recipes scaled to an event, against rows of quantities.md: the scaling rules and bands of the Armed Forces Recipe Service (AFRS,
 * §3.2), purchase quantities of the Food Buying Guide (FBG, §3.3, §12), and the worked examples Q15 to Q22 (§14.1).
 */
import { check, factorForStock, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { factorForPortions } from '../../packages/language/src/service/recipes/factor.js';
import { decimalPounds, toQuarter } from '../../packages/language/src/service/recipes/rounding.js';

interface Figure {
    readonly written: string;
    readonly grams?: number;
    readonly millilitres?: number;
    readonly count?: number;
    readonly decimalPounds?: number;
}

interface Recipe {
    readonly makes?: Figure;
    readonly scaled: {
        readonly portionsNeeded: number;
        readonly factor: number;
        readonly ingredients: readonly [{ readonly scaled: Figure; readonly inAll?: Figure; readonly buy?: Figure }];
    };
}

const OUNCE = 28.349523125;
const GALLON = 3785.411784;

/** The recipe of the one dish of an event, as the compiled plan has it, and what the check says of it. */
function cooked(parts: { guests: number; portion?: string; front: string; ingredient?: string }) {
    const { guests, portion, front, ingredient } = parts;
    const files = filesInMemory({
        'card.md': `---\n${front}\n---\n## Ingredients\n\n- ${ingredient ?? 'salt, to taste'}\n`,
        'supper.cover': `event "Lantern supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests ${guests} }
menu {
    course main "Stew" {
        served in soup-plate warmed at 64 °C${portion === undefined ? '' : `, portion ${portion}`}
        lasts 15 min
        contains nothing
        recipe "card.md"
    }
}
`,
    });
    const checked = check('supper.cover', files);
    const { recipes } = planJson(checked) as unknown as { recipes: readonly [Recipe] };
    const told = checked.findings.find(({ rule }) => rule === 'recipe-yield-short')?.message;
    return { ...recipes[0], ...recipes[0].scaled, first: recipes[0].scaled.ingredients[0], told };
}

describe('worked examples (quantities 14.1)', () => {
    it('Q15: a card for 100 and 348 wanted give the factor 3.48 (AFRS)', () => {
        const { factor, portionsNeeded, told } = cooked({ guests: 348, front: 'yield: 100' });
        expect({ factor, portionsNeeded }).toEqual({ factor: 3.48, portionsNeeded: 348 });
        expect(told).toContain('make it 3.48 times');
    });

    it('Q16: 1 lb 4 oz become 4.35 lb, which are weighed as 4 lb 5 1/2 oz (AFRS)', () => {
        const { first } = cooked({ guests: 348, front: 'yield: 100', ingredient: '1 lb 4 oz beef' });
        expect(first.scaled.written).toBe('4 lb 5 1/2 oz');
        expect(first.scaled.decimalPounds).toBe(4.35);
        expect(first.scaled.grams).toBeCloseTo(4.35 * 16 * OUNCE, 6);
        // The published step between: 0.35 lb are 5 3/5 oz.
        expect((4.35 - 4) * 16).toBeCloseTo(5.6, 9);
    });

    it('Q17: 102 lb in the house of what a card takes 30 lb of make it 3.4 times (AFRS)', () => {
        expect(factorForStock(102, 30)).toBe(3.4);
    });

    it('Q18: 348 portions of 3 oz from a card for 100 of 4 oz give the factor 2.61 (AFRS)', () => {
        const { factor, told } = cooked({ guests: 348, portion: '3 oz', front: 'yield: 100 portions of 4 oz' });
        expect(factor).toBe(2.61);
        expect(told).toContain('348 portions of 3 oz for `Stew`: make it 2.61 times');
    });

    it('Q19: 100 times 8 oz of soup are 6.25 gal, from 10 cans of 3 lb 2 oz, 31 lb 4 oz (AFRS-P)', () => {
        const { factor, makes, first } = cooked({
            guests: 100,
            portion: '8 fl oz',
            front: 'yield: 6 1/4 gal',
            ingredient: '10 cans (3 lb 2 oz) condensed soup',
        });
        expect(factor).toBe(1);
        expect(makes?.written).toBe('6 gal 1 qt');
        expect(makes?.millilitres).toBeCloseTo(6.25 * GALLON, 6);
        expect(first.inAll?.written).toBe('31 lb 4 oz');
        expect(first.buy?.written).toBe('10 cans');
    });

    it('Q20: 2 lb of diced watermelon with a yield of 0.61 are bought as 3.5 lb, 3.28 rounded up (FBG-B)', () => {
        const { first } = cooked({
            guests: 100,
            front: 'yield: 100',
            ingredient: 'watermelon, 2 lb, diced, yield 61 %',
        });
        expect(first.buy?.written).toBe('3 1/2 lb');
        expect(2 / 0.61).toBeCloseTo(3.28, 2);
    });

    it('Q21: 460 half cups from 3 cans for 100 quarter cups are 27.6 cans, and 28 are bought (FBG-F)', () => {
        const { factor, first } = cooked({
            guests: 460,
            // Half a cup.
            portion: '4 fl oz',
            front: 'yield: 100 portions of 1/4 cup',
            ingredient: '3 cans corn',
        });
        expect(factor).toBe(9.2);
        expect(first.scaled.count).toBeCloseTo(27.6, 9);
        expect(first.buy).toEqual({ written: '28 cans', count: 28 });
    });

    it('Q22: 230 times 2 oz from 8.5 lb for 100 times 1 oz are 39.1 lb of beef (FBG-F)', () => {
        const { factor, first } = cooked({
            guests: 230,
            portion: '2 oz',
            front: 'yield: 100 portions of 1 oz',
            ingredient: 'ground beef, 8.5 lb',
        });
        expect(factor).toBe(4.6);
        expect(first.scaled.decimalPounds).toBe(39.1);
        expect(first.scaled.written).toBe('39 lb 1 1/2 oz');
        expect(first.buy?.written).toBe('39 1/2 lb');
    });
});

describe('ounces as decimal pounds (quantities 3.2, AFRS)', () => {
    const TABLE = [0.06, 0.13, 0.19, 0.25, 0.31, 0.38, 0.44, 0.5, 0.56, 0.63, 0.69, 0.75, 0.81, 0.88, 0.94];

    it.each(TABLE.map((pounds, index) => [index + 1, pounds] as const))('%s oz are %s lb', (ounces, pounds) => {
        expect(decimalPounds(ounces)).toBe(pounds);
    });
});

describe('the bands of a fraction of an ounce (quantities 3.2, AFRS)', () => {
    it.each([
        [0, 12, 0],
        [13, 37, 0.25],
        [38, 62, 0.5],
        [63, 87, 0.75],
        [88, 99, 1],
    ])('.%s to .%s go to %s', (from, to, rounded) => {
        for (let hundredths = from; hundredths <= to; hundredths += 1) {
            expect(toQuarter(7 + hundredths / 100), `${hundredths}`).toBe(7 + rounded);
        }
    });
});

describe('measures (quantities 3.2, AFRS)', () => {
    it.each([
        ['1 tbsp', '3 tsp'],
        ['1 cup', '16 tbsp'],
        ['1 pt', '2 cups'],
        ['1 qt', '2 pt'],
        ['1 gal', '4 qt'],
    ])('%s is %s', (one, several) => {
        const measured = (amount: string) =>
            cooked({ guests: 100, front: 'yield: 100', ingredient: `${amount} milk` }).first.scaled;
        expect(measured(one).millilitres).toBe(measured(several).millilitres);
        expect(measured(one).written).toBe(measured(several).written);
    });
});

describe('what is not published', () => {
    it.each([
        // A factor that does not come out even is rounded up, so that nobody goes without (common practice, no source).
        [30, 82, 2.74],
        [12, 1, 0.0834],
        [100, 84, 0.84],
    ])('a card for %s and %s wanted is made %s times', (yielded, wanted, factor) => {
        expect(factorForPortions(wanted, yielded)).toBe(factor);
    });

    it('never falls short and is at most one part in a hundred too much', () => {
        for (let yielded = 1; yielded <= 200; yielded += 7) {
            for (let wanted = 1; wanted <= 400; wanted += 3) {
                const factor = factorForPortions(wanted, yielded);
                expect(factor * yielded).toBeGreaterThanOrEqual(wanted * (1 - 1e-12));
                expect(factor * yielded).toBeLessThanOrEqual(wanted * 1.01);
            }
        }
    });
});
