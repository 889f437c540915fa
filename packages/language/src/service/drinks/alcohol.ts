/** What is poured, in grams of ethanol and in standard drinks. A planning figure; the label gives the strength. */
import type { Cupboard } from '../../plan/cupboard.js';
import { withParents } from '../../plan/names.js';
import type { Named } from '../../plan/origin.js';
import type { Plan } from '../../plan/types.js';
import type { PourFacts, Variation } from '../types.js';
import type { AlcoholEach, PourUse } from './types.js';

/** The ingredient's name in the standard cupboard. */
export const ALCOHOL = 'alcohol';

/** Up to this share by volume most places sell a drink as free of alcohol; the local law decides. Common practice, no source. */
export const ALCOHOL_FREE = 0.005;

/** True for alcohol and for a sort of it that a house declares. */
export function isAlcohol(substance: string, { substances }: Cupboard): boolean {
    return withParents(substance, substances).has(ALCOHOL);
}

/** The alcohol in a list of contents. */
export function namedAlcohol(contained: readonly Named[], cupboard: Cupboard): Named | undefined {
    return contained.find(({ name }) => isAlcohol(name, cupboard));
}

/** True where a drink has any alcohol: it says so, its strength does, or its kind where nobody states a strength. */
export function hasAlcohol(
    { pour, kind, strength }: Pick<PourFacts, 'pour' | 'kind' | 'strength'>,
    cupboard: Cupboard,
): boolean {
    const isStrong = strength === undefined ? namedAlcohol(kind?.of ?? [], cupboard) !== undefined : strength > 0;
    return isStrong || namedAlcohol(pour.contains?.what ?? [], cupboard) !== undefined;
}

/** True where so little is stated that it may be sold as free of alcohol. */
export function isSoldAsFree({ strength }: Pick<PourFacts, 'strength'>): boolean {
    return strength !== undefined && strength <= ALCOHOL_FREE;
}

/** Density of ethanol, g/ml (quantities 2.4). */
export const ETHANOL_DENSITY = 0.789;

/** g of ethanol (quantities 2.4). @param strength by volume, 0–1 */
export function ethanol(millilitres: number, strength: number): number {
    return millilitres * strength * ETHANOL_DENSITY;
}

/** Standard drinks in a volume (quantities 2.4). @param strength by volume, 0–1 @param standard grams of ethanol of one drink */
export function standardDrinks(millilitres: number, strength: number, standard: number): number {
    return ethanol(millilitres, strength) / standard;
}

/** Grams of one standard drink by the code in force, 14 in the US (quantities 2.4); a house may declare its country's own. */
export function standardDrink(plan: Plan): number | undefined {
    return plan.code.figures['standard-drink']?.low;
}

const total = (all: readonly { readonly grams: number }[]): number => all.reduce((sum, { grams }) => sum + grams, 0);

/**
 * For guests of each set of dishes, what they have who take every pour of it that is for them and that they may have: a dish's own
 * pours go with the dish alone, and of a pour and what is offered in its place a guest takes one.
 */
export function alcoholEach(plan: Plan, variations: readonly Variation[], uses: readonly PourUse[]): AlcoholEach[] {
    const standard = standardDrink(plan);
    const alcoholic = uses.flatMap((use) => {
        const { strength } = use.facts;
        const grams = strength && !use.insteadOf ? ethanol(use.measure * use.rounds.pours, strength) : 0;
        return grams > 0 && use.drinkers > 0 ? [{ use, grams, drinks: standard && grams / standard }] : [];
    });
    const takers = new Map(alcoholic.map(({ use }) => [use, use.groups]));
    return variations.map((variation) => {
        const withDishes = alcoholic.filter(
            ({ use: { facts } }) => !facts.dish || variation.dishes.includes(facts.dish),
        );
        // Guests who keep from some of it have less: whoever has most stands for the set.
        const [by = []] = variation.groups
            .map((group) => withDishes.filter(({ use }) => takers.get(use)!.includes(group)))
            .toSorted((a, b) => total(b) - total(a));
        const grams = total(by);
        return { variation, grams, drinks: standard && grams / standard, by };
    });
}
