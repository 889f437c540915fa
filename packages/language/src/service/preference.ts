/** What a guest may be given, and what is better. */
import type { Cupboard } from '../plan/cupboard.js';
import type { Dish } from '../plan/types.js';
import { dishConflicts, sameNeed } from './diets.js';
import type { GuestGroup } from './types.js';

/** How a dish stands to a guest who may have it. */
export type Liking =
    /** The guest has chosen it. */
    | 'chosen'
    /** It is for guests of a need the guest has. */
    | 'meant'
    /** So many of it are for any guests. */
    | 'counted'
    /** It is for the rest. */
    | 'rest'
    /** It is meant for guests of another need, and does for one who may not have the common dish. */
    | 'stand-in';

/** `undefined` where the guest must not have the dish, or where it is for others. */
export function likingOf(dish: Dish, group: GuestGroup, cupboard: Cupboard): Liking | undefined {
    const kind = cupboard.kinds.get(dish.kind.name);
    if (dishConflicts(dish, kind, group, cupboard).length > 0) {
        return undefined;
    }
    if (group.named?.chooses.some((choice) => choice.text === dish.title)) {
        return 'chosen';
    }
    if (dish.who?.sort !== 'some') {
        return 'rest';
    }
    const { needs } = dish.who;
    if (needs.length === 0) {
        return 'counted';
    }
    const isMeant = needs.every((wanted) => group.needs.some((need) => sameNeed(wanted, need, cupboard)));
    // A guest who may not have the common dish may get one meant for others; plain guests don't.
    return isMeant ? 'meant' : group.needs.length > 0 ? 'stand-in' : undefined;
}
