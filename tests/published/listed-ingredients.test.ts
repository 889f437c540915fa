/**
 * What a recipe's list of ingredients and the title of a dish tell, against the allergen lists of temperature.md: the United States (§3.1), the European
 * Union (§3.2), Canada (§3.3), Australia and New Zealand (§3.4), and the test idea below them.
 */
import { check, filesInMemory } from 'underliner-language';
import { describe, expect, it } from 'vitest';

/** What the check tells of a dish that is said to contain nothing, by one rule. */
function foundIn(rule: string, code: string, dish: string, card = ''): string[] {
    const files = filesInMemory({
        'card.md': card,
        'supper.cover': `event "Lantern supper" { date 2026-10-17  zone UTC  local code ${code}  seated 19:00  guests 20 }
menu {
    course salad ${dish}
        served on salad-plate at 8 °C
        lasts 15 min
        contains nothing
    }
}
`,
    });
    return check('supper.cover', files)
        .findings.filter((finding) => finding.rule === rule)
        .map(({ message }) => message);
}

/** What is told of a dish whose recipe lists one ingredient. */
function toldOf(ingredient: string, code: string): string[] {
    const card = `---\nyield: 40\n---\n## Ingredients\n\n- ${ingredient}\n`;
    return foundIn('ingredient-not-stated', code, '"Leaves" { recipe "card.md"', card).map(
        (message) => /contain (.*); its recipe/.exec(message)![1]!,
    );
}

/** What is told of a dish that is called by the same words, without the amount. */
function toldOfTitle(ingredient: string, code: string): string[] {
    const title = ingredient.replace(/^\d+ /, '').replace(/,? *\d.*$/, '');
    return foundIn('title-food-not-stated', code, `"Leaves with ${title}" {`).map(
        (message) => /tells of (.*), which/.exec(message)![1]!,
    );
}

const isTold = (ingredient: string, code: string): boolean => toldOf(ingredient, code).length > 0;

describe('an ingredient of a list, or of a title', () => {
    it.each([
        ['milk, 2 l', 'milk'],
        ['20 eggs', 'egg'],
        ['fish, 4 kg', 'fish'],
        ['crustaceans, 1 kg', 'crustaceans'],
        ['peanuts, 400 g', 'peanut'],
        ['wheat, 2 kg', 'wheat'],
        ['soybeans, 1 kg', 'soy'],
        ['sesame seeds, 200 g', 'sesame'],
        ['Brazil nuts, 500 g', 'brazil-nut'],
        ['filberts, 500 g', 'hazelnut'],
        ['black walnuts, 500 g', 'black-walnut'],
        ['heartnuts, 500 g', 'heartnut'],
    ])('of a major food allergen of the United States is told: %s (temperature 3.1)', (line, allergen) => {
        expect(toldOf(line, 'us-model')).toEqual([`\`${allergen}\``]);
        expect(toldOfTitle(line, 'us-model')).toEqual([`\`${allergen}\``]);
    });

    it.each([
        ['spelt, 1 kg', 'wheat'],
        ['khorasan wheat, 1 kg', 'wheat'],
        ['rye, 1 kg', 'rye'],
        ['barley, 1 kg', 'barley'],
        ['oats, 1 kg', 'oats'],
        ['crustaceans, 1 kg', 'crustaceans'],
        ['eggs, 20', 'egg'],
        ['fish, 4 kg', 'fish'],
        ['peanuts, 400 g', 'peanut'],
        ['soybeans, 1 kg', 'soy'],
        ['milk, 2 l', 'milk'],
        ['lactose, 100 g', 'milk'],
        ['pecan nuts, 500 g', 'pecan'],
        ['pistachio nuts, 500 g', 'pistachio'],
        ['macadamia nuts, 500 g', 'macadamia'],
        ['celery, 2 kg', 'celery'],
        ['mustard, 400 g', 'mustard'],
        ['sesame seeds, 200 g', 'sesame'],
        ['sulphur dioxide', 'sulphites'],
        ['lupin, 1 kg', 'lupin'],
        ['molluscs, 2 kg', 'molluscs'],
    ])('of the fourteen of the European Union is told: %s (temperature 3.2)', (line, allergen) => {
        expect(toldOf(line, 'eu')).toEqual([`\`${allergen}\``]);
        expect(toldOfTitle(line, 'eu')).toEqual([`\`${allergen}\``]);
    });

    it('is told where that code lists it, and not where another does (the test idea of temperature 3)', () => {
        const codes = ['us-model', 'canada', 'au-nz', 'eu'];
        const toldIn = (line: string): string[] => codes.filter((code) => isTold(line, code));
        expect(toldIn('pine nuts, 300 g')).toEqual(['us-model', 'canada', 'au-nz']);
        expect(toldIn('coconut, 300 g')).toEqual([]);
        expect(toldIn('lupin, 1 kg')).toEqual(['au-nz', 'eu']);
        expect(toldIn('celery, 1 kg')).toEqual(['eu']);
        expect(toldIn('molluscs, 1 kg')).toEqual(['canada', 'au-nz', 'eu']);
        expect(toldIn('triticale, 1 kg')).toContain('canada');
    });

    it('is told as well where the code has an exception for it, which only a label shows (temperature 3.2)', () => {
        expect(toldOf('wheat glucose syrup, 1 kg', 'eu')).toEqual(['`wheat`']);
        expect(toldOf('fully refined soya oil, 1 l', 'eu')).toEqual(['`soy`']);
    });
});
