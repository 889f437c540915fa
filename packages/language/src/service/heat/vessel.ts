/** A piece of the cupboard as the heat model sees it. */
import type { Piece } from '../../plan/cupboard.js';
import type { Vessel } from './liquid.js';
import { massOf, materialOf } from './materials.js';

export interface VesselFacts {
    readonly vessel: Vessel;
    /** The liquid's surface is measured, not taken from the rim. */
    readonly isMeasured: boolean;
    /** What was taken as usual, for the reader. */
    readonly assumed: readonly string[];
}

/** Share of a piece that follows the liquid in it (temperature 13, DS5): a bowl all of it, a cup without its handle. */
const PARTICIPATION = { bowl: 1, plate: 0.8, cup: 0.8, glass: 0.8 } as const;
/** A glass on a stem keeps stem and foot to itself. */
const ON_A_STEM = 0.6;

/** Wall over conductivity, m²K/W (temperature 13): 5 mm of china, 3 mm of glass, metal next to nothing. */
const WALL = { china: 0.005, glass: 0.003, metal: 0.0002 } as const;

/** Of the rim's diameter, where the cupboard does not say how wide the liquid stands. Common practice, no source. */
const SURFACE_OF_RIM = 0.85;

/** @returns `undefined` where the cupboard does not say what it weighs or how wide it is: nothing can be computed then */
export function vesselFacts(piece: Piece): VesselFacts | undefined {
    const material = materialOf(piece);
    const grams = massOf(piece);
    const { family, measures } = piece;
    const surface = measures.surface ?? measures.across;
    if (!material || grams === undefined || !surface || surface.low <= 0 || !isHollow(family)) {
        return undefined;
    }
    const isMeasured = measures.surface !== undefined;
    const isOnStem = piece.flags.some((flag) => flag.name === 'stem');
    const isGlass = material.name === 'glass' || material.name === 'crystal';
    return {
        vessel: {
            grams,
            heatCapacity: material.heatCapacity,
            participation: family === 'glass' && isOnStem ? ON_A_STEM : PARTICIPATION[family],
            surfaceDiameter: ((surface.low + surface.high) / 2) * (isMeasured ? 1 : SURFACE_OF_RIM),
            wallResistance: material.isMetal ? WALL.metal : isGlass ? WALL.glass : WALL.china,
        },
        isMeasured,
        assumed: isMeasured
            ? []
            : [`the width of the liquid in \`${piece.name}\`, from its rim: state \`surface\` in a cupboard`],
    };
}

function isHollow(family: Piece['family']): family is keyof typeof PARTICIPATION {
    return family in PARTICIPATION;
}

/** Share of the ideal evaporation (temperature 13): a surface well below the rim gives off less, and so does a film of fat. */
export function surfaceFactor(fill: number | undefined, isCreamy: boolean): number {
    return Math.min(fill !== undefined && fill < 0.5 ? 0.5 : 0.8, isCreamy ? 0.7 : 1);
}
