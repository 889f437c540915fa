import type { Dimension } from './quantity.js';

// The words that figures of pieces and codes stand under. A figure under another word is left out of every calculation.

/** What is measured of a piece, and in what. `widest` is the share of what a glass holds below that point. */
export const PIECE_MEASURES: Readonly<Record<string, Dimension>> = {
    across: 'length',
    length: 'length',
    width: 'length',
    height: 'length',
    depth: 'length',
    surface: 'length',
    widest: 'share',
    holds: 'volume',
    compartments: 'count',
    pieces: 'count',
    racks: 'count',
};

/** What a piece is made of: with its mass, or a bare word. */
export const MATERIAL_WORDS = [
    'stainless',
    'steel',
    'silver',
    'sterling',
    'silver-plate',
    'pewter',
    'copper',
    'aluminium',
    'metal',
    'porcelain',
    'bone-china',
    'stoneware',
    'earthenware',
    'glass',
    'crystal',
    'wood',
    'horn',
    'plastic',
    'linen',
] as const;
export type MaterialWord = (typeof MATERIAL_WORDS)[number];

/** What else a piece is said to have, in a bare word. */
export const PIECE_FLAGS = ['stem', 'handle'] as const;

/** What a food code gives a figure for, and in what. */
export const CODE_FIGURES: Readonly<Record<string, Dimension>> = {
    'hot-holding': 'temperature',
    'roast-holding': 'temperature',
    'cold-holding': 'temperature',
    reheating: 'temperature',
    'reheating-time': 'time',
    'cook-whole-meat': 'temperature',
    'cook-minced-meat': 'temperature',
    'cook-poultry': 'temperature',
    'cook-vegetables': 'temperature',
    'cooling-first': 'temperature',
    'cooling-first-time': 'time',
    'cooling-last': 'temperature',
    'cooling-last-time': 'time',
    'off-control-time': 'time',
    'off-control-cold-time': 'time',
    'off-control-cold-most': 'temperature',
    'standard-drink': 'mass',
};

/** What the figure under a word is given in; `undefined` for a word that nothing here knows. */
export function dimensionOf(words: 'piece' | 'code', word: string): Dimension | undefined {
    const known = words === 'piece' ? PIECE_MEASURES : CODE_FIGURES;
    if (Object.hasOwn(known, word)) {
        return known[word];
    }
    return words === 'piece' && MATERIAL_WORDS.some((material) => material === word) ? 'mass' : undefined;
}

/** Whether a bare word says something of a piece. */
export function isPieceFlag(word: string): boolean {
    return [...PIECE_FLAGS, ...MATERIAL_WORDS].some((known) => known === word);
}
