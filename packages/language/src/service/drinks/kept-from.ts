/** Who must not get a pour, and what they get in its place. */
import type { Plan } from '../../plan/types.js';
import { drinkConflicts, isAllergenNeed, isLeftOff } from '../diets.js';
import type { GuestGroup, PourFacts, Service } from '../types.js';
import { guestsOffered, insteadOf, mayDrink } from './drinkers.js';

/** Guests of one group who may not have a pour. */
export interface KeptFromPour {
    readonly group: GuestGroup;
    readonly count: number;
    /** The first of what is offered in its place that they may have; absent where there is none. */
    readonly instead?: PourFacts;
    /** Whether it is an allergen that keeps them from it. */
    readonly isAllergen: boolean;
}

/** In the order of the groups; of a dish's own pour those who get the dish. */
export function keptFromPour(
    plan: Plan,
    { groups, servings }: Pick<Service, 'groups' | 'servings'>,
    facts: PourFacts,
): KeptFromPour[] {
    const offers = insteadOf(plan, facts);
    return [...guestsOffered(facts, groups, servings)]
        .filter(([group, count]) => count > 0 && !mayDrink(plan, facts, group))
        .map(([group, count]) => ({
            group,
            count,
            instead: offers.find((offer) => mayDrink(plan, offer, group)),
            isAllergen: isKeptByAllergen(plan, facts, group),
        }));
}

function isKeptByAllergen({ cupboard }: Plan, facts: PourFacts, group: GuestGroup): boolean {
    return group.needs
        .filter((need) => isAllergenNeed(need, cupboard))
        .some((need) => {
            const alone = { ...group, needs: [need] };
            return (
                isLeftOff(facts.pour.leftOffFor, alone, cupboard) || drinkConflicts(facts, alone, cupboard).length > 0
            );
        });
}
