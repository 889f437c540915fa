import type { Cupboard } from '../plan/cupboard.js';
import type { Course, Dish } from '../plan/types.js';
import { alcoholInFood } from './alcohol-in-food.js';
import type { CodeAndCupboard } from './cooked-through.js';
import { dishConflicts, isAllergenNeed } from './diets.js';
import { solveTransport } from './flow.js';
import { sortGuests, type GuestSort } from './guest-sorts.js';
import { isCounted, tooFewFor, tooManyFor } from './serving-conflicts.js';
import type { CourseServing, GuestGroup, Portion, Unserved } from './types.js';
import { undercookedFor } from './undercooked.js';

/**
 * How many portions each dish has: a stated number, or its share of the guests; `undefined` where it has as many as are wanted.
 * Shares are rounded by largest remainder, so that thirds of 25 make 25.
 */
export function portionsStated(dishes: readonly Dish[], guestCount: number): (number | undefined)[] {
    const who = dishes.map((dish) => (dish.who?.sort === 'some' ? dish.who : undefined));
    const exact = who.map((each) => (each?.share ? each.share.value * guestCount : 0));
    const counts = exact.map((portion) => Math.floor(portion + ROUNDING_NOISE));
    const total = Math.round(exact.reduce((sum, portion) => sum + portion, 0));
    const byRemainder = exact
        .map((portion, index) => ({ index, rest: portion - counts[index]! }))
        .toSorted((a, b) => b.rest - a.rest || a.index - b.index);
    let missing = total - counts.reduce((sum, count) => sum + count, 0);
    for (const { index } of byRemainder.filter((each) => who[each.index]?.share)) {
        counts[index]! += missing-- > 0 ? 1 : 0;
    }
    return who.map((each, index) => each?.count?.count ?? (each?.share ? counts[index] : undefined));
}

/** 0.2 × 85 is a hair off 17 in binary fractions. */
const ROUNDING_NOISE = 1e-9;

/**
 * What one portion costs, as digits of one number, the gravest first:
 * guests with an allergen are fed before those with a diet, and those before all others; choices are kept; nobody whom it harms most
 * gets raw or undercooked food; nobody gets a dish meant for guests of another need, and no child one with alcohol; portions stated by
 * number are given out; a guest gets the dish meant for them before one that is counted, and that before the one for the rest.
 */
function costOf(
    { groups, likes }: GuestSort,
    place: number,
    dish: Dish,
    isStated: boolean,
    plan: CodeAndCupboard,
): number[] | undefined {
    const { cupboard } = plan;
    const liking = likes[place];
    if (liking === undefined) {
        return undefined;
    }
    const group = groups[0]!;
    const { needs } = group;
    const isForAdults =
        group.children && alcoholInFood(dish, cupboard.kinds.get(dish.kind.name), group, cupboard).length > 0;
    return [
        needs.some((need) => isAllergenNeed(need, cupboard)) ? 0 : needs.length > 0 ? 1 : 2,
        likes.includes('chosen') && liking !== 'chosen' ? 1 : 0,
        undercookedFor(group, dish, plan) ? 1 : 0,
        liking === 'stand-in' || isForAdults ? 1 : 0,
        isStated ? 0 : 1,
        { chosen: 0, meant: 0, counted: 1, rest: 2, 'stand-in': 2 }[liking],
    ];
}

/** The largest digit of a cost. */
const LARGEST_DIGIT = 2;

/**
 * Who gets which dish: each guest one dish they may have, stated numbers kept, preferences kept, in the order of `costOf`.
 * Solved exactly as a transport problem of sorts of guests and dishes.
 */
export function serveCourse(
    course: Course,
    groups: readonly GuestGroup[],
    guestCount: number,
    plan: CodeAndCupboard,
): CourseServing {
    const { cupboard } = plan;
    const { dishes } = course;
    const stated = portionsStated(dishes, guestCount);
    const sorts = sortGuests(groups, dishes, cupboard);
    // A way to better a solution passes each dish at most once, in and out; so no sum of a lesser digit outweighs a graver one.
    const base = 2 * LARGEST_DIGIT * Math.min(dishes.length, MOST_DISHES) + 1;
    const flow = solveTransport({
        supply: sorts.map((sort) => sort.count),
        capacity: stated.map((count) => count ?? Infinity),
        cost: sorts.map((sort) =>
            dishes.map((dish, place) =>
                costOf(sort, place, dish, stated[place] !== undefined, plan)?.reduce(
                    (cost, digit) => cost * base + digit,
                    0,
                ),
            ),
        ),
    });
    const { fed, hungry } = shareOut(sorts, flow);
    const portions = dishes.map((dish, place): Portion => {
        const eaters = fed[place]!.toSorted((a, b) => a.group.index - b.group.index);
        return { dish, count: eaters.reduce((sum, each) => sum + each.count, 0), groups: eaters };
    });
    const unserved = hungry
        .toSorted((a, b) => a.group.index - b.group.index)
        .map(({ group, count }): Unserved => {
            const refused = dishes.map((dish) => ({
                dish,
                conflicts: dishConflicts(dish, cupboard.kinds.get(dish.kind.name), group, cupboard),
            }));
            return { group, count, refused };
        });
    const leftover = portions.flatMap(({ dish, count }, place) => {
        const spare = (stated[place] ?? count) - count;
        return spare > 0 ? [{ dish, count: spare }] : [];
    });
    const countedOver = leftover.reduce((sum, { dish, count }) => sum + (isCounted(dish) ? count : 0), 0);
    const isDenied = sorts.some(({ likes }, sort) =>
        flow[sort]!.some((count, dish) => count > 0 && likes.includes('chosen') && likes[dish] !== 'chosen'),
    );
    return {
        course,
        portions,
        unserved,
        leftover,
        tooFew: unserved.length > 0 || isDenied ? tooFewFor({ dishes, sorts }, stated, countedOver) : [],
        tooMany: countedOver > 0 ? tooManyFor({ dishes, sorts }, stated) : [],
    };
}

/** Past it costs no longer fit a number exactly; no course has as many. */
const MOST_DISHES = 113;

interface Share {
    readonly group: GuestGroup;
    readonly count: number;
}

/** What each sort of guests gets, dealt to its groups in their order and the menu's. */
function shareOut(
    sorts: readonly GuestSort[],
    flow: readonly (readonly number[])[],
): { readonly fed: readonly Share[][]; readonly hungry: readonly Share[] } {
    const fed: Share[][] = (flow[0] ?? []).map(() => []);
    const hungry: Share[] = [];
    for (const [sort, { groups }] of sorts.entries()) {
        const left = [...flow[sort]!];
        let dish = 0;
        for (const group of groups) {
            let wanted = group.count;
            while (wanted > 0 && dish < left.length) {
                const count = Math.min(wanted, left[dish]!);
                if (count > 0) {
                    fed[dish]!.push({ group, count });
                    wanted -= count;
                    left[dish]! -= count;
                }
                dish += left[dish] === 0 ? 1 : 0;
            }
            if (wanted > 0) {
                hungry.push({ group, count: wanted });
            }
        }
    }
    return { fed, hungry };
}

/** The dishes a group can get in a course: those it is given, or, where nobody is counted yet, all that it may have. */
export function dishesFor(group: GuestGroup, serving: CourseServing, cupboard: Cupboard): readonly Dish[] {
    const given = serving.portions
        .filter((portion) => portion.groups.some((each) => each.group === group))
        .map((portion) => portion.dish);
    if (given.length > 0 || group.count > 0) {
        return given;
    }
    return serving.course.dishes.filter(
        (dish) => dishConflicts(dish, cupboard.kinds.get(dish.kind.name), group, cupboard).length === 0,
    );
}
