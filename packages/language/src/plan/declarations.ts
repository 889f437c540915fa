/**
 * Things declared by name, each made when it is first asked for: a plan asks for few of the hundreds in its reach.
 * Iterates in the order of the names, and then makes them all.
 */
export class Declarations<T> implements ReadonlyMap<string, T> {
    readonly #names: ReadonlySet<string>;
    readonly #make: (name: string) => T;
    readonly #made = new Map<string, T>();

    /** @param make called once a name, and only for these names */
    constructor(names: Iterable<string>, make: (name: string) => T) {
        this.#names = new Set(names);
        this.#make = make;
    }

    get size(): number {
        return this.#names.size;
    }

    has(name: string): boolean {
        return this.#names.has(name);
    }

    get(name: string): T | undefined {
        if (!this.#names.has(name)) {
            return undefined;
        }
        let thing = this.#made.get(name);
        if (thing === undefined) {
            thing = this.#make(name);
            this.#made.set(name, thing);
        }
        return thing;
    }

    keys(): SetIterator<string> {
        return this.#names.keys();
    }

    *values(): Generator<T, undefined> {
        for (const name of this.#names) {
            yield this.get(name)!;
        }
    }

    *entries(): Generator<[string, T], undefined> {
        for (const name of this.#names) {
            yield [name, this.get(name)!];
        }
    }

    [Symbol.iterator](): Generator<[string, T], undefined> {
        return this.entries();
    }

    forEach(visit: (thing: T, name: string, all: ReadonlyMap<string, T>) => void): void {
        for (const [name, thing] of this) {
            visit(thing, name, this);
        }
    }
}
