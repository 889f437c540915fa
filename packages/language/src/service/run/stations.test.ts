import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { servingOrder, shareOut } from './stations.js';

describe('tables shared out to servers', () => {
    const guests = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 8 });
    const servers = fc.integer({ min: 1, max: 12 });

    it('gives every table to one station of neighbours, and every server a station', () => {
        fc.assert(
            fc.property(guests, servers, (counts, people) => {
                const stations = shareOut(counts, people);
                expect(stations.flatMap(({ tables }) => tables)).toEqual(counts.map((_, table) => table));
                expect(stations.reduce((sum, station) => sum + station.servers, 0)).toBe(people);
                expect(stations.every((station) => station.tables.length > 0 && station.servers > 0)).toBe(true);
                expect(servingOrder(stations).toSorted((a, b) => a - b)).toEqual(counts.map((_, table) => table));
            }),
        );
    });
    it('is as even as it can be: no other way to cut the row has a smaller sum of squares', () => {
        fc.assert(
            fc.property(guests, servers, (counts, people) => {
                fc.pre(people < counts.length);
                const cost = (tables: readonly number[]) => tables.reduce((sum, table) => sum + counts[table]!, 0) ** 2;
                const found = shareOut(counts, people).reduce((sum, { tables }) => sum + cost(tables), 0);
                expect(found).toBe(least(counts, people));
            }),
        );
    });
    it('serves the first table of every station before the second of any', () => {
        expect(servingOrder(shareOut([8, 8, 8, 8, 8], 2))).toEqual([0, 2, 1, 3, 4]);
    });
});

/** The least sum of squares over every way to cut a row into so many pieces. */
function least(counts: readonly number[], pieces: number): number {
    const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
    return pieces === 1
        ? sum(counts) ** 2
        : Math.min(
              ...counts
                  .slice(0, counts.length - pieces + 1)
                  .map((_, cut) => sum(counts.slice(0, cut + 1)) ** 2 + least(counts.slice(cut + 1), pieces - 1)),
          );
}
