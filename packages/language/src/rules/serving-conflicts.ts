import type { Dish } from '../plan/types.js';
import type { CourseServing, PortionCount, Takers, TooFew } from '../service/types.js';
import type { Fix } from './fixes.js';
import { guestsOf, sortOf, statedHere } from './guest-words.js';
import type { Related } from './rule.js';
import { agreeing, counted, listed, quoted } from './wording.js';

/** How messages tell of guests and portions that do not fit together. */

/** `7 vegetarian guests`, `1 guest without milk at T3 seat 5`, `2 guests who chose \`Roast duck\``. */
export function sayTakers({ groups, count, chose }: Takers): string {
    const [group] = groups;
    const who =
        groups.length === 1
            ? guestsOf({ ...group!, count })
            : `${count} ${sortOf(group ?? { needs: [], children: false }, count === 1)}`;
    return chose.length > 0
        ? `${who} who chose ${listed(
              chose.map(({ title }) => quoted(title)),
              'or',
          )}`
        : who;
}

/** `there are 6 \`Roast squash\` and 2 \`Crispbread\` for 7 vegetarian guests`; guests without needs are `42 guests without a diet`. */
export function sayTooFew({ portions, guests }: TooFew, { portions: all, unserved }: CourseServing): string {
    const cooked = portions.map(({ dish, count }) => `${count} ${quoted(dish.title)}`);
    const coming = [...all, ...unserved].reduce((sum, { count }) => sum + count, 0);
    const who = guests.map((takers) => {
        const isPlain = takers.chose.length === 0 && takers.groups.every(({ needs }) => needs.length === 0);
        return isPlain && takers.count < coming
            ? `${counted(takers.count, 'guest')} without a diet`
            : sayTakers(takers);
    });
    return `there ${agreeing(portions[0]?.count ?? 0, 'is', 'are')} ${listed(cooked)} for ${listed(who)}`;
}

/** Who goes without: `2 vegetarian guests` where they are all of one sort, else `2 guests`. */
export function sayWithout({ guests, short }: Pick<TooFew, 'guests' | 'short'>): string {
    const [takers] = guests;
    return guests.length === 1 && takers
        ? `${short} ${sortOf(takers.groups[0]!, short === 1)}`
        : counted(short, 'guest');
}

/** Where these guests are stated; a long guest list is not told in full. */
export function whereStated(guests: readonly Takers[]): Related[] {
    return guests
        .flatMap(({ groups }) => groups)
        .slice(0, MOST_RELATED)
        .map((group) => ({ at: group.origin, message: statedHere(group) }));
}

const MOST_RELATED = 6;

/** One fix for each change of numbers that mends it; the best first. @param before says the number that stands now as well */
export function cookInstead(mends: readonly (readonly PortionCount[])[], before?: 'instead'): Fix[] {
    return mends.map((mend, place) => ({
        title: sayMend(mend, before),
        safety: 'unsafe',
        preferred: place === 0,
        changes: mend.flatMap(({ dish, count }) => {
            const stated = statedCount(dish);
            return stated ? [{ do: 'replace' as const, at: stated.origin, words: String(count) }] : [];
        }),
    }));
}

/** `Cook \`Roast squash\` for 7 and \`Roast duck\` for 17`. */
export function sayMend(mend: readonly PortionCount[], before?: 'instead'): string {
    const changes = mend.map(({ dish, count }) => {
        const stated = before && statedCount(dish);
        return `${quoted(dish.title)} for ${count}${stated ? ` instead of ${stated.count}` : ''}`;
    });
    return `Cook ${listed(changes)}`;
}

export function statedCount({ who }: Dish) {
    return who?.sort === 'some' ? who.count : undefined;
}
