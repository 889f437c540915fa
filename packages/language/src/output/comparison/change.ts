import type { Finding } from '../../rules/rule.js';
import type { Plan } from '../../plan/types.js';
import type { Service } from '../../service/types.js';

/** One of the two plans compared: the result of `check`. */
export interface Compared {
    readonly plan: Plan;
    readonly service: Service;
    readonly findings: readonly Finding[];
    readonly texts: ReadonlyMap<string, string>;
}

/** What a change is about, in the order a captain wants to hear it. */
export const SUBJECTS = [
    'allergens',
    'guests',
    'day',
    'menu',
    'pieces',
    'supplies',
    'drinks',
    'times',
    'temperatures',
    'room',
    'team',
    'tasks',
    'house',
    'findings',
    'plan',
] as const;

/** What a change is about: allergens and diets, guests, the day, pieces, drinks, times … and last the plan itself. */
export type Subject = (typeof SUBJECTS)[number];

/** One thing that is different for the people of the evening. */
export interface Change {
    readonly subject: Subject;
    /** The same for the same thing in every comparison, such as `soup-spoon` among the pieces. */
    readonly key: string;
    /** What it was and what it is, where it is a figure; the unit stands in `unit`. */
    readonly before?: number;
    readonly after?: number;
    readonly unit?: 'guests' | 'portions' | 'pieces' | 'bottles' | 'clock' | 'celsius' | 'people' | 'minutes';
    /** For people, without a full stop: `7 more soup spoons to pull, 89 in all`. */
    readonly text: string;
}

/** `7 more`, `1 fewer`. */
export function more(before: number, after: number): string {
    return after > before ? `${after - before} more` : `${before - after} fewer`;
}

/** What stands on either side, by key: in the order of `after`, then what is gone. A key that comes again is numbered. */
export function paired<T>(
    before: readonly T[],
    after: readonly T[],
    keyOf: (each: T) => string,
): { readonly key: string; readonly was?: T; readonly is?: T }[] {
    const was = byKey(before, keyOf);
    const is = byKey(after, keyOf);
    return [...new Set([...is.keys(), ...was.keys()])].map((key) => ({ key, was: was.get(key), is: is.get(key) }));
}

function byKey<T>(all: readonly T[], keyOf: (each: T) => string): Map<string, T> {
    const found = new Map<string, T>();
    const seen = new Map<string, number>();
    for (const each of all) {
        const key = keyOf(each);
        const count = (seen.get(key) ?? 0) + 1;
        seen.set(key, count);
        found.set(count === 1 ? key : `${key} ${count}`, each);
    }
    return found;
}
