import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dealSeats, spread, type Dealing } from './deal-seats.js';

const table = fc.record({ seats: fc.integer({ min: 0, max: 7 }) });
const party = fc.record({
    count: fc.integer({ min: 0, max: 6 }),
    table: fc.option(fc.constantFrom('A', 'B', 'C', 'D', 'elsewhere'), { nil: undefined }),
    seat: fc.option(fc.integer({ min: 1, max: 8 }), { nil: undefined }),
});
const dealing = fc.record({
    tables: fc
        .array(table, { maxLength: 4 })
        .map((tables) => tables.map((each, index) => ({ name: 'ABCD'[index]!, ...each }))),
    parties: fc.array(party, { maxLength: 6 }),
    covers: fc.integer({ min: 0, max: 40 }),
});

const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);

describe('seats dealt, whatever the room and the guests', () => {
    const each = (check: (input: Dealing, dealt: ReturnType<typeof dealSeats>) => void): void =>
        fc.assert(
            fc.property(dealing, (input) => check(input, dealSeats(input))),
            { numRuns: 500, seed: 17 },
        );

    it('go to one guest each, in the order of the room, and only where there is one', () => {
        each(({ tables }, { taken }) => {
            const places = taken.map(({ table, seat }) => table * 100 + seat);
            expect(places).toEqual([...new Set(places)].toSorted((a, b) => a - b));
            for (const { table, seat } of taken) {
                expect(seat).toBeGreaterThanOrEqual(1);
                expect(seat).toBeLessThanOrEqual(tables[table]!.seats);
            }
        });
    });

    it('go to every guest of every party, as long as there are seats', () => {
        each(({ tables, parties }, { taken, withoutSeat, guests }) => {
            const seats = total(tables.map((each) => each.seats));
            const coming = total(parties.map(({ count }) => count));
            expect(taken.length).toBe(Math.min(seats, coming));
            expect(total(guests)).toBe(taken.length);
            expect(withoutSeat).toBe(tables.length === 0 ? 0 : Math.max(0, coming - seats));
            if (coming <= seats) {
                for (const [index, { count }] of parties.entries()) {
                    expect(taken.filter(({ party }) => party === index).length).toBe(count);
                }
            }
        });
    });

    it('are the seats the plan states, unless another party has them first', () => {
        each(({ tables, parties }, { taken }) => {
            const first = new Map<string, number>();
            for (const [index, { count, table, seat }] of parties.entries()) {
                const has = tables.find(({ name }) => name === table)?.seats ?? 0;
                const key = `${table} ${seat}`;
                if (count > 0 && seat !== undefined && seat <= has && !first.has(key)) {
                    first.set(key, index);
                }
            }
            const stated = taken.filter((each) => each.stated === 'seat');
            expect(new Map(stated.map((each) => [`${tables[each.table]!.name} ${each.seat}`, each.party]))).toEqual(
                new Map([...first].toSorted(([a], [b]) => (a < b ? -1 : 1))),
            );
        });
    });

    it('fill the tables evenly: no guest dealt would sit at an emptier table elsewhere', () => {
        each(({ tables }, { taken, guests }) => {
            for (const from of new Set(taken.filter(({ stated }) => stated === 'nothing').map(({ table }) => table))) {
                for (const [to, { seats }] of tables.entries()) {
                    if (guests[to]! < seats && to !== from) {
                        expect(guests[from]! / tables[from]!.seats).toBeLessThanOrEqual((guests[to]! + 1) / seats);
                    }
                }
            }
        });
    });

    it('are laid for every guest, and beyond them for as many as are set and have a chair', () => {
        each(({ tables, covers }, { guests, laid }) => {
            const seats = total(tables.map((each) => each.seats));
            expect(total(laid)).toBe(Math.max(total(guests), Math.min(seats, covers)));
            for (const [index, count] of laid.entries()) {
                expect(count).toBeGreaterThanOrEqual(guests[index]!);
                expect(count).toBeLessThanOrEqual(tables[index]!.seats);
            }
        });
    });
});

describe('a party spread through the room', () => {
    it('has its part at each table', () => {
        const { taken } = dealSeats({
            tables: ['A', 'B', 'C', 'D'].map((name) => ({ name, seats: 8 })),
            parties: [{ count: 16 }, { count: 12 }, { count: 4 }],
            covers: 32,
        });
        for (const table of [0, 1, 2, 3]) {
            const there = taken.filter((each) => each.table === table).map(({ party }) => party);
            expect([0, 1, 2].map((party) => there.filter((each) => each === party).length)).toEqual([4, 3, 1]);
        }
    });

    it('stands in line at even distances', () => {
        expect(
            spread([
                { party: 0, count: 4 },
                { party: 1, count: 2 },
            ]),
        ).toEqual([0, 1, 0, 0, 1, 0]);
    });
});
