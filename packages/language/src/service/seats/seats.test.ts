import { describe, expect, it } from 'vitest';
import { check } from '../../check.js';
import { filesInMemory } from '../../plan/files.js';
import type { Service } from '../types.js';
import type { PlateSort, SeatedGuest } from './types.js';

const ROOM = 'room "Long gallery" 18 m by 11 m { table T1 to T3: round 60 inch, 4 seats }';
const MAIN = `dish "Sirloin" is steak for 5 { served on dinner-plate warmed at 58 °C  contains milk }
        dish "Chicken" is poultry for the rest { served on dinner-plate warmed at 63 °C  contains nothing }
        dish "Squash" is vegetable-main for vegetarian { served in soup-plate warmed at 63 °C  contains gluten }`;

interface Written {
    readonly guests: string;
    readonly room?: string;
    readonly more?: string;
    readonly main?: string;
    readonly bread?: string;
}

function serve({ guests, room = ROOM, more = '', main = MAIN, bread = '' }: Written): Service {
    const text = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests ${guests} }
${room}
${more}
menu {
    course soup "Leek" {
        served in soup-bowl warmed to 55 °C at 64 °C  lasts 15 min  contains nothing  suits vegetarian
        garnish "Croutons" left off for guests without gluten { contains wheat }
    }
    course main { lasts 30 min
        ${main}
    }
    ${bread}
}
`;
    const checked = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    expect(checked.broken).toEqual([]);
    expect(checked.findings.filter(({ rule }) => rule === 'unreadable-text')).toEqual([]);
    return checked.service;
}

const at = ({ seats }: Service, table: string, seat: number): SeatedGuest | undefined =>
    seats.guests.find((guest) => guest.table === table && guest.seat === seat);
const tally = (values: readonly (string | number | undefined)[]): Record<string, number> =>
    values.reduce<Record<string, number>>(
        (sums, value) => ({ ...sums, [`${value}`]: (sums[`${value}`] ?? 0) + 1 }),
        {},
    );

describe('guests in their seats', () => {
    const service = serve({
        guests: '11 set for 12 { 2 vegetarian  1 without gluten at T2 seat 3  2 without milk at T3 }',
    });
    const { guests, tables } = service.seats;

    it('are each guest once', () => {
        expect(guests.length).toBe(11);
        expect(new Set(guests.map(({ table, seat }) => `${table} ${seat}`)).size).toBe(11);
        expect(service.seats.withoutSeat).toBe(0);
    });

    it('get the dishes that the matching gives, guest by guest and group by group', () => {
        for (const { portions, course } of service.servings) {
            for (const { dish, count, groups } of portions) {
                const eaters = guests.filter(({ dishes }) => dishes[course.index] === dish.index);
                expect(eaters.length).toBe(count);
                for (const { group, count } of groups) {
                    expect(eaters.filter((guest) => guest.group === group.index).length).toBe(count);
                }
            }
        }
        for (const { index, count } of service.variations) {
            expect(guests.filter(({ variation }) => variation === index).length).toBe(count);
        }
    });

    it('sit where the plan says, at the seat or the table', () => {
        expect(service.groups[at(service, 'T2', 3)!.group]!.label).toBe('without gluten');
        expect(at(service, 'T2', 3)!.stated).toBe('seat');
        const atTable = guests.filter(({ stated }) => stated === 'table');
        expect(atTable.map(({ table, seat }) => `${table} ${seat}`)).toEqual(['T3 1', 'T3 2']);
        expect(tally(guests.map(({ stated }) => stated))).toEqual({ seat: 1, table: 2, nothing: 8 });
    });

    it('fill the tables evenly, with the cover set beyond them at the emptiest', () => {
        expect(tables).toEqual([
            { name: 'T1', seats: 4, guests: 4, laid: 4 },
            { name: 'T2', seats: 4, guests: 4, laid: 4 },
            { name: 'T3', seats: 4, guests: 3, laid: 4 },
        ]);
    });

    it('are none where there is no room, and too many where it is too small', () => {
        expect(serve({ guests: '11', room: '' }).seats.guests).toEqual([]);
        expect(serve({ guests: '11', room: '' }).seats.withoutSeat).toBe(0);
        expect(serve({ guests: '15' }).seats.withoutSeat).toBe(3);
    });

    it('sit at a table that does not say how many it seats as they fit, and share one without a size', () => {
        const room =
            'room "Hall" { table A: round 60 inch, 4 seats  table B: round 60 inch  table C to D: round 0 inch }';
        expect(serve({ guests: '18', room }).seats.tables.map(({ seats }) => seats)).toEqual([4, 8, 3, 3]);
    });

    it('whose seat is not there or taken sit at its table', () => {
        const { seats } = serve({
            guests: '6 { 1 vegetarian at T2 seat 9  1 vegan at T1 seat 1  1 halal at T1 seat 1 }',
        });
        expect(
            seats.guests.filter(({ group }) => group < 3).map(({ table, seat, stated }) => [table, seat, stated]),
        ).toEqual([
            ['T1', 1, 'seat'],
            ['T1', 2, 'table'],
            ['T2', 1, 'table'],
        ]);
    });
});

describe('guests of the list', () => {
    const service = serve({
        guests: '9',
        more: `seating {
    "Isolde Marrow" at T1 seat 2, chooses "Chicken"
    "Tobias Fenn" at T2 seat 1, is vegetarian
    "Agnes Reedmace" at T3 seat 4
    "Corin Saltway" without milk
}`,
    });

    it('sit on their seats, with their dish, known by initials', () => {
        expect(at(service, 'T1', 2)).toMatchObject({ initials: 'I. M.', dishes: [0, 1] });
        expect(at(service, 'T2', 1)).toMatchObject({ initials: 'T. F.', dishes: [0, 2] });
        expect(at(service, 'T3', 4)).toMatchObject({ initials: 'A. R.', stated: 'seat' });
        expect(service.seats.guests.find(({ initials }) => initials === 'C. S.')).toMatchObject({ stated: 'nothing' });
    });

    it('are never named', () => {
        expect(JSON.stringify(service.seats)).not.toMatch(/Isolde|Marrow|Fenn|Agnes|Corin/);
    });

    it('are no guests beyond those expected', () => {
        expect(service.seats.guests.length).toBe(9);
    });
});

describe('plates', () => {
    const marked = (plates: readonly PlateSort[], course: number) =>
        plates
            .filter((plate) => plate.course === course)
            .map(({ dish, count, marker, because }) => [dish, count, marker, because.join()] as const);

    it('are marked where an allergen is kept off, something left off, the dish is for some, or another looks alike', () => {
        const { seats } = serve({ guests: '12 { 2 vegetarian  1 without gluten  1 without egg }' });
        expect(marked(seats.plates, 0)).toEqual([
            [0, 10, undefined, ''],
            [0, 1, 'GF', 'allergen,left-off'],
            [0, 1, 'no egg', 'allergen'],
        ]);
        // Squash comes in another vessel: its mark is that of the guests it is for.
        expect(marked(seats.plates, 1).filter(([dish]) => dish === 2)).toEqual([[2, 2, 'V', 'diet']]);
        expect(tally(marked(seats.plates, 1).map(([, , marker]) => marker))).toEqual({
            '1': 1,
            'GF 1': 1,
            'no egg 1': 1,
            '2': 1,
            V: 1,
        });
    });

    it('count every guest once a course', () => {
        const { seats } = serve({ guests: '12 { 2 vegetarian  1 without gluten  3 children }' });
        for (const course of [0, 1]) {
            const counts = seats.plates.filter((plate) => plate.course === course).map(({ count }) => count);
            expect(counts.reduce((sum, count) => sum + count, 0)).toBe(12);
        }
    });

    it('are marked in the seat list as at the pass', () => {
        const { seats } = serve({ guests: '12 { 1 vegetarian without tree-nuts at T1 seat 2  2 without gluten }' });
        for (const guest of seats.guests) {
            for (const [course, dish] of guest.dishes.entries()) {
                const plate = seats.plates.find(
                    (each) => each.course === course && each.dish === dish && each.groups.includes(guest.group),
                );
                expect(guest.markers[course]).toBe(plate!.marker);
            }
        }
        expect(seats.guests[1]!.markers).toEqual(['V+N', 'V+N']);
    });

    it('of bread are marked for the guests who must not have the common one', () => {
        const service = serve({
            guests: '12 { 1 without gluten at T1 seat 1 }',
            bread: `bread from soup until main on bread-plate with butter-spreader { contains wheat
        butter { contains milk }
        dish "Crispbread" for guests without gluten { contains nothing }
    }`,
        });
        expect(at(service, 'T1', 1)).toMatchObject({ bread: 0, breadMarker: 'GF' });
        expect(at(service, 'T1', 2)).toMatchObject({ bread: 1, breadMarker: undefined });
    });

    it('of two dishes that come in different vessels need no number', () => {
        const main = MAIN.replace(
            '"Chicken" is poultry for the rest { served on dinner-plate',
            '"Chicken" is poultry for the rest { served on entree-plate',
        );
        const { seats } = serve({ guests: '12', main });
        expect(seats.plates.every(({ marker }) => marker === undefined)).toBe(true);
    });
});
