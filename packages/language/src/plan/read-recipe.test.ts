import { describe, expect, it } from 'vitest';
import { filesInMemory } from './files.js';
import { readRecipe } from './read-recipe.js';

const link = (text: string) => ({ text, origin: { file: 'events/supper.cover', start: 0, end: text.length } });
const portions = (path: string, text: string): number | undefined =>
    readRecipe(link(path), filesInMemory({ [`events/${path}`]: text })).portions;
const frontMatter = (line: string): number | undefined =>
    portions('soup.md', `---\ntitle: Soup\n${line}\n---\n# Soup\n`);

describe('the portions of a recipe', () => {
    it.each([
        ['yield: 40', 40],
        ['portions: 12', 12],
        ['yield: 40 bowls', 40],
        ['yield: 2-3', 2],
        ['servings: serves 6', 6],
    ])('are read from `%s`', (line, expected) => {
        expect(frontMatter(line)).toBe(expected);
    });

    it.each(['yield: 1.5 kg', 'yield: -3', 'yield: 0', 'portions: four', 'author: nobody', 'yield: 2 litres'])(
        'are not made up from `%s`',
        (line) => {
            expect(frontMatter(line)).toBeUndefined();
        },
    );

    it('are read from a schema.org Recipe, alone, in a list or in a graph', () => {
        const recipe = { '@type': 'Recipe', recipeYield: '100 portions of 250 ml' };
        expect(portions('soup.json', JSON.stringify(recipe))).toBe(100);
        expect(portions('soup.json', JSON.stringify([{ '@type': 'WebPage' }, recipe]))).toBe(100);
        expect(portions('soup.jsonld', JSON.stringify({ '@graph': [recipe] }))).toBe(100);
        expect(
            portions(
                'soup.json',
                JSON.stringify({ ...recipe, recipeYield: { '@type': 'QuantitativeValue', value: 24 } }),
            ),
        ).toBe(24);
    });

    it('are not asked of a file that is missing, broken or outside the workspace', () => {
        expect(readRecipe(link('soup.json'), filesInMemory({ 'events/soup.json': '{' })).state).toBe('unreadable');
        expect(readRecipe(link('soup.md'), filesInMemory({})).state).toBe('missing');
        expect(readRecipe(link('../../soup.md'), filesInMemory({})).state).toBe('outside');
    });
});

describe('what else a recipe says', () => {
    const facts = (path: string, text: string) => readRecipe(link(path), filesInMemory({ [`events/${path}`]: text }));
    const front = (...lines: string[]) => facts('soup.md', `---\n${lines.join('\n')}\n---\n# Soup\n`);
    const json = (fields: object) => facts('soup.json', JSON.stringify({ '@type': 'Recipe', ...fields }));

    it.each([
        ['yield: 100 portions of 250 ml', { portions: 100, size: 250 }],
        ['yield: "100 portions, 8 fl oz each"', { portions: 100, size: 48 }],
        ['portion: 4 oz', { portions: undefined, size: 4 }],
        ['yield: 12', { portions: 12, size: undefined }],
        ['yield: 12 bowls of 2', { portions: 12, size: undefined }],
    ])('the size of a portion from `%s`', (line, expected) => {
        const { portions, portionSize } = front(line);
        expect({ portions, size: portionSize?.low }).toEqual(expected);
    });

    it('what a batch makes, where it does not count portions', () => {
        expect(front('yield: 6 1/4 gal').makes?.low).toBe(4800);
        expect(front('yield: makes about 12 l').makes?.low).toBe(12_000);
        expect(json({ recipeYield: { '@type': 'QuantitativeValue', value: 10, unitCode: 'LTR' } }).makes?.low).toBe(
            10_000,
        );
        expect(
            json({ recipeYield: { '@type': 'QuantitativeValue', value: 10, unitCode: 'XYZ' } }).portions,
        ).toBeUndefined();
        expect(json({ recipeYield: ['10 l', '40 bowls'] })).toMatchObject({ portions: 40 });
    });

    it.each([
        ['contains: milk, egg', ['milk', 'egg']],
        ['contains: [milk, tree nuts]', ['milk', 'tree nuts']],
        ['contains:\n  - milk\n  - mustard', ['milk', 'mustard']],
        ['contains: milk and celery', ['milk', 'celery']],
        ['contains: nothing', []],
        ['contains: []', []],
        ['contains:', undefined],
        ['title: Soup', undefined],
    ])('its allergens from `%s`', (lines, expected) => {
        expect(front(lines).contains).toEqual(expected);
    });

    it('the diets it suits, by name or schema.org term', () => {
        expect(front('suits: vegan, gluten-free').suits).toEqual(['vegan', 'gluten-free']);
        expect(json({ suitableForDiet: 'https://schema.org/VeganDiet' }).suits).toEqual(['VeganDiet']);
        expect(json({ suitableForDiet: ['GlutenFreeDiet', { '@id': 'schema:HalalDiet' }] }).suits).toEqual([
            'GlutenFreeDiet',
            'HalalDiet',
        ]);
    });

    it('its ingredients, from a list or from recipeIngredient', () => {
        const markdown = facts('soup.md', '---\nyield: 4\n---\n## Ingredients\n- 2 kg squash\n');
        expect(markdown.ingredients.map(({ name }) => name)).toEqual(['squash']);
        const listed = json({ recipeIngredient: ['squash, 2 kg', 7, null, '  1 l milk '] });
        expect(listed.ingredients.map(({ name }) => name)).toEqual(['squash', '7', 'milk']);
        expect(json({ recipeIngredient: '2 kg squash' }).ingredients).toHaveLength(1);
        expect(json({}).ingredients).toEqual([]);
    });
});
