import { computed } from '@preact/signals-core';
import { isAlike } from './alike.js';

/**
 * Works a value out when it is first asked for, and again only when something that it asked for meanwhile is another: of a
 * plan that does not change, once.
 */
export function lazily<T>(make: () => T): () => T {
    const value = computed(make);
    return () => value.value;
}

/**
 * As `lazily`, of plain data: where it is the same again, it stays the very same, and so does all that stands on it. What else it
 * holds, and somebody looks up, is made with `itself`: then nothing is kept that holds another one, though it says the same.
 */
export function lazilyKept<T>(make: () => T, isSame: (before: T, now: T) => boolean = isAlike): () => T {
    let before: { readonly value: T } | undefined;
    return lazily(() => {
        const value = make();
        if (!before || !isSame(before.value, value)) {
            before = { value };
        }
        return before.value;
    });
}

/** As `lazilyKept`, of a list, each by itself. */
export function lazilyKeptEach<T>(
    make: () => readonly T[],
    isSame: (before: T, now: T) => boolean = isAlike,
): () => readonly T[] {
    let before: readonly T[] | undefined;
    return lazily(() => {
        const known = before ?? [];
        const now = make().map((each, at) => (at < known.length && isSame(known[at]!, each) ? known[at]! : each));
        if (now.length !== before?.length || now.some((each, at) => each !== known[at])) {
            before = now;
        }
        return before;
    });
}

/** As `lazily`, of each thing by itself: of the same thing the same is given as long as nothing it asks for is another. */
export function lazilyOfEach<Thing extends object, T>(make: (thing: Thing) => T): (thing: Thing) => T {
    const values = new WeakMap<Thing, () => T>();
    return (thing) => {
        const value = values.get(thing) ?? lazily(() => make(thing));
        values.set(thing, value);
        return value();
    };
}

/** Names that nobody asks for any more are forgotten when there are more than this many. */
const MOST_NAMES = 4_000;

/** Both: of each thing by itself, and plain data that stays the very same while it says the same. */
export function lazilyKeptOfEach<Thing extends object, T>(
    make: (thing: Thing) => T,
    isSame?: (before: T, now: T) => boolean,
): (thing: Thing) => T {
    const values = lazilyOfEach((thing: Thing) => lazilyKept(() => make(thing), isSame));
    return (thing) => values(thing)();
}

/** As `lazily`, of each name by itself: who has asked for one is not asked again when another comes to be something else. */
export function lazilyOfEachName<T>(make: (name: string) => T): (name: string) => T {
    const values = new Map<string, () => T>();
    return (name) => {
        let value = values.get(name);
        if (!value) {
            if (values.size > MOST_NAMES) {
                values.clear();
            }
            value = lazily(() => make(name));
            values.set(name, value);
        }
        return value();
    };
}

/** A thing of which each part is worked out when it is asked for. */
export function whenAsked<Thing extends object>(parts: { readonly [Name in keyof Thing]-?: () => Thing[Name] }): Thing {
    const getters = Object.entries(parts).map(([name, get]) => [name, { get, enumerable: true }]);
    return Object.defineProperties({}, Object.fromEntries(getters) as PropertyDescriptorMap) as Thing;
}

/** The same of one part beside fields that are there: it is no part of what is compared or copied. */
export function besides<Fields extends object, Name extends string, T>(
    fields: Fields,
    name: Name,
    get: () => T,
): Fields & Readonly<Record<Name, T>> {
    return Object.defineProperty(fields, name, { get }) as Fields & Readonly<Record<Name, T>>;
}
