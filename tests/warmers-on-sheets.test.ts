import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { check, filesInMemory, sheets } from 'underliner-language';
import { cellText } from '../packages/language/src/output/sheets/sheet.js';

it('kitchen and steward are told when bowls go into the warmer, come out, and are plated', () => {
    const text = readFileSync(
        new URL('rules/warmer-too-small/bowls-out-before-the-soup.cover', import.meta.url),
        'utf8',
    );
    const [kitchen, steward] = sheets(check('a.cover', filesInMemory({ 'a.cover': text })), {
        only: ['kitchen', 'steward'],
    });
    const table = kitchen!.sheet.blocks.find(
        (block) => block.sort === 'table' && block.columns.some(({ head }) => head === 'Plated by'),
    );
    expect(table?.sort === 'table' && table.rows.map((row) => row.slice(0, 4).map(cellText))).toEqual([
        ['17:43', '18:30', '19:02', '48 × soup bowl, Squash soup'],
        ['18:30', '19:18', '19:18', '48 × dinner plate, Chicken'],
    ]);
    const warming = steward!.sheet.blocks.find(
        (block) => block.sort === 'list' && block.items.some((item) => JSON.stringify(item).includes('soup bowls')),
    );
    expect(warming?.sort === 'list' && warming.items).toEqual([
        '17:43–18:30: 48 soup bowls, plate warmer, plated by 19:02: out 32 min before.',
        '18:30–19:18: 48 dinner plates, plate warmer, plated by 19:18.',
    ]);
});
