import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shortages, unmet, type Demand } from './shortages.js';

// The smallest sets against brute force: give everything out in every possible way, for every set of rows.

/** The most units that can be given out, found by trying every offer for every unit. */
function mostGiven({ rows, capacity }: Demand): number {
    const known = new Map<string, number>();
    const units = rows.flatMap(({ count, from }) => Array.from({ length: count }, () => from));
    const give = (unit: number, held: readonly number[]): number => {
        const from = units[unit];
        if (!from) {
            return 0;
        }
        const key = `${unit}:${held.join()}`;
        const found = known.get(key);
        if (found !== undefined) {
            return found;
        }
        let most = give(unit + 1, held);
        for (const offer of from) {
            if (held[offer]! > 0) {
                most = Math.max(most, 1 + give(unit + 1, held.with(offer, held[offer]! - 1)));
            }
        }
        known.set(key, most);
        return most;
    };
    return give(0, capacity);
}

function lackOf(demand: Demand, some: readonly number[]): number {
    const rows = some.map((row) => demand.rows[row]!);
    return rows.reduce((sum, { count }) => sum + count, 0) - mostGiven({ ...demand, rows });
}

/** By brute force: the fewest rows that lack something, of as many those that lack most, of those the first. */
function smallestSet(demand: Demand): { readonly rows: readonly number[]; readonly short: number } | undefined {
    const all = demand.rows.map((_, row) => row);
    let best: { readonly rows: readonly number[]; readonly short: number } | undefined;
    for (let mask = 1; mask < 2 ** all.length; mask++) {
        const rows = all.filter((row) => (mask >> row) % 2 === 1);
        if (best && rows.length > best.rows.length) {
            continue;
        }
        const short = lackOf(demand, rows);
        const isBetter =
            !best ||
            rows.length < best.rows.length ||
            short > best.short ||
            (short === best.short && rows.join() < best.rows.join());
        if (short > 0 && isBetter) {
            best = { rows, short };
        }
    }
    return best;
}

function holds(demand: Demand): void {
    const found = shortages(demand);
    const lacking = lackOf(
        demand,
        demand.rows.map((_, row) => row),
    );
    const seen = JSON.stringify(demand);
    expect(unmet(demand), seen).toBe(lacking);
    expect(
        found.reduce((sum, { shortInAll }) => sum + shortInAll, 0),
        seen,
    ).toBe(lacking);
    const [first] = found;
    expect(first && { rows: first.rows, short: first.short }, seen).toEqual(smallestSet(demand));
    for (const { rows, offers, short, others, shortInAll } of found) {
        expect(lackOf(demand, rows), seen).toBeGreaterThan(0);
        expect(offers, seen).toEqual([...new Set(rows.flatMap((row) => demand.rows[row]!.from))].toSorted());
        expect(shortInAll, seen).toBeGreaterThanOrEqual(short);
        expect(others.every((row) => demand.rows[row]!.from.every((offer) => offers.includes(offer)))).toBe(true);
    }
}

/** Every way of having up to `most` units in rows that each may have one of `sets`. */
function* multisets(sets: readonly (readonly number[])[], most: number): Generator<Demand['rows']> {
    const counts = sets.map(() => 0);
    function* fill(place: number, left: number): Generator<Demand['rows']> {
        if (place === sets.length) {
            yield sets.map((from, set) => ({ count: counts[set]!, from })).filter(({ count }) => count > 0);
            return;
        }
        for (let count = 0; count <= left; count++) {
            counts[place] = count;
            yield* fill(place + 1, left - count);
        }
        counts[place] = 0;
    }
    yield* fill(0, most);
}

const subsetsOf = (offers: number): number[][] =>
    Array.from({ length: 2 ** offers }, (_, mask) =>
        Array.from({ length: offers }, (_, offer) => offer).filter((offer) => (mask >> offer) % 2 === 1),
    );

/** Capacities in order of size: the others differ only in the names of the offers. */
function* capacities(sizes: readonly number[], offers: number, from = 0): Generator<number[]> {
    if (offers === 0) {
        yield [];
        return;
    }
    for (let size = from; size < sizes.length; size++) {
        for (const rest of capacities(sizes, offers - 1, size)) {
            yield [sizes[size]!, ...rest];
        }
    }
}

describe('smallest sets that lack something, as by brute force', () => {
    it.each<readonly [number, number, readonly number[]]>([
        [1, 8, [0, 1, 2, 3, 4, 5, 6, 7, 8, Infinity]],
        [2, 8, [0, 1, 2, 3, 4, 5, 6, 7, 8, Infinity]],
        [3, 4, [0, 1, 2, 3, 4, Infinity]],
        [4, 3, [0, 1, 2, Infinity]],
    ])('all demands of %i offers and up to %i units', (offers, units, sizes) => {
        let cases = 0;
        for (const capacity of capacities(sizes, offers)) {
            for (const rows of multisets(subsetsOf(offers), units)) {
                holds({ rows, capacity });
                cases++;
            }
        }
        expect(cases).toBeGreaterThan(100);
    });

    it('3,000 demands of up to 4 offers and 8 units, drawn with a seed', () => {
        const row = fc.record({ count: fc.integer({ min: 0, max: 4 }), from: fc.constantFrom(...subsetsOf(4)) });
        const demand = fc.record({
            rows: fc
                .array(row, { maxLength: 8 })
                .filter((rows) => rows.reduce((sum, { count }) => sum + count, 0) <= 8),
            capacity: fc.array(fc.constantFrom(0, 1, 2, 3, 4, Infinity), { minLength: 4, maxLength: 4 }),
        });
        fc.assert(fc.property(demand, holds), { numRuns: 3000, seed: 8 });
    });
});

describe('a shortage', () => {
    it('is told once for all rows that have no other offers', () => {
        const rows = [4, 3, 2].map((count) => ({ count, from: [0] }));
        expect(shortages({ rows, capacity: [5, Infinity] })).toEqual([
            { rows: [0, 1], offers: [0], short: 2, others: [2], shortInAll: 4 },
        ]);
    });

    it('is told for each row alone to which nothing is offered', () => {
        const rows = [1, 2].map((count) => ({ count, from: [] }));
        expect(shortages({ rows, capacity: [5] }).map((each) => each.rows)).toEqual([[1], [0]]);
    });

    it('of more offers than can be gone through is the whole of the cut, which still lacks', () => {
        const offers = Array.from({ length: 30 }, (_, offer) => offer);
        const rows = [
            ...offers.map((offer) => ({ count: 1, from: [offer, (offer + 1) % 30] })),
            { count: 1, from: [3] },
        ];
        const [found] = shortages({ rows, capacity: offers.map(() => 1) });
        expect(found).toMatchObject({ short: 1, shortInAll: 1 });
        expect(found!.rows.length).toBe(31);
    });
});
