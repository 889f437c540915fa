import type { Dish, Plan } from '../plan/types.js';
import { dealInOrder } from './deal.js';
import { dishesFor } from './serving.js';
import type { CourseServing, GuestGroup, Variation } from './types.js';

/** More sets of dishes than a captain could serve; past it only those that guests are counted for are kept. */
const MOST_VARIATIONS = 64;

/** A variation before its cover is laid. */
export type VariationDraft = Omit<Variation, 'index' | 'label' | 'cover' | 'steps'>;

interface Counted {
    count: number;
    readonly dishes: readonly (Dish | undefined)[];
    readonly groups: GuestGroup[];
    readonly dealt: { readonly group: GuestGroup; readonly count: number }[];
}

/**
 * Every set of dishes a guest can have, with how many have it, the most frequent first.
 * Guests of one group split between dishes are dealt them in the menu's order.
 */
export function variationsOf(
    groups: readonly GuestGroup[],
    servings: readonly CourseServing[],
    plan: Plan,
): VariationDraft[] {
    const found = new Map<string, Counted>();
    const note = (group: GuestGroup, dishes: readonly (Dish | undefined)[], count: number): void => {
        const key = keyOf({ dishes });
        const known = found.get(key) ?? { count: 0, dishes: [...dishes], groups: [], dealt: [] };
        known.count += count;
        if (!known.groups.includes(group)) {
            known.groups.push(group);
        }
        if (count > 0) {
            known.dealt.push({ group, count });
        }
        found.set(key, known);
    };
    for (const group of groups) {
        const given = servings.map(({ portions }) =>
            portions.map(({ dish, groups: fed }) => ({
                item: dish,
                count: fed.find((each) => each.group === group)?.count ?? 0,
            })),
        );
        dealInOrder(group.count, given, (dishes, count) => note(group, dishes, count));
        const choices = servings.map((serving) => dishesFor(group, serving, plan.cupboard));
        const combinations = choices.reduce((product, dishes) => product * Math.max(1, dishes.length), 1);
        if (combinations <= MOST_VARIATIONS) {
            for (const dishes of everyCombination(choices)) {
                note(group, dishes, 0);
            }
        }
    }
    return [...found.values()].toSorted((a, b) => b.count - a.count);
}

/** What tells a set of dishes from all others of the menu. */
export function keyOf({ dishes }: Pick<Variation, 'dishes'>): string {
    return dishes.map((dish) => dish?.index ?? '-').join('/');
}

function everyCombination(choices: readonly (readonly Dish[])[]): (Dish | undefined)[][] {
    return choices.reduce<(Dish | undefined)[][]>(
        (sets, dishes) =>
            sets.flatMap((set) => (dishes.length > 0 ? dishes.map((dish) => [...set, dish]) : [[...set, undefined]])),
        [[]],
    );
}

/** The dishes in which a variation differs from the others. */
export function labelOf({ dishes }: Pick<Variation, 'dishes'>, all: readonly Pick<Variation, 'dishes'>[]): string {
    const differing = dishes.filter((dish, course) => all.some((other) => other.dishes[course] !== dish));
    return differing.length === 0 ? 'all guests' : differing.map((dish) => dish?.title ?? 'nothing').join(', ');
}
