import { describe, expect, it } from 'vitest';
import { readIngredientList } from './read-ingredient-list.js';

const lines = (text: string): string[] =>
    readIngredientList(text).map(({ written, part }) => (part === undefined ? written : `${part}: ${written}`));

describe('the ingredients of a recipe in Markdown', () => {
    it('are the list under their heading, up to the next of its rank', () => {
        const text =
            '# Soup\n\n- not this\n\n## Ingredients (serves 8)\n\n- 2 kg squash\n* 1 l milk\n1. 2 onions\n\n## Method\n\n- boil\n';
        expect(lines(text)).toEqual(['2 kg squash', '1 l milk', '2 onions']);
        expect(lines(text.replaceAll('\n', '\r\n'))).toEqual(['2 kg squash', '1 l milk', '2 onions']);
        expect(lines(text.replace('## Ingredients (serves 8)', 'Ingredients\n-----------'))).toEqual([
            '2 kg squash',
            '1 l milk',
            '2 onions',
        ]);
    });

    it('are told by the part of the recipe they are for', () => {
        const text =
            '## Ingredients\n- 1 kg fish\n### For the sauce\n- 1 l cream\n\nTo finish:\n\n- chives\n- For the table:\n  - lemons, 4\n';
        expect(lines(text)).toEqual([
            '1 kg fish',
            'For the sauce: 1 l cream',
            'To finish: chives',
            'For the table: lemons, 4',
        ]);
    });

    it('go on over the lines of an item, and are read without marks', () => {
        const text =
            '# Ingredients\n- **2 kg** [squash](https://saltmarsh.example),\n  peeled\n- [x] 1 l `milk`, *cold*\n- snake_case_name\n- 5 \\* 2\n';
        expect(lines(text)).toEqual(['2 kg squash, peeled', '1 l milk, cold', 'snake_case_name', '5 * 2']);
    });

    it('are none where there is no such heading, and none in code or comments', () => {
        expect(lines('# Soup\n- 2 kg squash\n')).toEqual([]);
        expect(
            lines('# Ingredients\n<!-- - 1 kg ham -->\n```\n- 2 kg pork\n```\n- 3 kg veal\n<!-- - 4 kg beef'),
        ).toEqual(['3 kg veal']);
        expect(lines('')).toEqual([]);
    });
});
