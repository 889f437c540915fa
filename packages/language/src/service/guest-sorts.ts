import type { Cupboard } from '../plan/cupboard.js';
import type { Dish } from '../plan/types.js';
import { sayNeed } from './guests.js';
import { likingOf, type Liking } from './preference.js';
import type { GuestGroup } from './types.js';

/** Guests who are alike to the kitchen: the same needs, the same choices. One row each of the matching. */
export interface GuestSort {
    readonly groups: readonly GuestGroup[];
    readonly count: number;
    /** How each dish of the course stands to them. */
    readonly likes: readonly (Liking | undefined)[];
}

export function sortGuests(groups: readonly GuestGroup[], dishes: readonly Dish[], cupboard: Cupboard): GuestSort[] {
    const alike = new Map<string, GuestGroup[]>();
    for (const group of groups) {
        const choices = dishes.filter((dish) => group.named?.chooses.some(({ text }) => text === dish.title));
        const key = [...group.needs.map(sayNeed).toSorted(), '', ...choices.map(({ index }) => index)].join('\n');
        alike.set(key, [...(alike.get(key) ?? []), group]);
    }
    return [...alike.values()].map((sort) => ({
        groups: sort,
        count: sort.reduce((sum, { count }) => sum + count, 0),
        likes: dishes.map((dish) => likingOf(dish, sort[0]!, cupboard)),
    }));
}
