import { describe, expect, it } from 'vitest';
import { standardCupboard } from '../../cupboard/standard.js';
import { readIngredient } from '../../plan/read-ingredient.js';
import { contentsNamed } from './food-words.js';

const named = (line: string): string[] => contentsNamed(readIngredient(line).name, standardCupboard());

describe('what a line of a recipe names', () => {
    it.each([
        ['200 ml double cream', ['cream']],
        ['plain flour, 2.4 kg', ['wheat-flour']],
        ['20 eggs', ['egg']],
        ['Crème fraîche, 400 g', ['cream']],
        ['fresh curd, 5 kg', ['curd']],
        ['4 tbsp soy sauce', ['soy-sauce']],
        ['1.5 kg goat’s cheese', ['goat-cheese']],
        ['6 duck eggs', ['shell-egg']],
        ['12 anchovies in oil', ['anchovy']],
        ['2 kg cod fillet, skin on', ['cod']],
        ['400 g unsalted butter (or lard)', ['butter', 'lard']],
        ['rolled oats, 900 g', ['oats']],
        ['ricotta, 2 kg', ['cheese']],
        ['chopped nuts, 200 g', ['tree-nuts', 'peanut']],
        ['700 ml red wine', ['wine']],
        ['white wine vinegar, 200 ml', ['wine-vinegar']],
        ['3 onions', ['garlic-and-onion']],
        ['free-range chicken, 9 kg', ['chicken']],
        ['chicken, free range, 9 kg', ['chicken']],
        ['2 kg rye bread', ['rye-bread']],
        ['lactose-free milk, 2 l', ['milk']],
        ['sirloin, 9 kg', ['beef']],
        ['12 lamb’s kidneys', ['lamb', 'offal']],
        ['rye croutons', ['rye-bread']],
        ['crème brûlée', ['custard']],
        ['smoked kippers', ['herring']],
    ])('%s', (line, expected) => {
        expect(named(line)).toEqual(expected);
    });

    it.each([
        ['oat milk, 2 l', ['oat-milk']],
        ['1 tin coconut milk', ['coconut-milk']],
        ['peanut butter, 400 g', ['peanut-butter']],
        ['pecan nuts, 300 g', ['pecan']],
        ['gluten-free soy sauce, 100 ml', ['soy']],
        ['alcohol-free beer, 2 l', ['barley']],
    ])('%s, by its longest words, and without what it is free of', (line, expected) => {
        expect(named(line)).toEqual(expected);
    });

    it.each([
        'butternut squash, 9 kg',
        'butternut, 9 kg',
        '3 tins butter beans',
        'rice flour, 400 g',
        'cocoa butter, 1 kg',
        'cream of tartar, 2 tsp',
        'vegan cream, 2 l',
        'plant-based butter, 1 kg',
        'dairy-free cheese, 1 kg',
        'milk-free spread',
        'gluten-free flour, 2 kg',
        'egg replacer, 40 g',
        'cream substitute, 1 l',
        'non-dairy milk, 1 l',
        'egg-free mayonnaise, 1 kg',
        'oyster mushrooms, 2 kg',
        'lamb’s lettuce, 1 kg',
        'eggplant, 4 kg',
        '20 egg plants',
        'nutmeg, to taste',
        'cider vinegar, 200 ml',
        'buckwheat flour, 1 kg',
        'beef tomatoes, 4 kg',
        'kidney beans, 3 kg',
        'hen of the woods, 1 kg',
        'bourbon vanilla, 2 pods',
        'butter lettuce',
        'water, 2 l',
        '',
    ])('nothing of %s', (line) => {
        expect(named(line)).toEqual([]);
    });
});
