import { describe, expect, it } from 'vitest';
import { check } from '../../check.js';
import { filesInMemory } from '../../plan/files.js';
import type { CourseRun, Run } from '../run/types.js';
import { dishRoomOf } from './dish-room.js';
import { peakAtPass } from './equipment.js';
import { stockOf } from './stock.js';

interface Supper {
    readonly own?: string;
    readonly washing?: string;
    readonly laying?: string;
    readonly event?: string;
    readonly salad?: string;
    readonly menu?: string;
}

/** Forty guests who eat two courses with a salad fork. */
function supper({ own = '', washing = '45 racks per hour', laying = '', event = '', salad = '', menu = '' }: Supper) {
    const text = `house "Saltmarsh Hall" {
    own 60 salad-fork, 100 dinner-fork, 100 dinner-knife, 100 salad-plate, 100 dinner-plate ${own}
    washing { ${washing} }
    laying { ${laying} }
}
event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40  ${event} }
menu {
    course appetizer "Beets" { served on salad-plate at 8 °C  eaten with salad-fork  contains nothing  lasts 20 min }
    course main "Lamb" { served on dinner-plate warmed to 60 °C at 60 °C  contains nothing  lasts 30 min }
    course salad "Leaves" { served on salad-plate at 8 °C  eaten with salad-fork ${salad}  contains nothing  lasts 12 min }
    ${menu}
}`;
    const { plan, service } = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    return { plan, service, stock: (run?: Run) => stockOf(plan, service, () => run) };
}

/** A course that is served and cleared between these minutes after guests are seated. */
function course(index: number, served: number, cleared: number): CourseRun {
    const span = (first: number, last: number) => ({ first, last });
    return {
        course: index,
        fired: served - 2,
        plated: span(served - 1, served + 4),
        leftPass: span(served - 1, served + 4),
        served: span(served, served + 5),
        finished: span(cleared - 6, cleared - 1),
        cleared: span(cleared - 5, cleared),
        tables: [],
        dishes: [],
    };
}

function runOf(...courses: readonly CourseRun[]): Run {
    return {
        tables: [],
        courses,
        people: [],
        tasks: [],
        pouringStarts: new Map(),
        speeches: [],
        over: 120,
        assumed: [],
    };
}

const slow = runOf(course(0, 5, 30), course(1, 35, 70), course(2, 75, 95));

describe('washing between courses', () => {
    it('is back when all is cleared, washed, dried and polished', () => {
        const [wash] = supper({ washing: '45 racks per hour  polish 8 pieces per min  drying 5 min' }).stock(
            slow,
        ).turnarounds;
        expect(wash).toMatchObject({ piece: 'salad-fork', after: 0, for: 2, count: 40, saves: 40, racks: 1 });
        // One rack at 45 an hour, forty forks at eight a minute, five minutes to dry.
        expect(wash!.times!.cleared).toBe(30);
        expect(wash!.times!.back).toBeCloseTo(30 + 60 / 45 + 40 / 8 + 5, 9);
        // The forks are laid as soon as the first table has been cleared of the main course.
        expect(wash!.times!.wanted).toBe(65);
    });

    it('takes the rate from the cycle where no rate is stated (quantities 5)', () => {
        const room = (washing: string) => dishRoomOf(supper({ washing }).plan.house);
        expect(room('cycle 2 min')?.racksPerHour).toBe(24);
        expect(room('cycle 60 s  45 racks per hour')?.racksPerHour).toBe(45);
        expect(room('cycle 60 s')).toMatchObject({ drying: 5, polishPerMinute: 6, assumed: ['polish', 'drying'] });
        expect(room('polish 6 pieces per min')).toBeUndefined();
    });

    it('is the cheapest way where the forks are back in time', () => {
        const { remedy } = supper({}).stock(slow);
        expect(remedy?.washes).toMatchObject([{ piece: 'salad-fork', after: 0, for: 2 }]);
        expect(remedy).toMatchObject({ substitutions: [], rents: [], cost: 40 * 0.25, isProved: true });
    });

    it('is no way where they are not', () => {
        const quick = runOf(course(0, 5, 30), course(1, 32, 38), course(2, 40, 50));
        const { remedy, turnarounds } = supper({}).stock(quick);
        expect(turnarounds[0]!.times!.back).toBeGreaterThan(turnarounds[0]!.times!.wanted);
        expect(remedy?.washes).toEqual([]);
        expect(remedy?.rents).toEqual([{ piece: 'salad-fork', count: 20 }]);
    });

    it('is not offered without a run sheet, nor where the dish room is not stated', () => {
        expect(supper({}).stock().turnarounds).toEqual([]);
        expect(supper({ washing: '' }).stock(slow).turnarounds).toEqual([]);
    });

    it('is not offered for what the text lays, or wants chilled', () => {
        expect(supper({ salad: 'laid' }).stock(slow).turnarounds).toEqual([]);
        expect(supper({ salad: 'chilled' }).stock(slow).turnarounds).toEqual([]);
    });

    it('counts the warming of plates that are wanted warm', () => {
        const { stock } = supper({
            own: ', 10 entree-plate',
            laying: 'plate-warming: 15 min',
            menu: `course dessert "Pudding" { served on entree-plate warmed to 50 °C at 60 °C  contains nothing  lasts 15 min }
                course savoury "Toast" { served on entree-plate warmed to 50 °C at 60 °C  contains nothing  lasts 10 min }`,
        });
        const wash = stock(
            runOf(course(0, 5, 30), course(1, 35, 60), course(2, 62, 70), course(3, 80, 100), course(4, 150, 160)),
        ).turnarounds.find(({ piece }) => piece === 'entree-plate');
        expect(wash).toMatchObject({ after: 3, for: 4, count: 40, racks: 2 });
        expect(wash!.times!.back).toBeCloseTo(100 + 120 / 45 + 5 + 15, 9);
    });

    it('is fetched once where the plan states it, and comes with its course', () => {
        const { service, stock } = supper({ menu: 'wash salad-fork after appetizer for salad' });
        expect(service.pull.find(({ piece }) => piece === 'salad-fork')).toMatchObject({
            needed: 80,
            washed: 40,
            pull: 40,
            short: 0,
        });
        expect(
            service.variations[0]!.cover.brought.map(({ piece, broughtBecause }) => [piece.name, broughtBecause]),
        ).toEqual([['salad-fork', 'washed']]);
        expect(stock(slow).turnarounds).toHaveLength(1);
    });

    it('shares one dish room', () => {
        const { stock } = supper({
            washing: '10 racks per hour',
            menu: 'wash salad-plate after appetizer for salad  wash salad-fork after appetizer for salad',
        });
        const [plates, forks] = stock(slow).turnarounds;
        // The forks are wanted first: one rack of six minutes, and polished. Then two racks of plates.
        expect(forks!.times!.back).toBeCloseTo(30 + 6 + 40 / 6 + 5, 9);
        expect(plates!.times!.back).toBeCloseTo(30 + 6 + 40 / 6 + 12 + 5, 9);
        expect([forks!.times!.wanted, plates!.times!.wanted]).toEqual([65, 73]);
    });
});

describe('what is short', () => {
    it('is rented with what the event rents already counted', () => {
        const { service, stock } = supper({ event: 'rent 15 salad-fork' });
        expect(service.pull.find(({ piece }) => piece === 'salad-fork')).toMatchObject({ rented: 15, short: 5 });
        // The van comes anyway.
        expect(stock().remedy).toMatchObject({ rents: [{ piece: 'salad-fork', count: 5 }], cost: 5 });
    });

    it('is rented in whole lots', () => {
        expect(supper({ laying: 'rent-lot: 12' }).stock().remedy?.rents).toEqual([{ piece: 'salad-fork', count: 24 }]);
    });

    it('gives way to a piece that suits and is in the house', () => {
        const { remedy } = supper({ own: ', 100 dessert-fork' }).stock();
        expect(remedy).toMatchObject({
            substitutions: [{ piece: 'salad-fork', by: 'dessert-fork', count: 40 }],
            rents: [],
        });
        expect(supper({ own: ', 100 oyster-fork' }).stock().remedy?.substitutions).toEqual([]);
    });

    it('is made up for by the house’s own costs', () => {
        const means = { own: ', 100 dessert-fork' };
        const by = (laying: string) => supper({ ...means, laying }).stock(slow).remedy;
        expect(by('')?.washes).toHaveLength(1);
        expect(by('wash-cost: 4 per piece')?.substitutions).toHaveLength(1);
        expect(by('wash-cost: 4 per piece  substitute-cost: 4 per piece')?.rents).toHaveLength(1);
    });

    it('has every way that leads out of it, the cheapest first', () => {
        const ways = [...(supper({ own: ', 100 dessert-fork' }).stock(slow).remedies.get('salad-fork') ?? [])];
        expect(
            ways.map(({ washes, substitutions, rents }) => [washes.length, substitutions.length, rents.length]),
        ).toEqual([
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
        ]);
    });

    it('is nothing the house does not list', () => {
        const { service } = supper({});
        expect(service.pull.find(({ piece }) => piece === 'napkin')).toMatchObject({ pull: 40, short: 0 });
        expect(service.pull.find(({ piece }) => piece === 'napkin')?.owned).toBeUndefined();
    });
});

describe('plates at the pass', () => {
    it('are those plated and not yet carried off', () => {
        const table = (name: string, plated: number, left: number) => ({
            table: name,
            plated: { first: plated, last: plated + 1 },
            leftPass: { first: left, last: left + 0.5 },
            served: { first: left + 1, last: left + 2 },
            finished: 20,
            cleared: { first: 21, last: 22 },
        });
        const run: Run = {
            ...runOf({ ...course(0, 0, 20), tables: [table('A', 0, 1.5), table('B', 1, 3), table('C', 2, 3.2)] }),
            tables: ['A', 'B', 'C'].map((name) => ({ name, guests: 8, server: 0, fromPass: 0 })),
        };
        // A has gone when C is plated; B waits for C.
        expect(peakAtPass(run, 0)).toEqual({ plates: 16, at: 3 });
    });
});
