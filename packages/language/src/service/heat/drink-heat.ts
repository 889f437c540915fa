/** Drinks in their glasses and cups: what a glass makes of a cold bottle, and a cup of a hot pot (temperature 13, DS5). */
import type { Kind, Piece } from '../../plan/cupboard.js';
import { isKindOf } from '../../plan/names.js';
import type { Plan } from '../../plan/types.js';
import { bathOf, wayOf } from '../chilling/baths.js';
import { remember } from '../remember.js';
import type { PourFacts, Service } from '../types.js';
import { POUR_ERROR, type Band } from './band.js';
import { isCreamy, liquidOf } from './contents.js';
import { minutesKept, pourNeeded, type Answer, type Ask, type Limits } from './inverse.js';
import { stillRoom } from './journey.js';
import { coolFor, pourInto, type Liquid, type Vessel } from './liquid.js';
import { touchLimits } from './touch-limits.js';
import type { Air, DrinkHeat } from './types.js';
import { surfaceFactor, vesselFacts } from './vessel.js';

interface DrinkCase {
    readonly side: 'hot' | 'cold';
    readonly liquid: Liquid;
    readonly vessel: Vessel;
    readonly wanted: number;
    /** Of bottle or pot, °C. */
    readonly from: number;
    readonly air: Air;
    readonly surfaceFactor: number;
    /** Of its kind, °C: it is kept while it is no warmer than the upper end, or a hot drink no colder than the lower. */
    readonly keptTo?: number;
    readonly limits: Limits;
}

interface DrinkResult {
    readonly poured: Band;
    readonly needed: Answer;
    readonly staysFor?: number;
}

/** In the glass nothing is carried or covered: the pour is the guest's. */
const pourDrink: (given: DrinkCase) => DrinkResult = remember((given: DrinkCase): DrinkResult => {
    const { side, liquid, vessel, wanted, from, air, keptTo, limits } = given;
    const still = stillRoom(air, given.surfaceFactor);
    const celsius = pourInto(liquid, from, vessel, air.celsius);
    const ask: Ask = { side, liquid, vessel, inVessel: wanted, atFirst: wanted, emptyFor: 0, room: air.celsius };
    return {
        poured: {
            low: celsius - POUR_ERROR,
            celsius,
            high: celsius + POUR_ERROR,
            because: `${POUR_ERROR} °C for what the vessel takes up (temperature 12)`,
        },
        needed: pourNeeded(ask, air.celsius, limits),
        ...(keptTo !== undefined && {
            staysFor: minutesKept(side, keptTo, wanted, (now) => coolFor(now, 1, liquid, vessel, still)),
        }),
    };
}, 64);

/** Wanted hotter than this, °C, a drink comes from a pot and not from a bottle. */
const HOT_FROM = 40;

/** The drinks that say how warm they are wanted and go into something whose mass a cupboard states. */
export function drinksHeat(plan: Plan, { pours, coffee }: Pick<Service, 'pours' | 'coffee'>, air: Air): DrinkHeat[] {
    const poured = pours.flatMap((facts, index) => pourHeat(plan, facts, index, air) ?? []);
    const cups = coffee && coffeeHeat(plan, coffee, air);
    return cups ? [...poured, cups] : poured;
}

function pourHeat(plan: Plan, { pour, kind, glass }: PourFacts, index: number, air: Air): DrinkHeat | undefined {
    const wanted = pour.temperature?.value;
    const liquid = liquidOf(kind, pour.amount);
    if (wanted === undefined || !glass || !liquid) {
        return undefined;
    }
    if (wanted >= HOT_FROM) {
        return hotDrink(plan, { title: pour.title, index, kind, cup: glass, liquid, wanted, air });
    }
    const found = vesselFacts(glass);
    if (!found) {
        return undefined;
    }
    // No bottle is colder than what it was chilled in.
    const bath = pour.chilledIn && bathOf(plan, wayOf(plan, pour), air.celsius);
    return {
        pour: index,
        title: pour.title,
        wanted,
        from: { celsius: wanted, how: 'bottle' },
        ...(bath && {
            coldest: { bath: bath.celsius, celsius: pourInto(liquid, bath.celsius, found.vessel, air.celsius) },
        }),
        ...pourDrink({
            side: 'cold',
            liquid,
            vessel: found.vessel,
            wanted,
            from: wanted,
            air,
            surfaceFactor: surfaceFactor(undefined, false),
            ...(kind?.range && { keptTo: kind.range.high }),
            limits: { touch: touchLimits(glass).never, scald: plan.customs['scald-limit'].value },
        }),
        assumed: found.assumed,
    };
}

interface HotDrink {
    readonly title: string;
    readonly index: number;
    readonly kind: Kind | undefined;
    readonly cup: Piece;
    readonly liquid: Liquid;
    readonly wanted: number;
    readonly air: Air;
}

function hotDrink(plan: Plan, { title, index, kind, cup, liquid, wanted, air }: HotDrink): DrinkHeat | undefined {
    const found = vesselFacts(cup);
    if (!found) {
        return undefined;
    }
    const isCoffee = isKindOf(kind, 'coffee');
    const from = isCoffee ? plan.customs['coffee-held'].value : wanted;
    return {
        pour: index,
        title,
        wanted,
        from: { celsius: from, how: 'pot' },
        ...pourDrink({
            side: 'hot',
            liquid,
            vessel: found.vessel,
            wanted,
            from,
            air,
            surfaceFactor: surfaceFactor(undefined, isCreamy(kind)),
            ...(kind?.range && { keptTo: kind.range.low }),
            limits: { touch: touchLimits(cup).never, scald: plan.customs['scald-limit'].value },
        }),
        assumed: found.assumed,
    };
}

/** Not one of `service.pours`. */
const COFFEE = -1;

function coffeeHeat(plan: Plan, { coffee, cup }: NonNullable<Service['coffee']>, air: Air): DrinkHeat | undefined {
    const kind = plan.cupboard.drinks.get('coffee');
    const holds = cup?.measures.holds?.low;
    const wanted = coffee.temperature?.value;
    const liquid = liquidOf(
        kind,
        holds === undefined ? undefined : { value: holds * plan.customs['coffee-cup-fill'].value },
    );
    return cup && liquid && wanted !== undefined
        ? hotDrink(plan, { title: 'coffee', index: COFFEE, kind, cup, liquid, wanted, air })
        : undefined;
}
