import { describe, expect, it } from 'vitest';
import { check } from '../check.js';
import { standardCupboard } from '../cupboard/standard.js';
import { materialOf } from '../service/heat/materials.js';
import { filesInMemory } from './files.js';
import { CODE_FIGURES, MATERIAL_WORDS, PIECE_MEASURES } from './fact-words.js';

const pieces = [...standardCupboard().pieces.values()];
const codes = [...standardCupboard().codes.values()];

/** The rules that speak of a text, with the words they speak of. */
function said(text: string): readonly string[] {
    return check('hall.cover', filesInMemory({ 'hall.cover': text })).findings.map(
        ({ rule, at }) => `${rule}: ${text.slice(at.start, at.end)}`,
    );
}

describe('the words that figures of pieces and codes stand under', () => {
    it('are those of the standard cupboard, each of them there', () => {
        const measured = new Set(pieces.flatMap(({ measures }) => Object.keys(measures)));
        expect(Object.keys(PIECE_MEASURES).filter((word) => !measured.has(word))).toEqual([]);
        const figured = new Set(codes.flatMap(({ figures }) => Object.keys(figures)));
        expect(Object.keys(CODE_FIGURES).toSorted()).toEqual([...figured].toSorted());
    });

    it('hold every material that heat is computed with', () => {
        const fork = pieces.find(({ family }) => family === 'fork')!;
        const unknown = MATERIAL_WORDS.filter((name) => {
            const measures = { [name]: fork.measures.length! };
            return materialOf({ ...fork, measures, flags: [] })?.name !== name;
        });
        // A cloth is neither warmed nor touched hot.
        expect(unknown).toEqual(['linen']);
    });
});

describe('a figure of a piece or a code', () => {
    it('wants its unit, and one that measures what its word says', () => {
        expect(said('plate tide-plate {\n    across 290\n}\n')).toEqual(['missing-unit: 290']);
        expect(said('plate tide-plate {\n    across 290 ml\n}\n')).toEqual(['wrong-unit: 290 ml']);
        expect(said('glass reed-glass {\n    widest 40 mm\n}\n')).toEqual(['wrong-unit: 40 mm']);
        expect(said('code harbour {\n    reheating-time 74 °C\n}\n')).toEqual(['wrong-unit: 74 °C']);
        expect(said('plate tide-plate {\n    porcelain 290 mm\n}\n')).toEqual(['wrong-unit: 290 mm']);
        expect(said('plate tide-plate {\n    across 28 to 29 cm\n    porcelain 0.7 kg\n}\n')).toEqual([]);
        expect(said('gear tide-rack {\n    compartments 36\n}\n')).toEqual([]);
    });

    it('under a word that nothing reads is told where it is a slip, or is no weight', () => {
        expect(said('plate tide-plate {\n    acros 290\n}\n')).toEqual(['unread-fact: acros']);
        expect(said('fork tide-fork {\n    tins 3\n}\n')).toEqual(['unread-fact: tins']);
        expect(said('plate tide-plate {\n    diameter 290 mm\n}\n')).toEqual(['unread-fact: diameter']);
        expect(said('plate tide-plate {\n    porcelan 700 g\n    heirloom\n}\n')).toEqual(['unread-fact: porcelan']);
        expect(said('plate tide-plate {\n    weight 700 g\n    across\n}\n')).toEqual([
            'unread-fact: weight',
            'unread-fact: across',
        ]);
        expect(said('plate tide-plate {\n    driftwood 700 g\n    heirloom\n}\n')).toEqual([]);
    });
});
