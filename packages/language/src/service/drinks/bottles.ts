/** How pours, bottles and cases go into each other. */
import { remember } from '../remember.js';
import type { Bottles, Cases } from './types.js';

/** Bottles of a drink whose plan names no size, ml (quantities 2.1). */
export const USUAL_BOTTLE = 750;

/** A case is nine litres: 24 halves, 12 bottles, 6 magnums (quantities 2.2; common practice, no source). */
export const CASE_MILLILITRES = 9000;

/** Bottles of a case: as many of these as come to nine litres at most. Common practice, no source, beyond the sizes of quantities 2.2. */
const BOTTLES_OF_A_CASE = [24, 12, 6, 3, 2] as const;

/** Less than this share of a pour is lost to binary fractions, not to the glass. */
const NOISE = 1e-9;

/** How the pours of a bottle are counted: `whole` leaves less than a pour in it, `nearest` lets the last one be short. */
export type PoursOfABottle = 'whole' | 'nearest';

/** Pours of a bottle (quantities 2.3; the published tables round down or to the nearest, quantities 13.1). @param bottle ml @param pour ml, > 0 */
export function poursPerBottle(bottle: number, pour: number, counted: PoursOfABottle = 'whole'): number {
    return counted === 'whole' ? Math.floor(bottle / pour + NOISE) : Math.round(bottle / pour);
}

export interface MixInput {
    /** Pours wanted, ≥ 0; a part of one counts as one. */
    readonly pours: number;
    /** ml, > 0 */
    readonly pour: number;
    /** ml, each once. */
    readonly sizes: readonly number[];
    readonly counted?: PoursOfABottle;
    /** ml that are tasted from one bottle before it is poured, or from every one. */
    readonly tasting?: { readonly millilitres: number; readonly of: 'first-bottle' | 'every-bottle' };
}

/**
 * The mix of bottle sizes that gives the pours with the least wine left over, then the fewest bottles, then the larger sizes;
 * largest first. Exact: the least for each number of pours, one after the other.
 */
export const fewestLeftOver = remember(({ pours, pour, sizes, counted = 'whole', tasting }: MixInput): Bottles[] => {
    const wanted = Math.ceil(pours - NOISE);
    const sip = tasting?.millilitres ?? 0;
    const inEvery = tasting?.of === 'every-bottle' ? sip : 0;
    const kinds = [...new Set(sizes)]
        .toSorted((a, b) => b - a)
        .map((size) => ({ size, gives: poursPerBottle(size - inEvery, pour, counted) }))
        .filter(({ gives }) => gives > 0);
    if (kinds.length === 0 || wanted <= 0) {
        return [];
    }
    const least = leastFor(kinds, wanted);
    if (tasting?.of !== 'first-bottle') {
        return told(kinds, least[wanted]!);
    }
    // One bottle of some size is the one tasted; the others give what is left to pour.
    const mixes = kinds.map(({ size }, first) => {
        const gives = Math.max(0, poursPerBottle(size - sip, pour, counted));
        return plus(least[Math.max(0, wanted - gives)]!, first, size);
    });
    return told(kinds, bestOf(mixes));
}, 64);

interface Size {
    readonly size: number;
    /** Pours of one such bottle. */
    readonly gives: number;
}

interface Mix {
    readonly millilitres: number;
    readonly bottles: number;
    /** By size, largest first. */
    readonly counts: readonly number[];
}

/** The best mix for at least 0, 1, … `wanted` pours. */
function leastFor(kinds: readonly Size[], wanted: number): Mix[] {
    const best: Mix[] = [{ millilitres: 0, bottles: 0, counts: kinds.map(() => 0) }];
    for (let pours = 1; pours <= wanted; pours++) {
        best.push(bestOf(kinds.map(({ size, gives }, index) => plus(best[Math.max(0, pours - gives)]!, index, size))));
    }
    return best;
}

function plus(mix: Mix, index: number, size: number): Mix {
    const counts = mix.counts.map((count, each) => (each === index ? count + 1 : count));
    return { millilitres: mix.millilitres + size, bottles: mix.bottles + 1, counts };
}

const bestOf = (mixes: readonly Mix[]): Mix => mixes.reduce((best, mix) => (isBetter(mix, best) ? mix : best));

/** Every mix compared gives enough pours, so the least bought leaves the least over. */
function isBetter(mix: Mix, other: Mix): boolean {
    const less = mix.millilitres - other.millilitres;
    if (Math.abs(less) > NOISE * other.millilitres) {
        return less < 0;
    }
    if (mix.bottles !== other.bottles) {
        return mix.bottles < other.bottles;
    }
    const differs = mix.counts.findIndex((count, index) => count !== other.counts[index]);
    return differs >= 0 && mix.counts[differs]! > other.counts[differs]!;
}

function told(kinds: readonly Size[], { counts }: Mix): Bottles[] {
    return kinds.map(({ size }, index) => ({ size, count: counts[index]! })).filter(({ count }) => count > 0);
}

/** Bottles in full cases and beyond; none for sizes so large that each comes alone. */
export function inCases(bottles: readonly Bottles[]): Cases[] {
    return bottles.flatMap(({ size, count }) => {
        const each = BOTTLES_OF_A_CASE.find((many) => many * size <= CASE_MILLILITRES * (1 + NOISE));
        return each === undefined
            ? []
            : [{ size, each, full: Math.floor(count / each), loose: count % each, toOrder: Math.ceil(count / each) }];
    });
}
