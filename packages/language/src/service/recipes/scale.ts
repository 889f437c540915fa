import { tidy, type Amount } from '../../plan/kitchen-measures.js';
import type { Ingredient } from '../../plan/recipe.js';
import { buyable, decimalPounds, sumOf } from './rounding.js';
import { sayAmount, sayPortioned } from './say-amount.js';

/** An ingredient of a batch made some times over. */
export interface ScaledIngredient {
    readonly ingredient: Ingredient;
    /** Absent where the recipe leaves the amount to the cook: it stays as written. */
    readonly scaled?: {
        /** Before rounding. */
        readonly exact: Amount;
        /** As it can be measured: `4 lb 5 1/2 oz`. */
        readonly written: string;
        /** The exact amount for scales that show decimals; only of pounds and ounces. */
        readonly decimalPounds?: number;
    };
    /** What counted containers hold together, before rounding: 10 cans of 3 lb 2 oz are 31 lb 4 oz. */
    readonly inAll?: { readonly written: string; readonly amount: Amount };
    /** What has to be in the house before trimming, rounded up; absent for what is measured by spoon or cup. */
    readonly buy?: { readonly written: string; readonly amount: Amount };
}

/**
 * One ingredient of a batch made `factor` times, by `measurable` and `buyable` of `rounding.ts`.
 * @param factor > 0
 */
export function scaleIngredient(ingredient: Ingredient, factor: number): ScaledIngredient {
    const { amount, container, holds } = ingredient;
    if (!amount) {
        return { ingredient };
    }
    const exact = { ...amount, low: tidy(amount.low * factor), high: tidy(amount.high * factor) };
    return {
        ingredient,
        scaled: {
            exact,
            written: sayAmount(exact, container),
            decimalPounds: amount.system === 'us-weight' ? decimalPounds(exact.high) : undefined,
        },
        inAll: holds && heldBy(exact, holds),
        buy: bought(exact, ingredient),
    };
}

function heldBy(count: Amount, each: Amount): ScaledIngredient['inAll'] {
    const amount = { ...each, low: tidy(count.low * each.low), high: tidy(count.high * each.high) };
    return { written: sayAmount(amount), amount };
}

function bought({ high, system, measure }: Amount, { usable = 1, container }: Ingredient): ScaledIngredient['buy'] {
    const parts = buyable(high / usable, system, measure);
    const value = parts && sumOf(parts);
    return parts && value !== undefined
        ? { written: sayPortioned(parts, container), amount: { low: value, high: value, system, measure } }
        : undefined;
}
