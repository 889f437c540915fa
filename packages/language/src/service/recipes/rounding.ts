/**
 * How an amount is rounded once it is scaled: to what a kitchen can weigh or pour (`measurable`), and to what it has to buy
 * (`buyable`). Amounts are in the smallest measure of their system (oz, tsp, imp fl oz, g, ml, pieces).
 */
import { MEASURES, tidy, type MeasureName, type MeasureSystem } from '../../plan/kitchen-measures.js';

/** So much of each measure, largest first: `4 lb`, `5 1/2 oz`; pieces have no measure. */
export type Portioned = readonly { readonly count: number; readonly measure?: MeasureName }[];

/**
 * Quarters by the published bands: .00–.12 of an ounce to nothing, .13–.37 to a quarter, .38–.62 to a half, .63–.87 to three
 * quarters, .88–.99 to one. Source: AFRS (quantities 3.2).
 */
export function toQuarter(value: number): number {
    return Math.floor(tidy(value * 4) + 0.5) / 4;
}

/**
 * Ounces as decimal pounds, for scales that show them: 5 oz are 0.31 lb. Source: AFRS, table (quantities 3.2).
 * @param ounces ≥ 0
 */
export function decimalPounds(ounces: number): number {
    return Math.floor(tidy((ounces / 16) * 100) + 0.5) / 100;
}

// ---------------------------------------------------------------- to measure
/** What an amount is told in, from the largest on; a cook who writes fluid ounces gets them back. */
function ladderOf(system: MeasureSystem, measure: MeasureName | undefined): readonly MeasureName[] {
    switch (system) {
        case 'us-weight':
            return ['lb', 'oz'];
        case 'us-volume':
            return measure === 'fl oz' ? ['gal', 'qt', 'fl oz'] : ['gal', 'qt', 'cup', 'tbsp', 'tsp'];
        case 'imperial-volume':
            return ['imp fl oz'];
        case 'metric-weight':
            return ['kg', 'g'];
        case 'metric-volume':
            return ['l', 'ml'];
        case 'count':
            return [];
    }
}

/**
 * An amount as it can be measured.
 *
 * - Pounds and ounces, and the spoons, cups, quarts and gallons of the United States: in the two largest measures that fit, the
 *   smaller by the quarter bands. The bands are published for ounces; for the other measures they are our choice.
 * - Metric: to three figures, and no finer than a kitchen scale shows: 1 g or ml from 10 on, 0.1 from 1 on. No source; the error
 *   is at most half a part in a hundred from 100 g on, less than that of the ounce bands.
 * - Things counted: by the quarter bands below four, whole from there on. No source; the error is at most an eighth, like that
 *   of the bands at one ounce.
 *
 * What would be rounded to nothing keeps two figures.
 * @param value > 0
 * @param measure the one the recipe uses
 */
export function measurable(value: number, system: MeasureSystem, measure?: MeasureName): Portioned {
    const ladder = ladderOf(system, measure);
    switch (system) {
        case 'metric-weight':
        case 'metric-volume': {
            const rounded = toFigures(value);
            const unit = ladder.find((name) => rounded >= MEASURES[name].size) ?? ladder.at(-1)!;
            return [{ count: tidy(rounded / MEASURES[unit].size), measure: unit }];
        }
        case 'count':
            return [{ count: value < 4 ? quarterOrFigures(value) : Math.round(value) }];
        default:
            return twoLargest(value, ladder);
    }
}

function toFigures(value: number): number {
    if (value < 1) {
        return Number(value.toPrecision(2));
    }
    const finest = value < 10 ? 0.1 : 1;
    return tidy(Math.round(tidy(Number(value.toPrecision(3)) / finest)) * finest);
}

function quarterOrFigures(value: number): number {
    const quarter = toQuarter(value);
    return quarter === 0 ? Number(value.toPrecision(2)) : quarter;
}

function twoLargest(value: number, ladder: readonly MeasureName[]): Portioned {
    const index = ladder.findIndex((name) => value >= MEASURES[name].size);
    const [large, small] = index < 0 ? [] : ladder.slice(index, index + 2);
    if (large === undefined || small === undefined) {
        const only = ladder.at(-1)!;
        return carried([{ count: quarterOrFigures(value / MEASURES[only].size), measure: only }], ladder);
    }
    const [whole, rest] = [Math.floor(value / MEASURES[large].size), value % MEASURES[large].size];
    const quarters = toQuarter(rest / MEASURES[small].size);
    return carried(
        [
            { count: whole, measure: large },
            { count: quarters, measure: small },
        ],
        ladder,
    );
}

/** 15.9 oz are a pound: what fills the next larger measure is told in it. */
function carried(parts: { count: number; measure: MeasureName }[], ladder: readonly MeasureName[]): Portioned {
    for (let index = parts.length - 1; index >= 0; index -= 1) {
        const part = parts[index]!;
        const larger = ladder[ladder.indexOf(part.measure) - 1];
        if (larger !== undefined && part.count * MEASURES[part.measure].size >= MEASURES[larger].size) {
            part.count = tidy(part.count - MEASURES[larger].size / MEASURES[part.measure].size);
            const above = parts[index - 1];
            if (above) {
                above.count += 1;
            } else {
                parts.unshift({ count: 1, measure: larger });
                index += 1;
            }
        }
    }
    return parts.filter(({ count }) => count > 0);
}

// ---------------------------------------------------------------- to buy
/**
 * Steps food is bought in, the first that fits; `from` and `step` count `measure`. Half pounds and whole pieces are published
 * (FBG, 3.28 lb to 3.5 and 27.6 cans to 28), half gallons for coffee (UFH; quantities 12); the others have no source and are
 * of the same fineness.
 */
const BUYING: Record<
    Exclude<MeasureSystem, 'count'>,
    readonly { readonly measure: MeasureName; readonly from: number; readonly step: number }[]
> = {
    'us-weight': [
        { measure: 'lb', from: 1, step: 0.5 },
        { measure: 'oz', from: 0, step: 1 },
    ],
    'us-volume': [
        { measure: 'gal', from: 1, step: 0.5 },
        { measure: 'qt', from: 1, step: 0.5 },
        { measure: 'fl oz', from: 0, step: 1 },
    ],
    'imperial-volume': [{ measure: 'imp fl oz', from: 0, step: 1 }],
    'metric-weight': [
        { measure: 'kg', from: 1, step: 0.1 },
        { measure: 'g', from: 0, step: 10 },
    ],
    'metric-volume': [
        { measure: 'l', from: 1, step: 0.1 },
        { measure: 'ml', from: 0, step: 10 },
    ],
};

/** What a recipe measures by spoon or cup is not sold by them. */
const NOT_BOUGHT: readonly (MeasureName | undefined)[] = ['tsp', 'tbsp', 'cup'];

/**
 * An amount as it is bought: always rounded up, "to ensure enough". Source: FBG (quantities 3.3, 12).
 * @param value > 0, before trimming
 * @returns nothing for what is measured by spoon or cup
 */
export function buyable(value: number, system: MeasureSystem, measure?: MeasureName): Portioned | undefined {
    if (system === 'count') {
        return [{ count: Math.ceil(tidy(value)) }];
    }
    if (NOT_BOUGHT.includes(measure)) {
        return undefined;
    }
    const fits = BUYING[system].find((each) => value >= each.from * MEASURES[each.measure].size)!;
    const inMeasure = tidy(value / MEASURES[fits.measure].size);
    return [{ count: tidy(Math.ceil(tidy(inMeasure / fits.step)) * fits.step), measure: fits.measure }];
}

/** @returns in the smallest measure of the system */
export function sumOf(parts: Portioned): number {
    return tidy(parts.reduce((sum, { count, measure }) => sum + count * (measure ? MEASURES[measure].size : 1), 0));
}
