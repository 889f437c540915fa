/** Guests to whom a drink is offered that they may not have, with nothing in its place that they may. */
import type { Plan } from '../../plan/types.js';
import { coffeeConflicts, drinkConflicts, isLeftOff } from '../diets.js';
import type { CourseServing, GuestGroup, PourFacts } from '../types.js';
import { hasAlcohol } from './alcohol.js';
import { guestsOffered, insteadOf, isMeantFor } from './drinkers.js';
import type { RefusedCoffee, RefusedPour } from './types.js';

/**
 * A pour is a choice: who is offered one drink that they may have is served, and so is nobody for whom all of them are left off,
 * since the plan then says that they go without. Alcohol before children is told apart (`alcohol-reaches-children`).
 */
export function refusedPours(
    plan: Plan,
    pours: readonly PourFacts[],
    groups: readonly GuestGroup[],
    servings: readonly CourseServing[],
): RefusedPour[] {
    const { cupboard } = plan;
    return pours.flatMap((facts) => {
        const drinks = [facts, ...insteadOf(plan, facts)];
        return [...guestsOffered(facts, groups, servings)].flatMap(([group, count]): RefusedPour[] => {
            const offered = drinks
                .filter((drink) => isOffered(plan, drink, group))
                .map((drink) => ({ drink, conflicts: drinkConflicts(drink, group, cupboard) }));
            const isRefused = offered.length > 0 && offered.every(({ conflicts }) => conflicts.length > 0);
            return isRefused ? [{ facts, group, count, offered }] : [];
        });
    });
}

/** True where whoever pours would pour it for the group, as far as the plan says. */
function isOffered(plan: Plan, drink: PourFacts, group: GuestGroup): boolean {
    const { who, leftOffFor } = drink.pour;
    return (
        isMeantFor(who, group, plan) &&
        !isLeftOff(leftOffFor, group, plan.cupboard) &&
        !(group.children && hasAlcohol(drink, plan.cupboard))
    );
}

/** Coffee goes round the table as it is: what is in it or beside it and is not left off is offered to everybody. */
export function refusedCoffee({ menu, cupboard }: Plan, groups: readonly GuestGroup[]): RefusedCoffee[] {
    const coffee = menu?.coffee;
    return groups.flatMap((group) => {
        const conflicts = coffee ? coffeeConflicts(coffee, group, cupboard) : [];
        return coffee && conflicts.length > 0 ? [{ coffee, group, count: group.count, conflicts }] : [];
    });
}
