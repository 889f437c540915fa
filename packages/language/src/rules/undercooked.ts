import type { Cupboard, Kind } from '../plan/cupboard.js';
import { isKindOf, withParents } from '../plan/names.js';
import type { Origin } from '../plan/origin.js';
import { show, type Quantity } from '../plan/quantity.js';
import type { Dish } from '../plan/types.js';
import { degreesLike, isBelow } from './degrees.js';
import { quoted } from './wording.js';

/** Why a dish counts as raw or undercooked, and where it says so. */
export interface Undercooked {
    readonly at: Origin;
    /** `is served raw`, `is cooked to 52 °C, below the 63 °C for its kind`. */
    readonly words: string;
    /** The figure to cook to, where the plan cooks to a lower one. */
    readonly cookTo?: string;
}

/** Minced meat: lower temperatures that count when held, °C and least minutes; source: temperature S12. */
const MINCED_HOLDS = [
    [65.6, 1],
    [62.8, 3],
] as const;

/** Whole roasts: how long each temperature has to be held, °C and least minutes, hottest first; source: temperature 2.2. */
const ROAST_HOLDS = [
    [70.0, 0],
    [69.4, 14 / 60],
    [68.3, 22 / 60],
    [67.2, 34 / 60],
    [66.1, 54 / 60],
    [65.0, 85 / 60],
    [63.9, 134 / 60],
    [62.8, 4],
    [62.2, 5],
    [61.1, 8],
    [60.0, 12],
    [58.9, 18],
    [57.8, 28],
    [57.2, 36],
    [56.1, 56],
    [55.0, 89],
    [54.4, 112],
] as const;

type Hold = readonly [celsius: number, minutes: number];

/** @returns `undefined` where the dish is cooked through, or where nothing tells */
export function undercooked(dish: Dish, kind: Kind | undefined, cupboard: Cupboard): Undercooked | undefined {
    const { served, cookTo } = dish;
    if (served.raw) {
        return { at: served.raw.origin, words: `is served ${served.raw.how}` };
    }
    const rawEgg = [dish, ...dish.accompaniments]
        .flatMap((each) => each.contains?.what ?? [])
        .find(({ name }) => withParents(name, cupboard.substances).has('raw-egg'));
    if (rawEgg) {
        return { at: rawEgg.origin, words: `contains ${quoted(rawEgg.name)}` };
    }
    if (cookTo && kind?.cookTo) {
        return judgeCooking(cookTo, kind, kind.cookTo.value);
    }
    return kind?.raw && !cookTo
        ? { at: dish.head, words: `is ${quoted(kind.name)}, which is served ${kind.raw}` }
        : undefined;
}

function judgeCooking(cookTo: NonNullable<Dish['cookTo']>, kind: Kind, celsius: number): Undercooked | undefined {
    const { temperature, time, origin } = cookTo;
    const wanted = degreesLike(temperature, celsius);
    if (isBelow(temperature, celsius)) {
        const isHeld =
            time !== undefined &&
            isKindOf(kind, 'minced-meat') &&
            MINCED_HOLDS.some((hold) => keeps(temperature, time, hold));
        const words = `is cooked to ${temperature.written}, below the ${wanted} for ${quoted(kind.name)}`;
        return isHeld ? undefined : { at: origin, words, cookTo: wanted };
    }
    if (time && isKindOf(kind, 'roast')) {
        const [, minutes] = ROAST_HOLDS.find(([reached]) => !isBelow(temperature, reached)) ?? [0, 0];
        const words = `is held at ${temperature.written} for ${time.written}, where a roast needs ${minutes < 1 ? show(minutes, 's') : show(minutes, 'min')}`;
        return time.value < minutes ? { at: origin, words } : undefined;
    }
    return undefined;
}

function keeps(temperature: Quantity, time: Quantity, [celsius, minutes]: Hold): boolean {
    return !isBelow(temperature, celsius) && time.value >= minutes;
}

/** Minced meat, which children must not get undercooked; source: temperature S16. */
export function isMincedMeat(kind: Kind | undefined): boolean {
    return isKindOf(kind, 'minced-meat') || isKindOf(kind, 'tartare');
}
