/** Who must not get a pour or what goes round with the coffee, and what they get in its place. */
import type { Accompaniment, Plan } from '../../plan/types.js';
import { alcoholInFood } from '../alcohol-in-food.js';
import { accompanimentConflicts, coffeeItselfConflicts, drinkConflicts, isAllergenNeed, isLeftOff } from '../diets.js';
import type { SeatedGuest } from '../seats/types.js';
import type { GuestGroup, PourFacts, Service } from '../types.js';
import { guestsOffered, insteadOf, mayDrink } from './drinkers.js';

interface KeptFrom {
    readonly group: GuestGroup;
    readonly count: number;
    /** Whether it is an allergen that keeps them from it. */
    readonly isAllergen: boolean;
}

/** Guests of one group who may not have a pour. */
export interface KeptFromPour extends KeptFrom {
    /** The first of what is offered in its place that they may have; absent where there is none. */
    readonly instead?: PourFacts;
}

/** Guests of one group who may not have coffee, or something beside it. */
export interface KeptFromCoffee extends KeptFrom {
    /** What they get it without; absent where they may not have the coffee itself. */
    readonly without?: readonly Accompaniment[];
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

/** Of a dish's own pour only guests who get the dish are meant. */
export const isKeptFromPour = ({ dish, course }: PourFacts, { group }: KeptFromPour, guest: SeatedGuest): boolean =>
    guest.group === group.index && (!dish || guest.dishes[course] === dish.index);

/** In the order of the groups; nothing where no coffee is served. */
export function keptFromCoffee({ menu, cupboard }: Plan, groups: readonly GuestGroup[]): KeptFromCoffee[] {
    const coffee = menu?.coffee;
    if (!coffee) {
        return [];
    }
    const kind = cupboard.drinks.get('coffee');
    return groups.flatMap((group): KeptFromCoffee[] => {
        const isKept = (of: GuestGroup): boolean =>
            coffeeItselfConflicts(coffee, of, cupboard).length > 0 || hasAlcohol(of, undefined);
        const hasAlcohol = (of: GuestGroup, beside: Accompaniment | undefined): boolean =>
            of.children && alcoholInFood(coffee, kind, of, cupboard).some((alcohol) => alcohol.beside === beside);
        const without = (of: GuestGroup): Accompaniment[] =>
            coffee.accompaniments.filter(
                (beside) =>
                    isLeftOff(beside.leftOffFor, of, cupboard) ||
                    accompanimentConflicts(beside, of, cupboard).length > 0 ||
                    hasAlcohol(of, beside),
            );
        const isAllergen = needsAllergenKept(group, cupboard, (alone) => isKept(alone) || without(alone).length > 0);
        const kept = { group, count: group.count, isAllergen };
        const besides = without(group);
        return group.count === 0 || (!isKept(group) && besides.length === 0)
            ? []
            : [isKept(group) ? kept : { ...kept, without: besides }];
    });
}

const isKeptByAllergen = ({ cupboard }: Plan, facts: PourFacts, group: GuestGroup): boolean =>
    needsAllergenKept(
        group,
        cupboard,
        (alone) =>
            isLeftOff(facts.pour.leftOffFor, alone, cupboard) || drinkConflicts(facts, alone, cupboard).length > 0,
    );

/** True where a guest with one of the group's allergens and no other need would be kept from it, too. */
function needsAllergenKept(
    group: GuestGroup,
    cupboard: Plan['cupboard'],
    isKept: (alone: GuestGroup) => boolean,
): boolean {
    return group.needs
        .filter((need) => isAllergenNeed(need, cupboard))
        .some((need) => isKept({ ...group, needs: [need], children: false }));
}
