import { batch, signal, type Signal } from '@preact/signals-core';
import { isAlike } from './alike.js';
import type { Cupboard } from './cupboard.js';
import { lazily } from './lazily.js';
import type { Plan } from './types.js';

/**
 * A plan that changes under what is worked out from it. What `lazily` was given and has read some of its parts is asked again
 * when one of those is another, and not before.
 */
export class ChangingPlan {
    /** As it was set last. */
    readonly plan: Plan;
    readonly #parts: ReadonlyMap<keyof Plan, Signal<unknown>>;
    readonly #cupboard: ReadonlyMap<keyof Cupboard, ChangingNames<unknown>>;

    constructor(plan: Plan) {
        const { cupboard, ...parts } = plan;
        this.#parts = new Map(Object.entries(parts).map(([name, part]) => [name as keyof Plan, signal<unknown>(part)]));
        this.#cupboard = new Map(
            Object.entries(cupboard).map(([name, things]: [string, ReadonlyMap<string, unknown>]) => [
                name as keyof Cupboard,
                new ChangingNames(things),
            ]),
        );
        const getters = [...this.#parts].map(([name, part]) => [name, { get: () => part.value, enumerable: true }]);
        this.plan = Object.defineProperties(
            { cupboard: Object.fromEntries(this.#cupboard) },
            Object.fromEntries(getters) as PropertyDescriptorMap,
        ) as unknown as Plan;
    }

    set(plan: Plan): void {
        batch(() => {
            for (const [name, part] of this.#parts) {
                part.value = kept(part.peek(), plan[name]);
            }
            for (const [name, things] of this.#cupboard) {
                things.set(plan.cupboard[name]);
            }
        });
    }
}

/** Names of the cupboard that nobody asks for any more are forgotten when there are more than this many. */
const MOST_NAMES = 4_000;

/** One namespace of a cupboard: who has asked for one name is not asked again when another is declared otherwise. */
class ChangingNames<T> implements ReadonlyMap<string, T> {
    readonly #all: Signal<ReadonlyMap<string, T>>;
    readonly #things = new Map<string, () => T | undefined>();

    constructor(all: ReadonlyMap<string, T>) {
        this.#all = signal(all);
    }

    set(all: ReadonlyMap<string, T>): void {
        this.#all.value = all;
        if (this.#things.size > MOST_NAMES) {
            this.#things.clear();
        }
    }

    get(name: string): T | undefined {
        let thing = this.#things.get(name);
        if (!thing) {
            thing = lazily(() => this.#all.value.get(name));
            this.#things.set(name, thing);
        }
        return thing();
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

/** The list as it was where the new one holds the same: lists are made anew at every look. */
function kept(before: unknown, now: unknown): unknown {
    return Array.isArray(now) && isAlike(before, now) ? before : now;
}
