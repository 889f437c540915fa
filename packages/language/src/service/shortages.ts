/** Why not everyone gets something: the smallest sets of askers whose offers together are too few. Plain numbers. */
import { solveTransport } from './flow.js';

export interface Demand {
    /** Askers: how many units each wants, and the offers any of which will do. */
    readonly rows: readonly { readonly count: number; readonly from: readonly number[] }[];
    /** Units of each offer; `Infinity` where there is no end of them. */
    readonly capacity: readonly number[];
}

export interface Shortage {
    /** A smallest set of rows that want more than their offers hold; no part of it does. In order. */
    readonly rows: readonly number[];
    /** All offers that will do for any of them. */
    readonly offers: readonly number[];
    /** Units these rows lack. */
    readonly short: number;
    /** Further rows that have no offers but these. */
    readonly others: readonly number[];
    /** Units that all of them lack. */
    readonly shortInAll: number;
}

/** Units that no way of giving out can supply. */
export function unmet({ rows, capacity }: Demand): number {
    const flow = give(rows, capacity);
    return rows.reduce((sum, { count }, row) => sum + count - total(flow[row]!), 0);
}

/**
 * The shortages of a demand, each with a smallest set of rows that proves it: no set with fewer rows lacks anything, and of those
 * with as few none lacks more (the first in order where several lack as much). Together they lack what `unmet` says; a later one
 * reckons with what the earlier ones have lost.
 */
export function shortages({ rows, capacity }: Demand): Shortage[] {
    const found: Shortage[] = [];
    let counts = rows.map(({ count }) => count);
    for (;;) {
        const asking = rows.map(({ from }, row) => ({ count: counts[row]!, from }));
        const cut = cutOff(asking, capacity);
        if (!cut) {
            return found;
        }
        const smallest = smallestIn(cut, asking, capacity);
        const offers = offersOf(smallest, asking);
        // Rows to which nothing is offered have nothing in common.
        const confined =
            offers.length === 0
                ? smallest
                : cut.filter((row) => asking[row]!.from.every((offer) => offers.includes(offer)));
        const held = sumOf(offers, capacity);
        const wants = (some: readonly number[]): number => total(some.map((row) => counts[row]!));
        found.push({
            rows: smallest,
            offers,
            short: wants(smallest) - held,
            others: confined.filter((row) => !smallest.includes(row) && counts[row]! > 0),
            shortInAll: wants(confined) - held,
        });
        // What they get at most is all that they ask for from here on.
        const given = give(
            confined.map((row) => asking[row]!),
            capacity,
        );
        counts = counts.map((count, row) => (confined.includes(row) ? total(given[confined.indexOf(row)]!) : count));
    }
}

type Rows = Demand['rows'];

function give(rows: Rows, capacity: readonly number[]): number[][] {
    return solveTransport({
        supply: rows.map(({ count }) => count),
        capacity,
        cost: rows.map(({ from }) => capacity.map((_, offer) => (from.includes(offer) ? 0 : undefined))),
    });
}

/**
 * The rows on the askers' side of a smallest cut (Ford and Fulkerson), where some ask in vain. Every smallest set that lacks
 * something lies inside: the union of two sets that lack the most lacks as much.
 */
function cutOff(rows: Rows, capacity: readonly number[]): number[] | undefined {
    const flow = give(rows, capacity);
    const reached = new Set(rows.flatMap(({ count }, row) => (count > total(flow[row]!) ? [row] : [])));
    // A set is walked through in the order in which it grows.
    for (const row of reached) {
        for (const offer of rows[row]!.from) {
            rows.forEach((_, other) => {
                if (flow[other]![offer]! > 0) {
                    reached.add(other);
                }
            });
        }
    }
    return reached.size === 0 ? undefined : [...reached].toSorted((a, b) => a - b);
}

/** More unions of offers than a menu has; past it the whole of the cut is named, which lacks as well but is not the smallest. */
const MOST_UNIONS = 4096;

/**
 * For each union of the rows' offers, the fewest of the rows confined to it that want more than it holds are those that want the
 * most. The smallest set is one of these, for the union of its own offers.
 */
function smallestIn(cut: readonly number[], rows: Rows, capacity: readonly number[]): number[] {
    let best: { readonly rows: readonly number[]; readonly short: number } | undefined;
    const unions = unionsOf(cut.map((row) => rows[row]!.from));
    for (const union of unions ?? []) {
        const held = sumOf([...union], capacity);
        const confined = cut
            .filter((row) => rows[row]!.from.every((offer) => union.has(offer)))
            .toSorted((a, b) => rows[b]!.count - rows[a]!.count || a - b);
        let wanted = 0;
        for (const [place, row] of confined.entries()) {
            wanted += rows[row]!.count;
            if (wanted > held) {
                const some = confined.slice(0, place + 1).toSorted((a, b) => a - b);
                const isBetter =
                    !best ||
                    some.length < best.rows.length ||
                    (some.length === best.rows.length && wanted - held > best.short) ||
                    (some.length === best.rows.length && wanted - held === best.short && comesFirst(some, best.rows));
                best = isBetter ? { rows: some, short: wanted - held } : best;
                break;
            }
        }
    }
    return [...(best?.rows ?? cut)];
}

function comesFirst(some: readonly number[], others: readonly number[]): boolean {
    const differing = some.findIndex((row, place) => row !== others[place]);
    return differing >= 0 && some[differing]! < others[differing]!;
}

/** Every union of some of these sets, each once; `undefined` where there are too many to go through. */
function unionsOf(sets: readonly (readonly number[])[]): Set<number>[] | undefined {
    const keyOf = (set: Iterable<number>): string => [...set].toSorted((a, b) => a - b).join();
    const distinct = new Map(sets.map((set) => [keyOf(set), set]));
    const unions = new Map<string, Set<number>>();
    for (const [key, set] of distinct) {
        for (const union of [...unions.values()]) {
            const joined = new Set([...union, ...set]);
            unions.set(keyOf(joined), joined);
        }
        unions.set(key, new Set(set));
        if (unions.size > MOST_UNIONS) {
            return undefined;
        }
    }
    return [...unions.values()];
}

function offersOf(some: readonly number[], rows: Rows): number[] {
    return [...new Set(some.flatMap((row) => rows[row]!.from))].toSorted((a, b) => a - b);
}

const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);

const sumOf = (offers: readonly number[], capacity: readonly number[]): number =>
    total(offers.map((offer) => capacity[offer]!));
