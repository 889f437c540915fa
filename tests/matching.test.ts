import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CourseServing, GuestGroup } from '../packages/language/src/service/types.js';
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

// Who gets which dish, against brute force: every guest is tried with every dish, and what is best is compared digit by digit.

/** What a solution is judged by, the gravest first; less is better. */
type Verdict = readonly [
    hungry: number,
    hungryWithAllergen: number,
    hungryWithDiet: number,
    denied: number,
    rawForSusceptible: number,
    standIns: number,
    leftover: number,
    liking: number,
];

const isLess = (a: Verdict, b: Verdict): boolean => {
    const place = a.findIndex((digit, index) => digit !== b[index]);
    return place >= 0 && a[place]! < b[place]!;
};
const plus = (a: Verdict, b: readonly number[]): Verdict =>
    a.map((digit, index) => digit + b[index]!) as unknown as Verdict;

/** One guest with one dish, or with none. */
function judge(guest: SmallGuests, dishes: readonly SmallDish[], place: number | undefined): readonly number[] {
    const relations = dishes.map((dish, index) => relationOf(guest, dish, index));
    const hasChoice = relations.includes('chosen');
    if (place === undefined) {
        const hasAllergen = guest.without.length > 0;
        const hasDiet = guest.isVegetarian || guest.isSusceptible;
        return [1, hasAllergen ? 1 : 0, !hasAllergen && hasDiet ? 1 : 0, 0, 0, 0, 0, 0];
    }
    const relation = relations[place]!;
    const liking = { chosen: 0, meant: 0, counted: 1, rest: 2, 'stand-in': 2 }[relation];
    const isDenied = hasChoice && relation !== 'chosen';
    const isHarmful = guest.isSusceptible && dishes[place]!.isRaw;
    return [0, 0, 0, isDenied ? 1 : 0, isHarmful ? 1 : 0, relation === 'stand-in' ? 1 : 0, 0, liking];
}

/** The best of all ways of giving every guest a dish or none. */
function bestOf({ dishes, guests }: Small): Verdict {
    const line = guests.flatMap((guest) => Array.from({ length: guest.count }, () => guest));
    const known = new Map<string, Verdict>();
    const give = (next: number, room: readonly number[]): Verdict => {
        const guest = line[next];
        if (!guest) {
            const left = room.reduce((sum, count) => sum + (count === Infinity ? 0 : count), 0);
            return [0, 0, 0, 0, 0, 0, left, 0];
        }
        const key = `${next}:${room.join()}`;
        const found = known.get(key);
        if (found) {
            return found;
        }
        let best = plus(give(next + 1, room), judge(guest, dishes, undefined));
        for (const [place, dish] of dishes.entries()) {
            if (room[place]! > 0 && relationOf(guest, dish, place)) {
                const way = plus(give(next + 1, room.with(place, room[place]! - 1)), judge(guest, dishes, place));
                best = isLess(way, best) ? way : best;
            }
        }
        known.set(key, best);
        return best;
    };
    return give(
        0,
        dishes.map((dish) => countOf(dish) ?? Infinity),
    );
}

/** The verdict on what `serveCourse` gives, counted from its portions; fails where a guest gets what is closed to them. */
function verdictOn({ dishes, guests }: Small, serving: CourseServing): Verdict {
    let verdict: Verdict = [0, 0, 0, 0, 0, 0, 0, 0];
    const add = (group: GuestGroup, count: number, place: number | undefined): void => {
        const each = judge(guests[group.index]!, dishes, place);
        verdict = plus(
            verdict,
            each.map((digit) => digit * count),
        );
    };
    serving.portions.forEach(({ groups, count }, place) => {
        same(
            groups.reduce((sum, each) => sum + each.count, 0),
            count,
        );
        same(count <= (countOf(dishes[place]!) ?? Infinity), true);
        for (const { group, count } of groups) {
            same(relationOf(guests[group.index]!, dishes[place]!, place) !== undefined, true);
            add(group, count, place);
        }
    });
    serving.unserved.forEach(({ group, count }) => add(group, count, undefined));
    const leftover = serving.leftover.reduce((sum, { count }) => sum + count, 0);
    return plus(verdict, [0, 0, 0, 0, 0, 0, leftover, 0]);
}

function everyGuestIsThere({ guests }: Small, serving: CourseServing): void {
    for (const [index, { count }] of guests.entries()) {
        const told = [...serving.portions.flatMap(({ groups }) => groups), ...serving.unserved].filter(
            ({ group }) => group.index === index,
        );
        same(
            told.reduce((sum, each) => sum + each.count, 0),
            count,
        );
    }
}

function holds(small: Small): void {
    const serving = serve(small);
    everyGuestIsThere(small, serving);
    same(verdictOn(small, serving), bestOf(small));
}

describe('who gets which dish, as by brute force', () => {
    it('every course of two dishes, one or two sorts of guests and up to four guests', () => {
        const all = everySmall();
        expect(all.length).toBe(5 * 5 * (24 + 24 * 23));
        all.forEach(holds);
    });

    it('6,000 courses of up to four dishes and eight guests, drawn with a seed', () => {
        fc.assert(fc.property(anySmall, holds), { numRuns: 6000, seed: 84 });
    });
});
