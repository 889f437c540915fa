/** What tableware is made of, as far as heat is concerned. Source: temperature 5.1 and, for effusivities, 4.2. */
import type { Piece } from '../../plan/cupboard.js';
import type { MaterialWord } from '../../plan/fact-words.js';

export interface Material {
    /** The word a cupboard states it by: `porcelain 420 g`. */
    readonly name: MaterialWord;
    readonly isMetal: boolean;
    /** J/gK */
    readonly heatCapacity: number;
    /** kg/m³ */
    readonly density: number;
    /** √(kρc), W·s½/(m²K): how fast it gives its heat to the skin. */
    readonly effusivity: number;
}

/**
 * Metals first: a steel blade in a horn handle is a metal thing.
 * Published capacities of porcelain run from 0.8 to 1.085: 0.9 is taken, ± 15 %. Bone china, crystal, sterling and whatever
 * the source does not list (wood, horn, plastic, plate, pewter, copper) are from memory.
 */
const MATERIALS: readonly Material[] = [
    { name: 'stainless', isMetal: true, heatCapacity: 0.5, density: 8000, effusivity: 7490 },
    { name: 'steel', isMetal: true, heatCapacity: 0.5, density: 8000, effusivity: 7490 },
    { name: 'silver', isMetal: true, heatCapacity: 0.24, density: 10400, effusivity: 32500 },
    { name: 'sterling', isMetal: true, heatCapacity: 0.245, density: 10360, effusivity: 32500 },
    { name: 'silver-plate', isMetal: true, heatCapacity: 0.39, density: 8700, effusivity: 15000 },
    { name: 'pewter', isMetal: true, heatCapacity: 0.24, density: 7300, effusivity: 9400 },
    { name: 'copper', isMetal: true, heatCapacity: 0.385, density: 8900, effusivity: 36000 },
    { name: 'aluminium', isMetal: true, heatCapacity: 0.9, density: 2700, effusivity: 23000 },
    { name: 'metal', isMetal: true, heatCapacity: 0.5, density: 8000, effusivity: 7490 },
    { name: 'porcelain', isMetal: false, heatCapacity: 0.9, density: 2400, effusivity: 1940 },
    { name: 'bone-china', isMetal: false, heatCapacity: 0.85, density: 2650, effusivity: 1900 },
    { name: 'stoneware', isMetal: false, heatCapacity: 0.92, density: 2150, effusivity: 1600 },
    { name: 'earthenware', isMetal: false, heatCapacity: 0.92, density: 2000, effusivity: 1550 },
    { name: 'glass', isMetal: false, heatCapacity: 0.82, density: 2500, effusivity: 1450 },
    { name: 'crystal', isMetal: false, heatCapacity: 0.6, density: 3000, effusivity: 1200 },
    { name: 'wood', isMetal: false, heatCapacity: 1.7, density: 700, effusivity: 380 },
    { name: 'horn', isMetal: false, heatCapacity: 1.5, density: 1300, effusivity: 600 },
    { name: 'plastic', isMetal: false, heatCapacity: 1.5, density: 1100, effusivity: 550 },
];

/** What the piece is made of, by its mass or a bare word of its cupboard; `undefined` where neither tells. */
export function materialOf(piece: Piece): Material | undefined {
    return MATERIALS.find(({ name }) => name in piece.measures || piece.flags.some((flag) => flag.name === name));
}

/** g; `undefined` where the cupboard states no mass. */
export function massOf(piece: Piece): number | undefined {
    const figure = piece.measures[materialOf(piece)?.name ?? ''];
    return figure && (figure.low + figure.high) / 2;
}
