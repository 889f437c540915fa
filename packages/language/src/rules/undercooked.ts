import type { Cupboard, Kind } from '../plan/cupboard.js';
import { isKindOf, withParents } from '../plan/names.js';
import type { Origin } from '../plan/origin.js';
import { show, type Quantity } from '../plan/quantity.js';
import type { Dish } from '../plan/types.js';
import { judgeByCode } from './degrees.js';
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

/** @returns `undefined` where the dish is cooked through, or where nothing tells */
export function undercooked(dish: Dish, kind: Kind | undefined, cupboard: Cupboard): Undercooked | undefined {
    const { served, cookTo } = dish;
    if (served.raw) {
        return { at: served.raw.origin, words: `is served ${served.raw.how}` };
    }
    const cooking = cookTo && kind?.cookTo && judgeCooking(cookTo, kind, kind.cookTo);
    if (cooking) {
        return cooking;
    }
    if (kind?.raw && !cookTo) {
        return { at: dish.head, words: `is ${quoted(kind.name)}, which is served ${kind.raw}` };
    }
    const rawEgg = [dish, ...dish.accompaniments]
        .flatMap((each) => each.contains?.what ?? [])
        .find(({ name }) => withParents(name, cupboard.substances).has('raw-egg'));
    return rawEgg && { at: rawEgg.origin, words: `contains ${quoted(rawEgg.name)}` };
}

function judgeCooking(cookTo: NonNullable<Dish['cookTo']>, kind: Kind, wanted: Quantity): Undercooked | undefined {
    const { temperature, time, origin } = cookTo;
    const { isBroken, words: least } = judgeByCode(
        temperature,
        { low: wanted.value, high: wanted.value, size: wanted },
        'least',
    );
    if (isBroken) {
        const isHeld =
            time !== undefined &&
            isKindOf(kind, 'minced-meat') &&
            MINCED_HOLDS.some(([celsius, minutes]) => reaches(temperature, celsius) && time.value >= minutes);
        const words = `is cooked to ${temperature.written}, below the ${least} for ${quoted(kind.name)}`;
        return isHeld ? undefined : { at: origin, words, cookTo: least };
    }
    if (time && isKindOf(kind, 'roast')) {
        const [, minutes] = ROAST_HOLDS.find(([celsius]) => reaches(temperature, celsius)) ?? ROAST_HOLDS.at(-1)!;
        const words = `is held at ${temperature.written} for ${time.written}, where a roast needs ${minutes < 1 ? show(minutes, 's') : show(minutes, 'min')}`;
        return time.value < minutes ? { at: origin, words } : undefined;
    }
    return undefined;
}

/** The tables print °F to the degree and °C to a tenth of it: 145 °F is 62.8 °C. */
function reaches(temperature: Quantity, celsius: number): boolean {
    return temperature.value >= celsius - 0.05;
}

/** Minced meat, which children must not get undercooked; source: temperature S16. */
export function isMincedMeat(kind: Kind | undefined): boolean {
    return isKindOf(kind, 'minced-meat') || isKindOf(kind, 'tartare');
}
