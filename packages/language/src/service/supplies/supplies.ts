/** Ice, water, bread, butter, coffee and portions: what the evening takes at so much for a guest. */
import type { Plan, Pour } from '../../plan/types.js';
import { wayOf } from '../chilling/baths.js';
import { isLeftOff } from '../diets.js';
import { portionsToCook } from '../numbers.js';
import { lotsOf, up } from '../stock/lots.js';
import type { Service } from '../types.js';
import type { Supplies, Supply } from './types.js';

type Served = Pick<Service, 'guestCount' | 'servings' | 'bread' | 'coffee' | 'pours'>;

/** Every amount for the guests expected, in the order of the evening. The house's figures, else the published ones. */
export function suppliesOf(plan: Plan, service: Served): Supplies {
    if (!plan.menu || service.guestCount === 0) {
        return [];
    }
    return [
        iceFor(plan, service),
        ...waterFor(plan, service.guestCount),
        ...breadFor(plan, service),
        ...dishesFor(plan, service),
        ...coffeeFor(plan, service),
    ];
}

/** So much for each guest, in packs of one size. @param guests 0 or more @param each g or ml @param pack > 0 */
export function packsFor(
    guests: number,
    each: number,
    pack: number,
): { readonly amount: number; readonly count: number } {
    const amount = guests * each;
    return { amount, count: lotsOf(amount, pack) };
}

function iceFor(plan: Plan, { guestCount, pours }: Served): Supply {
    const { customs } = plan;
    const isForBottles = pours.some(({ pour }) => wayOf(plan, pour) === 'ice-water' && isCold(pour));
    const each = customs['ice-per-guest'].value + (isForBottles ? customs['ice-for-bottles'].value : 0);
    const size = customs['ice-bag'].value;
    const { amount, count } = packsFor(guestCount, each, size);
    return {
        what: 'ice',
        guests: guestCount,
        dimension: 'mass',
        each,
        amount,
        packs: { called: 'bags', count, size },
        customs: ['ice-per-guest', ...(isForBottles ? (['ice-for-bottles'] as const) : []), 'ice-bag'],
    };
}

/** Poured colder than any room or cellar leaves it, °C. */
const COLD = 15;

function isCold({ temperature, chilledIn }: Pour): boolean {
    return chilledIn !== undefined || (temperature !== undefined && temperature.value < COLD);
}

/** Only where the menu says nothing of water: what it pours is counted with the drinks. */
function waterFor({ menu, customs }: Plan, guests: number): Supply[] {
    const each = customs['table-water'].value;
    return menu?.water
        ? []
        : [{ what: 'water', guests, dimension: 'volume', each, amount: guests * each, customs: ['table-water'] }];
}

function breadFor(plan: Plan, { bread }: Served): Supply[] {
    if (!bread) {
        return [];
    }
    const { customs, cupboard } = plan;
    const each = customs['bread-each'].value;
    const served = bread.serving.portions.filter(({ count }) => count > 0);
    const breads = served.map(({ dish, count }): Supply => ({
        what: 'bread',
        title: dish.title,
        guests: count,
        dimension: 'count',
        each,
        amount: up(count * each),
        customs: ['bread-each'],
    }));
    const butters = served.flatMap(({ dish, groups }) =>
        dish.accompaniments
            .filter(({ sort }) => sort === 'butter')
            .map((butter) => ({
                title: butter.title,
                guests: groups.reduce(
                    (sum, { group, count }) => sum + (isLeftOff(butter.leftOffFor, group, cupboard) ? 0 : count),
                    0,
                ),
            })),
    );
    const grams = customs['butter-each'].value;
    const titles = [...new Set(butters.map(({ title }) => title))];
    return [
        ...breads,
        ...titles.map((title): Supply => {
            const guests = butters
                .filter((butter) => butter.title === title)
                .reduce((sum, butter) => sum + butter.guests, 0);
            return {
                what: 'butter',
                title,
                guests,
                dimension: 'mass',
                each: grams,
                amount: guests * grams,
                customs: ['butter-each'],
            };
        }),
    ];
}

/** Dishes whose portion the plan states, with the portions cooked beyond those that guests get. */
function dishesFor(plan: Plan, { servings }: Served): Supply[] {
    return servings
        .flatMap(({ portions }) => portions)
        .flatMap((portion): Supply[] => {
            const size = portion.dish.served.portion;
            const guests = portionsToCook(plan, portion);
            return size && guests > 0 && (size.dimension === 'volume' || size.dimension === 'mass')
                ? [
                      {
                          what: 'dish',
                          title: portion.dish.title,
                          guests,
                          dimension: size.dimension,
                          each: size.value,
                          amount: guests * size.value,
                          customs: [],
                      },
                  ]
                : [];
        });
}

/** Whole batches of what so many cups take. @param pour ml of one cup @param batch ml, > 0 */
export function brew(
    cups: number,
    pour: number,
    batch: number,
): { readonly needed: number; readonly batches: number; readonly volume: number } {
    const needed = cups * pour;
    const batches = lotsOf(needed, batch);
    return { needed, batches, volume: batches * batch };
}

function coffeeFor({ customs }: Plan, { coffee, guestCount }: Served): Supply[] {
    if (!coffee) {
        return [];
    }
    const isOnRequest = coffee.coffee.onRequest;
    const guests = isOnRequest ? up(customs['coffee-share'].value * guestCount) : guestCount;
    const cups = customs['coffee-cups-each'].value;
    // A small cup takes no more than it holds.
    const pour = Math.min(customs['coffee-cup-pour'].value, coffee.cup?.measures.holds?.low ?? Infinity);
    const size = Math.max(1, customs['coffee-batch'].value);
    const { needed, batches, volume } = brew(guests * cups, pour, size);
    const ground = customs['ground-coffee'].value;
    const basis = [...(isOnRequest ? ['coffee-share' as const] : []), 'coffee-cups-each', 'coffee-cup-pour'] as const;
    return [
        {
            what: 'coffee',
            guests,
            dimension: 'volume',
            each: cups * pour,
            amount: needed,
            packs: { called: 'batches', count: batches, size },
            customs: [...basis, 'coffee-batch'],
        },
        {
            what: 'ground-coffee',
            guests,
            dimension: 'mass',
            each: guests > 0 ? ((volume / 1000) * ground) / guests : 0,
            amount: (volume / 1000) * ground,
            customs: ['ground-coffee', 'coffee-batch'],
        },
    ];
}
