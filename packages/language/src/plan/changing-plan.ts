import { batch, signal, type Signal } from '@preact/signals-core';
import { isAlike } from './alike.js';
import type { Cupboard } from './cupboard.js';
import { lazilyOfEachName } from './lazily.js';
import type { Plan } from './types.js';

/**
 * A plan that changes under what is worked out from it. What `lazily` was given and has read some of its parts is asked again
 * when one of those is another, and not before. A part is a list, or one thing that an event, a menu, a house, a room or a team
 * says.
 */
export class ChangingPlan {
    /** As it was set last. */
    readonly plan: Plan;
    readonly #parts: ChangingThing;
    readonly #cupboard: ReadonlyMap<keyof Cupboard, ChangingNames<unknown>>;

    constructor(plan: Plan) {
        const { cupboard, ...parts } = plan;
        this.#parts = new ChangingThing(parts, 1);
        this.#cupboard = new Map(
            Object.entries(cupboard).map(([name, things]: [string, ReadonlyMap<string, unknown>]) => [
                name as keyof Cupboard,
                new ChangingNames(things),
            ]),
        );
        this.plan = Object.defineProperties(
            { cupboard: Object.fromEntries(this.#cupboard) },
            Object.getOwnPropertyDescriptors(this.#parts.thing),
        ) as unknown as Plan;
    }

    set({ cupboard, ...parts }: Plan): void {
        batch(() => {
            this.#parts.set(parts);
            for (const [name, things] of this.#cupboard) {
                things.set(cupboard[name]);
            }
        });
    }
}

type Fields = Readonly<Record<string, unknown>>;

/** Something with fields, each of which may change by itself: who has read one is not asked again when another is set. */
class ChangingThing {
    /** Stays the very same, its fields as they were set last. */
    readonly thing: Fields;
    readonly #fields: ReadonlyMap<string, Signal<unknown>>;
    readonly #inner = new Map<string, ChangingThing>();

    /** @param depth how deep the things in it change by themselves, too: 0 where they are others when anything in them is */
    constructor(
        fields: Fields,
        private readonly depth: number,
    ) {
        this.#fields = new Map(
            Object.keys(fields).map((name) => [name, signal(this.#exposed(name, undefined, fields[name]))]),
        );
        const getters = [...this.#fields].map(([name, field]) => [name, { get: () => field.value, enumerable: true }]);
        this.thing = Object.defineProperties({}, Object.fromEntries(getters) as PropertyDescriptorMap) as Fields;
    }

    /** Whether it can be made that by setting its fields. */
    isLike(fields: Fields): boolean {
        const names = Object.keys(fields);
        return names.length === this.#fields.size && names.every((name) => this.#fields.has(name));
    }

    /** @param fields as many, of the same names */
    set(fields: Fields): void {
        for (const [name, field] of this.#fields) {
            field.value = this.#exposed(name, field.peek(), fields[name]);
        }
    }

    /** What is shown of a value: itself, what was shown before where that says the same, or a thing that changes. */
    #exposed(name: string, before: unknown, now: unknown): unknown {
        if (this.depth === 0 || !isThing(now)) {
            return isAlike(before, now) ? before : now;
        }
        const inner = this.#inner.get(name);
        if (inner?.isLike(now)) {
            inner.set(now);
            return inner.thing;
        }
        const made = new ChangingThing(now, this.depth - 1);
        this.#inner.set(name, made);
        return made.thing;
    }
}

function isThing(value: unknown): value is Fields {
    return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** One namespace of a cupboard, of which each name is asked for by itself. */
class ChangingNames<T> implements ReadonlyMap<string, T> {
    readonly #all: Signal<ReadonlyMap<string, T>>;
    readonly #thing = lazilyOfEachName((name) => this.#all.value.get(name));

    constructor(all: ReadonlyMap<string, T>) {
        this.#all = signal(all);
    }

    set(all: ReadonlyMap<string, T>): void {
        this.#all.value = all;
    }

    get(name: string): T | undefined {
        return this.#thing(name);
    }

    has(name: string): boolean {
        return this.get(name) !== undefined;
    }

    get size(): number {
        return this.#all.value.size;
    }

    keys(): MapIterator<string> {
        return this.#all.value.keys();
    }

    values(): MapIterator<T> {
        return this.#all.value.values();
    }

    entries(): MapIterator<[string, T]> {
        return this.#all.value.entries();
    }

    [Symbol.iterator](): MapIterator<[string, T]> {
        return this.entries();
    }

    forEach(visit: (thing: T, name: string, all: ReadonlyMap<string, T>) => void): void {
        this.#all.value.forEach(visit);
    }
}
