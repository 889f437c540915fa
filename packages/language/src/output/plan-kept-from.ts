/** Who must not get which drink, and what they get, for the compiled plan. Guests by their needs and seats, never by name. */
import { isKeptFromPour, keptFromCoffee, keptFromPour } from '../service/drinks/kept-from.js';
import type { SeatedGuest } from '../service/seats/types.js';
import type { GuestGroup } from '../service/types.js';
import type { Telling } from './plan-menu.js';
import { at, type Json } from './plan-values.js';

/** Pour by pour in the order served, coffee last; within each in the order of the groups. */
export function drinksKeptFromJson({ plan, service, places }: Telling): Json[] {
    const { courses = [], coffee } = plan.menu ?? {};
    const who = (
        group: GuestGroup,
        count: number,
        isAllergen: boolean,
        isMeant: (guest: SeatedGuest) => boolean,
    ): Json => ({
        guests: group.label,
        count,
        because: isAllergen ? 'an allergen' : 'a diet or an age',
        seats: service.seats.guests.filter(isMeant).map(({ table, seat }) => ({ table, seat })),
    });
    const pours = service.pours.flatMap((facts) =>
        keptFromPour(plan, service, facts).map((kept): Json => ({
            drink: facts.pour.title,
            ...at(places, facts.pour.titleOrigin),
            course: courses[facts.course]?.title,
            dish: facts.dish?.title,
            ...who(kept.group, kept.count, kept.isAllergen, (guest) => isKeptFromPour(facts, kept, guest)),
            get: kept.instead?.pour.title,
        })),
    );
    const cups = keptFromCoffee(plan, service.groups).map((kept): Json => ({
        drink: 'coffee',
        ...at(places, coffee?.head),
        ...who(kept.group, kept.count, kept.isAllergen, ({ group }) => group === kept.group.index),
        without: kept.without?.map(({ title, sort }) => title ?? sort),
    }));
    return [...pours, ...cups];
}
