import { toComputing, type UnitName } from './quantity.js';

/**
 * The measures recipes are written in: the language's own units of mass and volume, and the spoons, cups and cans of a kitchen.
 * Those of one system are whole multiples of its smallest, so that `1 lb 4 oz` is exactly 20 oz and 16 tbsp exactly 1 cup.
 */
export type MeasureSystem = 'us-weight' | 'us-volume' | 'imperial-volume' | 'metric-weight' | 'metric-volume' | 'count';

interface MeasureSpec {
    readonly system: Exclude<MeasureSystem, 'count'>;
    /** In the smallest measure of the system. */
    readonly size: number;
    /** As cooks spell it, without regard to capitals; a full stop may follow. */
    readonly spelt: string;
}

/**
 * Source: AFRS, 3 tsp = 1 tbsp, 16 tbsp = 1 cup, 2 cups = 1 pt, 2 pt = 1 qt, 4 qt = 1 gal (quantities 3.2). Cups, pints, quarts
 * and gallons are those of the United States.
 */
export const MEASURES = {
    oz: { system: 'us-weight', size: 1, spelt: 'oz, ounce, ounces' },
    lb: { system: 'us-weight', size: 16, spelt: 'lb, lbs, pound, pounds' },
    tsp: { system: 'us-volume', size: 1, spelt: 'tsp, tsps, teaspoon, teaspoons' },
    tbsp: { system: 'us-volume', size: 3, spelt: 'tbsp, tbsps, tbs, tablespoon, tablespoons' },
    'fl oz': { system: 'us-volume', size: 6, spelt: 'fl oz, floz, fluid ounce, fluid ounces' },
    cup: { system: 'us-volume', size: 48, spelt: 'cup, cups' },
    pt: { system: 'us-volume', size: 96, spelt: 'pt, pts, pint, pints' },
    qt: { system: 'us-volume', size: 192, spelt: 'qt, qts, quart, quarts' },
    gal: { system: 'us-volume', size: 768, spelt: 'gal, gals, gallon, gallons' },
    'imp fl oz': {
        system: 'imperial-volume',
        size: 1,
        spelt: 'imp fl oz, imp fluid ounce, imp fluid ounces, imperial fluid ounce, imperial fluid ounces',
    },
    g: { system: 'metric-weight', size: 1, spelt: 'g, gr, gm, gms, gram, grams, gramme, grammes' },
    kg: {
        system: 'metric-weight',
        size: 1000,
        spelt: 'kg, kgs, kilo, kilos, kilogram, kilograms, kilogramme, kilogrammes',
    },
    ml: { system: 'metric-volume', size: 1, spelt: 'ml, mls, millilitre, millilitres, milliliter, milliliters' },
    cl: { system: 'metric-volume', size: 10, spelt: 'cl, centilitre, centilitres, centiliter, centiliters' },
    dl: { system: 'metric-volume', size: 100, spelt: 'dl, decilitre, decilitres, deciliter, deciliters' },
    l: { system: 'metric-volume', size: 1000, spelt: 'l, litre, litres, liter, liters, ltr, ltrs' },
} as const satisfies Record<string, MeasureSpec>;

export type MeasureName = keyof typeof MEASURES;

/** A language unit, and how many of a system's smallest measure it is. */
const IN_LANGUAGE_UNITS: Record<Exclude<MeasureSystem, 'count'>, { readonly unit: UnitName; readonly size: number }> = {
    'us-weight': { unit: 'oz', size: 1 },
    'us-volume': { unit: 'fl oz', size: 6 },
    'imperial-volume': { unit: 'imp fl oz', size: 1 },
    'metric-weight': { unit: 'g', size: 1 },
    'metric-volume': { unit: 'ml', size: 1 },
};

/**
 * An amount of food as a recipe states it. `low` and `high` are in the smallest measure of the system (oz, tsp, imp fl oz, g, ml,
 * or pieces); they are equal unless the recipe gives a range.
 */
export interface Amount {
    readonly low: number;
    readonly high: number;
    readonly system: MeasureSystem;
    /** The largest measure written; absent for things counted. */
    readonly measure?: MeasureName;
}

/** @returns what an amount of this system is measured in by the plan: g, ml or pieces. */
export function dimensionOf(system: MeasureSystem): 'mass' | 'volume' | 'count' {
    switch (system) {
        case 'us-weight':
        case 'metric-weight':
            return 'mass';
        case 'count':
            return 'count';
        default:
            return 'volume';
    }
}

/**
 * @param value in the smallest measure of the system
 * @returns g, ml or pieces
 */
export function measureToComputing(value: number, system: MeasureSystem): number {
    if (system === 'count') {
        return value;
    }
    const { unit, size } = IN_LANGUAGE_UNITS[system];
    return toComputing(tidy(value / size), unit);
}

/** Twelve significant digits: what is left of thirds and of binary fractions never decides how an amount is rounded. */
export function tidy(value: number): number {
    return Number(value.toPrecision(12));
}
