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

/** As `lazily`, of plain data: where it is the same again, it stays the very same, and so does all that stands on it. */
export function lazilyKept<T>(make: () => T): () => T {
    let before: { readonly value: T } | undefined;
    return lazily(() => {
        const value = make();
        if (!before || !isAlike(before.value, value)) {
            before = { value };
        }
        return before.value;
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
