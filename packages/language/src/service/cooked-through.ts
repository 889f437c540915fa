import type { Cupboard, Figure, Kind } from '../plan/cupboard.js';
import { judgeByCode } from '../plan/degrees.js';
import { isKindOf, withParents } from '../plan/names.js';
import type { Origin } from '../plan/origin.js';
import { show, type Quantity } from '../plan/quantity.js';
import type { Dish, Plan } from '../plan/types.js';

/** What decides how a food has to be cooked. */
export type CodeAndCupboard = Pick<Plan, 'code' | 'cupboard'>;

/** A `cook to` that the food code does not count as cooked through. */
export interface LowCooking {
    readonly at: Origin;
    /** `is cooked to 52 °C`, `is held at 60 °C for 5 min`. */
    readonly words: string;
    /** The food as a message speaks of it: `poultry`. */
    readonly food: string;
    /** What it needs: `74 °C`, `12 min`. */
    readonly needs: string;
    /** The figure to cook to in its place, °C and as written; absent where the time is too short. */
    readonly least?: { readonly celsius: number; readonly words: string };
    /** True for whole cuts, fish and eggs, which guests may ask for undercooked where the menu says so. */
    readonly isOnRequest: boolean;
}

/** Food that no notice makes safe: its kinds, and the figure of the code; source: temperature S12 to S14. */
const NEVER_ON_REQUEST = [
    { kinds: ['poultry'], figure: 'cook-poultry', food: 'poultry' },
    { kinds: ['game'], figure: 'cook-poultry', food: 'game' },
    { kinds: ['stuffed-meat'], figure: 'cook-poultry', food: 'stuffed meat' },
    { kinds: ['minced-meat'], figure: 'cook-minced-meat', food: 'minced meat' },
    { kinds: ['vegetable-main', 'grain-main'], figure: 'cook-vegetables', food: 'plant food that is kept hot' },
] as const;

/** What a whole cut, a fish or an egg is of; source: temperature S11. */
const SEAFOOD_AND_MEAT = ['meat', 'fish', 'crustaceans', 'molluscs'];
const WHOLE = [...SEAFOOD_AND_MEAT, 'egg'];

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

/** @returns `undefined` where the dish states no `cook to`, where that is enough, or where nothing tells what is */
export function lowCooking(dish: Dish, kind: Kind | undefined, plan: CodeAndCupboard): LowCooking | undefined {
    const { cookTo } = dish;
    if (!cookTo) {
        return undefined;
    }
    const strict = strictFood(dish, kind, plan.cupboard);
    // A roast may be held for longer at less.
    const whole = strict || kind?.cookTo || isKindOf(kind, 'roast') ? undefined : wholeFoodStated(dish, plan.cupboard);
    const wanted = strict
        ? figureOf(plan, strict.figure)
        : kind?.cookTo
          ? asFigure(kind.cookTo)
          : whole && figureOf(plan, 'cook-whole-meat');
    if (!wanted) {
        return undefined;
    }
    const { temperature, time, origin } = cookTo;
    const isOnRequest = whole !== undefined || (!strict && kind !== undefined && isWhole(kind, plan.cupboard));
    const food = strict?.food ?? `\`${whole ?? kind!.name}\``;
    const { isBroken, words } = judgeByCode(temperature, wanted, 'least');
    if (isBroken) {
        const isHeld =
            time !== undefined &&
            strict?.figure === 'cook-minced-meat' &&
            MINCED_HOLDS.some(([celsius, minutes]) => reaches(temperature, celsius) && time.value >= minutes);
        const least = { celsius: wanted.low, words };
        return isHeld
            ? undefined
            : { at: origin, words: `is cooked to ${temperature.written}`, food, needs: words, least, isOnRequest };
    }
    if (time && !strict && isKindOf(kind, 'roast')) {
        const [, minutes] = ROAST_HOLDS.find(([celsius]) => reaches(temperature, celsius)) ?? ROAST_HOLDS.at(-1)!;
        const needs = minutes < 1 ? show(minutes, 's') : show(minutes, 'min');
        const words = `is held at ${temperature.written} for ${time.written}`;
        return time.value < minutes ? { at: origin, words, food: 'a roast', needs, isOnRequest } : undefined;
    }
    return undefined;
}

/** Whether the kind of a dish, or what it contains, tells how hot its middle has to get. */
export function isCookingTold(dish: Dish, kind: Kind, cupboard: Cupboard): boolean {
    return (
        kind.cookTo !== undefined ||
        strictFood(dish, kind, cupboard) !== undefined ||
        wholeFoodStated(dish, cupboard) !== undefined
    );
}

/** By its kind; whatever its kind, a dish whose meat is all poultry or game is that, such as a chicken that `is roast-meat`. */
function strictFood(
    dish: Dish,
    kind: Kind | undefined,
    cupboard: Cupboard,
): (typeof NEVER_ON_REQUEST)[number] | undefined {
    const byKind = NEVER_ON_REQUEST.find(({ kinds }) => kinds.some((name) => isKindOf(kind, name)));
    const meats = (dish.contains?.what ?? [])
        .map(({ name }) => withParents(name, cupboard.substances))
        .filter((parents) => parents.has('meat') && !MADE_FROM.some((name) => parents.has(name)));
    const isAll = (meat: string): boolean => meats.length > 0 && meats.every((parents) => parents.has(meat));
    // Minced chicken needs what poultry needs.
    if (byKind?.figure === 'cook-poultry') {
        return byKind;
    }
    return isAll('fowl') ? NEVER_ON_REQUEST[0] : isAll('game-meat') ? NEVER_ON_REQUEST[1] : byKind;
}

/** The first meat or seafood that a dish states; its kind, such as `main`, may not tell what it is. An egg may only bind a sauce. */
function wholeFoodStated(dish: Dish, { substances }: Cupboard): string | undefined {
    return dish.contains?.what
        .map(({ name }) => ({ name, parents: withParents(name, substances) }))
        .find(
            ({ parents }) =>
                SEAFOOD_AND_MEAT.some((food) => parents.has(food)) && !MADE_FROM.some((food) => parents.has(food)),
        )?.name;
}

/** Cooked long before it reaches a dish, or nothing to be cooked at all. */
const MADE_FROM = ['meat-stock', 'fish-stock', 'gelatine', 'lard', 'anchovy', 'roe', 'worcester-sauce'];

/** The code in force, or the model code where that gives no figure of its own. */
function figureOf({ code, cupboard }: CodeAndCupboard, name: string): Figure | undefined {
    return code.figures[name] ?? cupboard.codes.get('us-model')?.figures[name];
}

function asFigure(size: Quantity): Figure {
    return { low: size.value, high: size.value, size };
}

function isWhole(kind: Kind, { substances }: Cupboard): boolean {
    const parents = kind.of.flatMap(({ name }) => [...withParents(name, substances)]);
    return WHOLE.some((name) => parents.includes(name));
}

/** The tables print °F to the degree and °C to a tenth of it: 145 °F is 62.8 °C. */
function reaches(temperature: Quantity, celsius: number): boolean {
    return temperature.value >= celsius - 0.05;
}
