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
