import fc from 'fast-check';
import { describe, it } from 'vitest';
import type { CourseServing, PortionCount } from '../packages/language/src/service/types.js';
import {
    anySmall,
    countOf,
    everySmall,
    relationOf,
    same,
    serve,
    type Small,
    type SmallDish,
    type SmallGuests,
} from './support/small-courses.js';

// Why a course does not come out, against brute force: of all sets of guests, and of all sets of dishes, the smallest that proves it.

/** Sorts of guests that the kitchen cannot tell apart. */
function sortsOf({ guests }: Small): SmallGuests[] {
    const sorts = new Map<string, SmallGuests>();
    for (const guest of guests) {
        const key = JSON.stringify([guest.without, guest.isVegetarian, guest.isSusceptible, guest.chose]);
        sorts.set(key, { ...guest, count: guest.count + (sorts.get(key)?.count ?? 0) });
    }
    return [...sorts.values()];
}

/** The dishes that will do: the one that was chosen and may be had, else all that may be had. */
function wantedBy(guest: SmallGuests, dishes: readonly SmallDish[]): number[] {
    const relations = dishes.map((dish, place) => relationOf(guest, dish, place));
    const open = relations.flatMap((relation, place) => (relation ? [place] : []));
    return relations.includes('chosen') ? [relations.indexOf('chosen')] : open;
}

/** By trying every dish for every guest: how many of them cannot be given one that will do. */
function goWithout(guests: readonly SmallGuests[], dishes: readonly SmallDish[]): number {
    const line = guests.flatMap((guest) => Array.from({ length: guest.count }, () => wantedBy(guest, dishes)));
    const known = new Map<string, number>();
    const give = (next: number, room: readonly number[]): number => {
        const wanted = line[next];
        if (!wanted) {
            return 0;
        }
        const key = `${next}:${room.join()}`;
        let least = known.get(key);
        if (least === undefined) {
            least = 1 + give(next + 1, room);
            for (const place of wanted.filter((each) => room[each]! > 0)) {
                least = Math.min(least, give(next + 1, room.with(place, room[place]! - 1)));
            }
            known.set(key, least);
        }
        return least;
    };
    return give(
        0,
        dishes.map((dish) => countOf(dish) ?? Infinity),
    );
}

/** By trying every guest for every portion: how many portions of these dishes find nobody. */
function leftOf(places: readonly number[], { dishes, guests }: Small): number {
    const line = guests.flatMap((guest) => {
        const wanted = wantedBy(guest, dishes);
        const proper = wanted.filter((place) => relationOf(guest, dishes[place]!, place) !== 'stand-in');
        return Array.from({ length: guest.count }, () => (proper.length > 0 ? proper : wanted));
    });
    const known = new Map<string, number>();
    const give = (next: number, left: readonly number[]): number => {
        const wanted = line[next];
        if (!wanted) {
            return left.reduce((sum, count) => sum + count, 0);
        }
        const key = `${next}:${left.join()}`;
        let least = known.get(key);
        if (least === undefined) {
            least = give(next + 1, left);
            for (const at of places.flatMap((place, at) => (wanted.includes(place) && left[at]! > 0 ? [at] : []))) {
                least = Math.min(least, give(next + 1, left.with(at, left[at]! - 1)));
            }
            known.set(key, least);
        }
        return least;
    };
    return give(
        0,
        places.map((place) => countOf(dishes[place]!)!),
    );
}

/** The fewest of `all` for which something is lacking, by trying all sets. */
function fewest<T>(
    all: readonly T[],
    lack: (some: readonly T[]) => number,
): { size: number; lack: number } | undefined {
    let best: { size: number; lack: number } | undefined;
    for (let mask = 1; mask < 2 ** all.length; mask++) {
        const some = all.filter((_, place) => (mask >> place) % 2 === 1);
        if (best && some.length > best.size) {
            continue;
        }
        const lacking = lack(some);
        if (lacking > 0 && (!best || some.length < best.size || lacking > best.lack)) {
            best = { size: some.length, lack: lacking };
        }
    }
    return best;
}

function holds(small: Small): void {
    const serving: CourseServing = serve(small);
    const { dishes } = small;
    const sorts = sortsOf(small);
    const counted = dishes.flatMap((dish, place) => (countOf(dish) === undefined ? [] : [place]));
    const lacking = goWithout(sorts, dishes);
    const left = leftOf(counted, small);
    const leftover = serving.leftover.reduce((sum, { count }) => sum + count, 0);
    const { tooFew, tooMany } = serving;
    same(
        tooFew.reduce((sum, { shortInAll }) => sum + shortInAll, 0),
        lacking,
    );
    const [first] = tooFew;
    same(
        first && { size: first.guests.length, lack: first.short },
        fewest(sorts, (some) => goWithout(some, dishes)),
    );
    for (const { guests, portions, mends, shortInAll } of tooFew) {
        // The set proves itself: all guests of it want no dish but these, and these are too few.
        const wanting = guests.map(({ groups, count }) => ({ ...small.guests[groups[0]!.index]!, count }));
        same(goWithout(wanting, dishes) > 0, true);
        same(
            portions.map(({ dish }) => dish.index),
            [...new Set(wanting.flatMap((guest) => wantedBy(guest, dishes)))].toSorted((a, b) => a - b),
        );
        for (const mend of mends) {
            const mended = recount(dishes, mend);
            same(goWithout(sorts, mended), lacking - shortInAll);
            same(leftOf(counted, { ...small, dishes: mended }) <= leftover, true);
        }
    }

    if (leftover === 0) {
        same(tooMany, []);
        return;
    }
    same(
        tooMany.reduce((sum, { overInAll }) => sum + overInAll, 0),
        left,
    );
    const [most] = tooMany;
    same(
        most && { size: most.portions.length, lack: most.over },
        fewest(counted, (some) => leftOf(some, small)),
    );
    for (const { portions, mends, overInAll } of tooMany) {
        const places = portions.map(({ dish }) => dish.index);
        same(leftOf(places, small) > 0, true);
        for (const mend of mends) {
            const mended = recount(dishes, mend);
            same(leftOf(counted, { ...small, dishes: mended }), left - overInAll);
            same(goWithout(sorts, mended), lacking);
        }
    }
}

function recount(dishes: readonly SmallDish[], mend: readonly PortionCount[]): SmallDish[] {
    return dishes.map((dish, place) => {
        const count = mend.find((each) => each.dish.index === place)?.count;
        const isForVegetarians = String(dish.for).endsWith('vegetarian');
        return count === undefined ? dish : { ...dish, for: isForVegetarians ? `${count} vegetarian` : count };
    });
}

describe('guests and portions that do not fit together: a smallest set, as by brute force', () => {
    it('every course of two dishes, one or two sorts of guests and up to four guests', () => {
        everySmall().forEach(holds);
    });

    it('6,000 courses of up to four dishes and eight guests, drawn with a seed', () => {
        fc.assert(fc.property(anySmall, holds), { numRuns: 6000, seed: 8 });
    });
});
