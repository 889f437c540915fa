import { computed } from '@preact/signals-core';

/**
 * Works a value out when it is first asked for, and again only when something that it asked for meanwhile is another: of a
 * plan that does not change, once.
 */
export function lazily<T>(make: () => T): () => T {
    const value = computed(make);
    return () => value.value;
}
