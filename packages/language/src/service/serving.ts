import type { Cupboard } from '../plan/cupboard.js';
import type { Course, Dish } from '../plan/types.js';
import { dishConflicts, sameNeed } from './diets.js';
import { solveTransport } from './flow.js';
import type { CourseServing, GuestGroup, Portion, Unserved } from './types.js';

/** What giving a dish to a guest costs in preference; lower is liked better. Closed where it must not be. */
const LIKED = { chosen: 0, meant: 1, counted: 2, rest: 3, stoodIn: 20 } as const;

/** How many portions a dish has: a stated number or share, else as many as are wanted. */
export function portionsStated(dish: Dish, guestCount: number): number | undefined {
    if (dish.who?.sort !== 'some') {
        return undefined;
    }
    return dish.who.count?.count ?? (dish.who.share && Math.round(dish.who.share.value * guestCount));
}

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
    const stated = dishes.map((dish) => portionsStated(dish, guestCount));
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
