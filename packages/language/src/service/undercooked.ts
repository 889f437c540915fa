import type { Kind } from '../plan/cupboard.js';
import { isKindOf, withParents } from '../plan/names.js';
import type { Origin } from '../plan/origin.js';
import type { Dish } from '../plan/types.js';
import { lowCooking, type CodeAndCupboard } from './cooked-through.js';
import type { GuestGroup } from './types.js';

/** Why a dish counts as raw, or as undercooked at a guest's request, and where it says so. */
export interface Undercooked {
    readonly at: Origin;
    /** `is served raw`, `is cooked to 52 °C, where \`steak\` needs 63 °C`. */
    readonly words: string;
    /** The figure to cook to, where the plan cooks to a lower one. */
    readonly cookTo?: string;
}

/**
 * @returns `undefined` where the dish is cooked through, where nothing tells, or where it is food that nobody may be served
 * undercooked, which `cook-temperature-low` finds
 */
export function undercooked(dish: Dish, kind: Kind | undefined, plan: CodeAndCupboard): Undercooked | undefined {
    const { served, cookTo } = dish;
    if (served.raw) {
        return { at: served.raw.origin, words: `is served ${served.raw.how}` };
    }
    const low = lowCooking(dish, kind, plan);
    if (low) {
        const { at, words, food, needs, least, isOnRequest } = low;
        return isOnRequest ? { at, words: `${words}, where ${food} needs ${needs}`, cookTo: least?.words } : undefined;
    }
    if (kind?.raw && !cookTo) {
        return { at: dish.head, words: `is \`${kind.name}\`, which is served ${kind.raw}` };
    }
    const rawEgg = [dish, ...dish.accompaniments]
        .flatMap((each) => each.contains?.what ?? [])
        .find(({ name }) => withParents(name, plan.cupboard.substances).has('raw-egg'));
    return rawEgg && { at: rawEgg.origin, words: `contains \`${rawEgg.name}\`` };
}

/** The diet of the very young, the old, the pregnant and the ill, whom undercooked food harms most. */
const SUSCEPTIBLE = 'highly-susceptible';

/**
 * Why a dish must not go to a group as it is cooked: to guests of the diet nothing raw or undercooked, to children no minced meat
 * of that sort. Source: temperature S16.
 */
export function undercookedFor(
    group: Pick<GuestGroup, 'needs' | 'children'>,
    dish: Dish,
    plan: CodeAndCupboard,
): Undercooked | undefined {
    const kind = plan.cupboard.kinds.get(dish.kind.name);
    const isSusceptible = group.needs.some((need) => need.sort === 'diet' && need.diet.name === SUSCEPTIBLE);
    return isSusceptible || (group.children && isMincedMeat(kind)) ? undercooked(dish, kind, plan) : undefined;
}

function isMincedMeat(kind: Kind | undefined): boolean {
    return isKindOf(kind, 'minced-meat') || isKindOf(kind, 'tartare');
}
