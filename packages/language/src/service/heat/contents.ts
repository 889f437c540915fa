/** What a vessel is filled with, as far as heat is concerned. */
import type { Kind } from '../../plan/cupboard.js';
import { isKindOf } from '../../plan/names.js';
import type { Quantity } from '../../plan/quantity.js';
import type { Liquid } from './liquid.js';

/** J/gK, by the nearest kind that names one. Source: temperature 5.2; spirits are from memory. */
const HEAT_CAPACITIES = [
    ['bisque', 3.65],
    ['cream-soup', 3.8],
    ['clear-soup', 4.1],
    ['cold-soup', 4.0],
    ['soup', 3.9],
    ['hot-chocolate', 3.9],
    ['hot-drink', 4.18],
    ['coffee', 4.18],
    ['fortified-wine', 3.9],
    ['wine', 4.1],
    ['spirit', 3.4],
] as const;

/** Watery, where no kind is named above. */
const USUAL_HEAT_CAPACITY = 4.1;

export function heatCapacityOf(kind: Kind | undefined): number {
    return HEAT_CAPACITIES.find(([name]) => isKindOf(kind, name))?.[1] ?? USUAL_HEAT_CAPACITY;
}

/** A gram for a millilitre: soups, wines and coffee are within 3 % of it (temperature 5.2). @returns `undefined` for nothing */
export function liquidOf(kind: Kind | undefined, amount: Pick<Quantity, 'value'> | undefined): Liquid | undefined {
    return amount && amount.value > 0 ? { grams: amount.value, heatCapacity: heatCapacityOf(kind) } : undefined;
}

/** Cream and fat lie on the surface and keep steam in (temperature 13). */
export function isCreamy(kind: Kind | undefined): boolean {
    return isKindOf(kind, 'cream-soup') || isKindOf(kind, 'hot-chocolate');
}
