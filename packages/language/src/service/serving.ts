import type { Cupboard } from '../plan/cupboard.js';
import type { Course, Dish } from '../plan/types.js';
import { dishConflicts, sameNeed } from './diets.js';
import { solveTransport } from './flow.js';
import type { CourseServing, GuestGroup, Portion, Unserved } from './types.js';

/** What giving a dish to a guest costs in preference; lower is liked better. Closed where it must not be. */
const LIKED = { chosen: 0, meant: 1, counted: 2, rest: 3, stoodIn: 20 } as const;

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

/** True where the dish is for guests of some need and the group has every one of them. */
function isMeantFor(dish: Dish, group: GuestGroup, cupboard: Cupboard): boolean {
    const needs = dish.who?.sort === 'some' ? dish.who.needs : [];
    return needs.length > 0 && needs.every((wanted) => group.needs.some((need) => sameNeed(wanted, need, cupboard)));
}

function preference(dish: Dish, group: GuestGroup, cupboard: Cupboard): number | undefined {
    if (group.named?.chooses.some((choice) => choice.text === dish.title)) {
        return LIKED.chosen;
    }
    if (dish.who?.sort === 'some' && dish.who.needs.length > 0) {
        if (isMeantFor(dish, group, cupboard)) {
            return LIKED.meant;
        }
        // A guest who may not have the common dish may get one meant for others; plain guests don't.
        return group.needs.length > 0 ? LIKED.stoodIn : undefined;
    }
    return dish.who?.sort === 'some' ? LIKED.counted : LIKED.rest;
}

/**
 * Who gets which dish: each guest one dish they may have, stated numbers kept, preferences kept.
 * Solved exactly as a transport problem of groups and dishes.
 */
export function serveCourse(
    course: Course,
    groups: readonly GuestGroup[],
    guestCount: number,
    cupboard: Cupboard,
): CourseServing {
    const { dishes } = course;
    const kindOf = (dish: Dish) => cupboard.kinds.get(dish.kind.name);
    const conflicts = groups.map((group) => dishes.map((dish) => dishConflicts(dish, kindOf(dish), group, cupboard)));
    const stated = portionsStated(dishes, guestCount);
    const flow = solveTransport({
        supply: groups.map((group) => group.count),
        capacity: stated.map((count) => count ?? Infinity),
        cost: (group, dish) =>
            conflicts[group]![dish]!.length > 0 ? undefined : preference(dishes[dish]!, groups[group]!, cupboard),
    });
    const portions: Portion[] = dishes.map((dish, place) => {
        const fed = groups
            .map((group, index) => ({ group, count: flow[index]![place]! }))
            .filter((each) => each.count > 0);
        return { dish, count: fed.reduce((sum, each) => sum + each.count, 0), groups: fed };
    });
    const unserved: Unserved[] = groups.flatMap((group, index) => {
        const count = group.count - flow[index]!.reduce((sum, units) => sum + units, 0);
        const refused = dishes.map((dish, place) => ({ dish, conflicts: conflicts[index]![place]! }));
        return count > 0 ? [{ group, count, refused }] : [];
    });
    const leftover = portions.flatMap(({ dish, count }, place) => {
        const spare = (stated[place] ?? count) - count;
        return spare > 0 ? [{ dish, count: spare }] : [];
    });
    return { course, portions, unserved, leftover };
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
