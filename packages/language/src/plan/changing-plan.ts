import { batch, signal, type Signal } from '@preact/signals-core';
import { isAlike, ITSELF } from './alike.js';
import type { Cupboard } from './cupboard.js';
import { lazilyOfEachName } from './lazily.js';
import type { Course, Dish, Menu, Plan } from './types.js';

/**
 * A plan that changes under what is worked out from it. What `lazily` was given and has read some of its parts is asked again
 * when one of those is another, and not before. A part is a list, or one thing that an event, a menu, a course, a dish, a pour,
 * a house, a room or a team says.
 */
export class ChangingPlan {
    /** As it was set last. */
    readonly plan: Plan;
    readonly #parts: ChangingThing;
    readonly #cupboard: ReadonlyMap<keyof Cupboard, ChangingNames<unknown>>;

    constructor(plan: Plan) {
        const { cupboard, ...parts } = plan;
        this.#parts = new ChangingThing(parts);
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

/**
 * Fields that are things which change by themselves, and lists of such things, in whatever has them. Each is read into one
 * place: what a course says for all of its dishes, such as a sauce, is not among them.
 */
const THINGS: ReadonlySet<string> = new Set<keyof Plan | keyof Dish>([
    'event',
    'menu',
    'house',
    'room',
    'team',
    'customs',
    'served',
]);
const LISTS: ReadonlySet<string> = new Set<keyof Menu | keyof Course>(['courses', 'dishes', 'pours', 'speeches']);

/** Something with fields, each of which may change by itself: who has read one is not asked again when another is set. */
class ChangingThing {
    /** Stays the very same, its fields as they were set last. */
    readonly thing: Fields;
    readonly #fields: ReadonlyMap<string, Signal<unknown>>;
    readonly #things = new Map<string, ChangingThing>();
    readonly #lists = new Map<string, readonly ChangingThing[]>();

    constructor(private fields: Fields) {
        this.#fields = new Map(
            Object.keys(fields).map((name) => [name, signal(this.#exposed(name, undefined, fields[name]))]),
        );
        const getters = [...this.#fields].map(([name, field]) => [name, { get: () => field.value, enumerable: true }]);
        this.thing = Object.create(ITSELF, Object.fromEntries(getters) as PropertyDescriptorMap) as Fields;
    }

    /** Whether it was set to these fields. */
    is(fields: Fields): boolean {
        return this.fields === fields;
    }

    /** @returns whether it could be set: to as many fields, of the same names */
    set(fields: Fields): boolean {
        if (this.is(fields)) {
            return true;
        }
        const names = Object.keys(fields);
        if (names.length !== this.#fields.size || !names.every((name) => this.#fields.has(name))) {
            return false;
        }
        for (const [name, field] of this.#fields) {
            field.value = this.#exposed(name, field.peek(), fields[name]);
        }
        this.fields = fields;
        return true;
    }

    /** What is shown of a value: a thing or things that change, else what was shown before where the value says the same. */
    #exposed(name: string, before: unknown, now: unknown): unknown {
        if (Array.isArray(now) && LISTS.has(name)) {
            const list = changed(this.#lists.get(name) ?? [], now as Fields[]);
            this.#lists.set(name, list);
            const things = list.map(({ thing }) => thing);
            const isSame =
                Array.isArray(before) &&
                before.length === things.length &&
                things.every((thing, at) => thing === before[at]);
            return isSame ? before : things;
        }
        if (THINGS.has(name) && typeof now === 'object' && !Array.isArray(now)) {
            const thing = one(this.#things.get(name), now as Fields);
            this.#things.set(name, thing);
            return thing.thing;
        }
        return isAlike(before, now) ? before : now;
    }
}

/** The thing set to other fields, or another where it can't be. */
function one(thing: ChangingThing | undefined, fields: Fields): ChangingThing {
    return thing?.set(fields) ? thing : new ChangingThing(fields);
}

/** The things set to other fields: of as many each what stands in its place, else each what it was before. */
function changed(things: readonly ChangingThing[], now: readonly Fields[]): readonly ChangingThing[] {
    return now.map((fields, at) =>
        now.length === things.length
            ? one(things[at], fields)
            : (things.find((thing) => thing.is(fields)) ?? new ChangingThing(fields)),
    );
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
