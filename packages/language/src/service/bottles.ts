/** How many bottles the pours of an evening need, and what that comes to in standard drinks. */
import { findCourse } from '../plan/names.js';
import type { Plan, Pour } from '../plan/types.js';
import { isLeftOff, sameNeed } from './diets.js';
import type { Bottles, GuestGroup, PourFacts, PourNeed } from './types.js';

/** Density of ethanol, g/ml (quantities 2.4). */
export const ETHANOL_DENSITY = 0.789;

/** Bottles of a wine whose plan names no size, ml (quantities 2.1). */
export const USUAL_BOTTLE = 750;

/** A case is nine litres: twelve bottles of 750 ml (quantities 2.2). */
export const CASE_MILLILITRES = 9000;

/** Less than a pour of this share of a measure is lost to binary fractions, not to the glass. */
const NOISE = 1e-9;

/** Whole pours of a bottle; what is left in it is less than a pour (quantities 2.3). @param bottle ml @param pour ml, > 0 */
export function poursPerBottle(bottle: number, pour: number): number {
    return Math.floor(bottle / pour + NOISE);
}

/**
 * The mix of bottle sizes that pours at least `pours`, with the least left over, then the fewest bottles, then the larger size.
 * Exact: every number of each size but the last is tried.
 * @param sizes ml, each once @param pour ml, > 0
 */
export function fewestLeftOver(pours: number, pour: number, sizes: readonly number[]): Bottles[] {
    const usable = [...new Set(sizes)].filter((size) => poursPerBottle(size, pour) > 0).toSorted((a, b) => b - a);
    let best: { readonly counts: readonly number[]; readonly over: number; readonly bottles: number } | undefined;
    const visit = (place: number, counts: readonly number[], missing: number): void => {
        const each = poursPerBottle(usable[place]!, pour);
        const most = Math.max(0, Math.ceil(missing / each));
        for (let count = place === usable.length - 1 ? most : 0; count <= most; count++) {
            const next = [...counts, count];
            const left = missing - count * each;
            if (place < usable.length - 1) {
                visit(place + 1, next, left);
                continue;
            }
            const bottles = next.reduce((sum, number) => sum + number, 0);
            if (!best || -left < best.over || (-left === best.over && bottles < best.bottles)) {
                best = { counts: next, over: -left, bottles };
            }
        }
    };
    if (usable.length > 0 && pours > 0) {
        visit(0, [], pours);
    }
    return (best?.counts ?? [])
        .map((count, index) => ({ size: usable[index]!, count }))
        .filter(({ count }) => count > 0);
}

/** Standard drinks in a volume (quantities 2.4). @param strength by volume, 0–1 @param standard grams of ethanol of one drink */
export function standardDrinks(millilitres: number, strength: number, standard: number): number {
    return (millilitres * strength * ETHANOL_DENSITY) / standard;
}

/** Groups that a pour is offered to: not those it is left off for, nor, with alcohol, children or guests who keep from it. */
export function drinkersOf(plan: Plan, facts: PourFacts, groups: readonly GuestGroup[]): GuestGroup[] {
    const isAlcoholic = facts.strength !== undefined && facts.strength > 0;
    return groups.filter((group) => {
        const keepsFrom = group.needs.some(
            (need) =>
                need.sort === 'diet' &&
                plan.cupboard.diets.get(need.diet.name)?.excludes.some((what) => what.name === 'alcohol') === true,
        );
        return (
            !isLeftOff(facts.pour.leftOffFor, group, plan.cupboard) && !(isAlcoholic && (group.children || keepsFrom))
        );
    });
}

function countDrinkers(
    plan: Plan,
    facts: PourFacts,
    groups: readonly GuestGroup[],
    inDish: ReadonlyMap<GuestGroup, number> | undefined,
): number {
    const { who } = facts.pour;
    const offered = drinkersOf(plan, facts, groups);
    const guests = offered.reduce((sum, group) => sum + (inDish ? (inDish.get(group) ?? 0) : group.count), 0);
    if (who?.sort !== 'some') {
        return guests;
    }
    if (who.count) {
        return Math.min(who.count.count, guests);
    }
    if (who.share) {
        return Math.ceil(who.share.value * guests - NOISE);
    }
    const meant = offered.filter((group) =>
        who.needs.every((wanted) => group.needs.some((need) => sameNeed(wanted, need, plan.cupboard))),
    );
    return meant.reduce((sum, group) => sum + (inDish ? (inDish.get(group) ?? 0) : group.count), 0);
}

function poursEach(plan: Plan, pour: Pour, course: number): number {
    const until = pour.toppedUpUntil && findCourse(plan.menu, pour.toppedUpUntil.name)?.index;
    return 1 + (pour.refills?.count ?? 0) + Math.max(0, (until ?? course) - course);
}

/**
 * What each pour of the menu needs. A pour without a measure needs nothing that could be counted.
 * @param inDish for a dish's own pour, how many of each group get the dish
 */
export function needOfPour(
    plan: Plan,
    facts: PourFacts,
    groups: readonly GuestGroup[],
    inDish?: ReadonlyMap<GuestGroup, number>,
): PourNeed | undefined {
    const { pour } = facts;
    if (!pour.amount || pour.amount.value <= 0) {
        return undefined;
    }
    const drinkers = countDrinkers(plan, facts, groups, inDish);
    const each = poursEach(plan, pour, facts.course);
    const pours = drinkers * each;
    const millilitres = pours * pour.amount.value;
    const sizes = pour.bottles.length > 0 ? pour.bottles.map((size) => size.value) : [USUAL_BOTTLE];
    const bottles = fewestLeftOver(pours, pour.amount.value, sizes);
    const standard = plan.code.figures['standard-drink']?.low;
    const known = facts.strength !== undefined && standard !== undefined;
    return {
        facts,
        drinkers,
        poursEach: each,
        millilitres,
        bottles,
        leftOver: bottles.reduce((sum, { size, count }) => sum + size * count, 0) - millilitres,
        drinksEach: known ? standardDrinks(each * pour.amount.value, facts.strength, standard) : undefined,
    };
}
