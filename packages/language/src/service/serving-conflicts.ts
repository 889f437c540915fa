/** Why a course does not come out: guests and portions that do not fit together, each conflict with a smallest set that proves it. */
import type { Dish } from '../plan/types.js';
import type { GuestSort } from './guest-sorts.js';
import { shortages, unmet, type Demand } from './shortages.js';
import type { PortionCount, Takers, TooFew, TooMany } from './types.js';

/** The dishes and guests of one course. Portions stated by number or share stand beside the dishes, `undefined` where there is no end. */
export interface Course {
    readonly dishes: readonly Dish[];
    readonly sorts: readonly GuestSort[];
}

type Stated = readonly (number | undefined)[];

/**
 * Guests of whom not all can be given a dish they may have, or the one they chose.
 * @param leftover portions stated by number that find no guest as things are
 */
export function tooFewFor(course: Course, stated: Stated, leftover: number): TooFew[] {
    const { dishes, sorts } = course;
    const demand = wants(course, stated);
    return shortages(demand).map(({ rows, offers, short, others, shortInAll }) => ({
        guests: rows.map((row) => takersOf(sorts[row]!, dishes)),
        portions: offers.map((dish) => ({ dish: dishes[dish]!, count: stated[dish]! })),
        short,
        others: others.map((row) => takersOf(sorts[row]!, dishes)),
        shortInAll,
        mends: raising(course, stated, offers, shortInAll, leftover),
    }));
}

/** Dishes stated by number of which not all portions find a guest. Nobody is counted for a dish that only stands in. */
export function tooManyFor(course: Course, stated: Stated): TooMany[] {
    const { dishes, sorts } = course;
    const counted = placesCounted(dishes);
    const portionsOf = (rows: readonly number[]): PortionCount[] =>
        rows.map((row) => ({ dish: dishes[counted[row]!]!, count: stated[counted[row]!]! }));
    return shortages(portionsForGuests(course, stated)).map(({ rows, offers, short, others, shortInAll }) => ({
        portions: portionsOf(rows),
        guests: offers.map((sort) => takersOf(sorts[sort]!, dishes)),
        over: short,
        others: portionsOf(others),
        overInAll: shortInAll,
        mends: lowering(
            course,
            stated,
            rows.map((row) => counted[row]!),
            shortInAll,
        ),
    }));
}

/** True where so many portions are stated by number. */
export function isCounted({ who }: Dish): boolean {
    return who?.sort === 'some' && who.count !== undefined;
}

// ---------------------------------------------------------------- the two demands
/** Guests ask, dishes offer. */
function wants({ sorts }: Course, stated: Stated): Demand {
    return {
        rows: sorts.map((sort) => ({ count: sort.count, from: wantedBy(sort) })),
        capacity: stated.map((count) => count ?? Infinity),
    };
}

/** Portions stated by number ask, guests offer. */
function portionsForGuests({ dishes, sorts }: Course, stated: Stated): Demand {
    const eaters = sorts.map((sort) => {
        const wanted = wantedBy(sort);
        const proper = wanted.filter((dish) => sort.likes[dish] !== 'stand-in');
        return new Set(proper.length > 0 ? proper : wanted);
    });
    return {
        rows: placesCounted(dishes).map((dish) => ({
            count: stated[dish]!,
            from: eaters.flatMap((wanted, sort) => (wanted.has(dish) ? [sort] : [])),
        })),
        capacity: sorts.map(({ count }) => count),
    };
}

/** The dishes a guest of this sort is to have: what they chose, else whatever does. */
function wantedBy({ likes }: GuestSort): number[] {
    const wanted = likes.includes('chosen')
        ? likes.map((liking) => liking === 'chosen')
        : likes.map((liking) => liking !== undefined);
    return wanted.flatMap((isWanted, dish) => (isWanted ? [dish] : []));
}

function placesCounted(dishes: readonly Dish[]): number[] {
    return dishes.flatMap((dish, place) => (isCounted(dish) ? [place] : []));
}

function takersOf({ groups, count, likes }: GuestSort, dishes: readonly Dish[]): Takers {
    return { groups, count, chose: dishes.filter((_, dish) => likes[dish] === 'chosen') };
}

// ---------------------------------------------------------------- numbers that would come out
type Mend = readonly PortionCount[];

/** More of one dish; or, where that leaves more over than now, more of one and fewer of another. */
function raising(course: Course, stated: Stated, offers: readonly number[], by: number, leftover: number): Mend[] {
    const counted = placesCounted(course.dishes);
    const wanted = judge(course, stated).lacking - by;
    return offers
        .filter((dish) => counted.includes(dish))
        .flatMap((dish): Mend[] => {
            const raised = stated.with(dish, stated[dish]! + by);
            const { lacking, over } = judge(course, raised);
            const spare = over - leftover;
            if (lacking !== wanted) {
                return [];
            }
            if (spare <= 0) {
                return [changed(course, stated, raised)];
            }
            return counted
                .filter((other) => other !== dish && stated[other]! > spare)
                .map((other) => raised.with(other, stated[other]! - spare))
                .filter((both) => {
                    const after = judge(course, both);
                    return after.lacking === wanted && after.over <= leftover;
                })
                .map((both) => changed(course, stated, both));
        });
}

/** Fewer of one dish, where that starves nobody. */
function lowering(course: Course, stated: Stated, dishes: readonly number[], by: number): Mend[] {
    const before = judge(course, stated);
    return dishes
        .filter((dish) => stated[dish]! > by)
        .map((dish) => stated.with(dish, stated[dish]! - by))
        .filter((lowered) => {
            const { lacking, over } = judge(course, lowered);
            return lacking === before.lacking && over === before.over - by;
        })
        .map((lowered) => changed(course, stated, lowered));
}

function judge(course: Course, stated: Stated): { readonly lacking: number; readonly over: number } {
    return { lacking: unmet(wants(course, stated)), over: unmet(portionsForGuests(course, stated)) };
}

/** What is more first. */
function changed({ dishes }: Course, from: Stated, to: Stated): Mend {
    return dishes
        .flatMap((dish, place) =>
            from[place] === to[place] ? [] : [{ dish, count: to[place]!, more: to[place]! - from[place]! }],
        )
        .toSorted((a, b) => b.more - a.more)
        .map(({ dish, count }) => ({ dish, count }));
}
