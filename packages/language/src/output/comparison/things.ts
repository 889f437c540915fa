import type { Accompaniment, Dish, Need, Plan, Pour } from '../../plan/types.js';
import { sortOf } from '../../rules/guest-words.js';
import { listed, quoted } from '../../rules/wording.js';
import type { Thing } from './facts.js';

// What guests are given, wherever the plan writes it: dishes and breads, what comes with them, and drinks.

/** Dishes of the courses. */
export function dishesOf({ menu }: Plan): Thing<Dish>[] {
    return (menu?.courses ?? []).flatMap(({ dishes }) => dishes.map(asThing));
}

/** Breads for some guests. */
export function breadsOf({ menu }: Plan): Thing<Dish>[] {
    return (menu?.bread?.dishes ?? []).map(asThing);
}

const asThing = (dish: Dish): Thing<Dish> => ({ key: dish.title, called: quoted(dish.title), of: dish });

/** Something beside a dish, the bread or the coffee, and how that is called. */
export interface Beside {
    readonly accompaniment: Accompaniment;
    readonly whole: string;
}

/** Sauces, garnishes and butters. */
export function accompanimentsOf(plan: Plan): Thing<Beside>[] {
    const beside = (whole: string, all: readonly Accompaniment[]): Thing<Beside>[] =>
        all.map((accompaniment) => {
            const { sort, title } = accompaniment;
            return {
                key: `${whole}: ${sort} ${title ?? ''}`.trim(),
                called: title === undefined ? `the ${sort} of ${whole}` : `${quoted(title)} of ${whole}`,
                of: { accompaniment, whole },
            };
        });
    return [
        ...[...dishesOf(plan), ...breadsOf(plan)].flatMap(({ called, of }) => beside(called, of.accompaniments)),
        ...beside('the bread', plan.menu?.bread?.accompaniments ?? []),
        ...beside('the coffee', plan.menu?.coffee?.accompaniments ?? []),
    ];
}

/** A drink and where it is poured. */
export interface Poured {
    readonly pour: Pour;
    /** Title of its course. */
    readonly course: string;
    /** The dish whose guests have it, where it is not the whole course's. */
    readonly dish?: string;
    /** Title of the drink that it is offered in place of. */
    readonly insteadOf?: string;
}

/** Every drink, and behind each what is offered in its place. */
export function poursOf({ menu }: Plan): Thing<Poured>[] {
    return (menu?.courses ?? []).flatMap(({ title, pours, dishes }) => [
        ...pours.flatMap((pour) => withOthers({ pour, course: title })),
        ...dishes.flatMap((dish) =>
            dish.pours.flatMap((pour) => withOthers({ pour, course: title, dish: dish.title })),
        ),
    ]);
}

function withOthers(poured: Poured): Thing<Poured>[] {
    const { pour } = poured;
    return [
        { key: pour.title, called: quoted(pour.title), of: poured },
        ...pour.instead.flatMap((other) => withOthers({ ...poured, pour: other, insteadOf: pour.title })),
    ];
}

/** `vegetarian guests and guests without milk`: for whom something is left off, or meant. */
export function sayGuests(needs: readonly Need[]): string {
    return listed(needs.map((need) => sortOf({ needs: [need], children: need.sort === 'children' }))) || 'guests';
}
