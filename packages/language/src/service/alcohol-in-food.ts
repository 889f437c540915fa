/** Alcohol in what is eaten, for those who are given none of it where it can be helped: children. */
import type { Contains, Cupboard, Kind } from '../plan/cupboard.js';
import type { Named, Origin } from '../plan/origin.js';
import type { Accompaniment } from '../plan/types.js';
import { isLeftOff } from './diets.js';
import { namedAlcohol } from './drinks/alcohol.js';
import type { GuestGroup } from './types.js';

/** A dish, bread, or coffee with what comes beside it. */
interface Food {
    readonly contains?: Contains;
    /** Where the kind is named. */
    readonly kind?: Named;
    readonly accompaniments: readonly Accompaniment[];
}

export interface AlcoholInFood {
    /** `alcohol`, or a sort of it. */
    readonly substance: string;
    readonly at: Origin;
    /** What carries it beside the dish; absent where the dish itself does. */
    readonly beside?: Accompaniment;
}

/** Everything with alcohol that a group would get with a dish; what is left off for them is not on it. */
export function alcoholInFood(
    food: Food,
    kind: Kind | undefined,
    group: GuestGroup,
    cupboard: Cupboard,
): AlcoholInFood[] {
    const own = namedAlcohol(food.contains?.what ?? [], cupboard);
    const ofKind = namedAlcohol(kind?.of ?? [], cupboard);
    const inDish = own
        ? [{ substance: own.name, at: own.origin }]
        : ofKind && food.kind
          ? [{ substance: ofKind.name, at: food.kind.origin }]
          : [];
    return [
        ...inDish,
        ...food.accompaniments.flatMap((beside) => {
            const alcohol = namedAlcohol(beside.contains?.what ?? [], cupboard);
            return alcohol && !isLeftOff(beside.leftOffFor, group, cupboard)
                ? [{ substance: alcohol.name, at: alcohol.origin, beside }]
                : [];
        }),
    ];
}
