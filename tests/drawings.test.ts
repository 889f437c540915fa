import { check, drawEvening, filesInMemory } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { standardCupboard } from '../packages/language/src/cupboard/standard.js';
import { drawPiece } from '../packages/language/src/output/drawing/draw-piece.js';
import { coverPicture } from '../packages/language/src/output/drawing/pictures.js';
import { TEXT_WIDTH } from '../packages/language/src/output/sheets/sheet.js';
import { examplePlans } from './support/samples.js';
import { crowdedWords, wordsInPicture } from './support/words-in-picture.js';

// Words in drawings, over every example: none lies over another, none is cut, and every piece of a cover is named.

/** By itself, in the panel, on a sheet. */
const LETTERINGS = [{}, { printedWidth: 200 }, { printedWidth: TEXT_WIDTH * 0.9 }];

const plans = examplePlans()
    .map(({ name, file, texts }) => ({ name, checked: check(file, filesInMemory(texts)) }))
    .filter(({ checked }) => checked.service.variations.length > 0);

/** Names that the picture's pieces have, and that stand nowhere in its words. */
function unnamed(svg: string): string[] {
    const said = wordsInPicture(svg)
        .map(({ words }) => words)
        .join(' ');
    const pieces = [...svg.matchAll(/<g class="piece[^>]*><title>([^<,]*)/g)].map(([, name]) => name!);
    return pieces.filter((name) => !said.includes(name));
}

describe.each(plans)('the covers of $name', ({ checked }) => {
    it('name every piece at every step, and no name lies over another', () => {
        const { variations } = checked.service;
        for (const variation of variations) {
            for (const step of [undefined, ...variation.steps]) {
                for (const lettering of LETTERINGS) {
                    const svg = coverPicture(checked, variation, step, undefined, lettering);
                    const where = `${variation.label}, ${step?.title ?? 'laid'}, ${lettering.printedWidth ?? 'unprinted'}`;
                    expect([...crowdedWords(svg), ...unnamed(svg)], where).toEqual([]);
                }
            }
        }
    });
});

const evenings = plans.filter(({ checked }) => checked.service.run !== undefined);

describe.each(evenings)('the evening of $name', ({ checked }) => {
    it.each([undefined, 400, 700, 1200])('keeps its words apart on a page %s dots wide', (width) => {
        expect(crowdedWords(drawEvening(checked, { width })!.drawing)).toEqual([]);
    });
});

describe('a picture too narrow for its words', () => {
    it('leaves a name out rather than write it over another', () => {
        const { checked } = plans.find(({ name }) => name.endsWith('mess-night.cover'))!;
        const svg = coverPicture(checked, checked.service.variations[0]!, undefined, undefined, { printedWidth: 120 });
        expect(crowdedWords(svg)).toEqual([]);
        expect(unnamed(svg)).not.toEqual([]);
    });
});

describe('the drawing of a piece', () => {
    const pieces = [...standardCupboard().pieces.values()];
    it.each(pieces)('of $name is no higher than a hover shows, its words apart and inside', (piece) => {
        const svg = drawPiece(piece);
        const height = svg === undefined ? 0 : Number(/ height="([\d.]+)" role/.exec(svg)![1]);
        expect(height).toBeLessThanOrEqual(120);
        expect(svg === undefined ? [] : crowdedWords(svg)).toEqual([]);
    });
});
