import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenings, evening as plain, table } from '../../../../../tests/support/simulated-evenings.js';
import { courseTimes } from './course-times.js';
import type { Evening } from './evening.js';
import { tasksOf } from './people.js';
import { runEvening } from './run-evening.js';
import { simulate } from './simulate.js';
import type { RunTask } from './types.js';

const supper = plain();
const run = (changes: Partial<Evening>) => runEvening({ ...supper, ...changes });
const withTeam = (team: Partial<Evening['team']>, changes: Partial<Evening> = {}) =>
    run({ ...changes, team: { ...supper.team, ...team } });

describe('an evening of five tables and two courses', () => {
    const usual = run({});
    const [soup, main] = [usual.courses[0]!, usual.courses[1]!];

    it('brings the first plates as guests sit, and the next course as the tables are cleared', () => {
        expect(soup.served.first).toBeGreaterThan(0);
        expect(soup.served.first).toBeLessThan(1);
        expect(main.served.first).toBeGreaterThan(soup.cleared.first);
        for (const { table: name, served } of main.tables) {
            const cleared = soup.tables.find((each) => each.table === name)!.cleared.last;
            expect(served.first).toBeGreaterThanOrEqual(cleared);
            expect(served.first - cleared).toBeLessThan(6);
        }
    });
    it('calls a course ahead by what plating and carrying take', () => {
        expect(main.fired).toBeLessThan(main.plated.first);
        expect(main.served.first - main.fired).toBeLessThan(2);
    });
    it('is eaten for as long as the course lasts, from the last guest of a table served', () => {
        for (const { finished, served } of soup.tables) {
            expect(finished - served.last).toBeCloseTo(15, 9);
        }
    });
    it('is slower with fewer runners, with a slower line, with a longer way', () => {
        const last = (each: typeof usual) => each.courses[0]!.served.last;
        expect(last(withTeam({ runners: 1 }))).toBeGreaterThan(last(usual) + 1);
        expect(last(withTeam({ stations: [0.5] }))).toBeGreaterThan(last(usual) + 5);
        const far = supper.tables.map((each) => ({ ...each, fromPass: 3 * each.fromPass }));
        expect(last(run({ tables: far }))).toBeGreaterThan(last(usual) + 1);
    });
    it('lets servers fetch the plates where there are no runners', () => {
        const alone = withTeam({ runners: 0 });
        expect(
            alone.tasks.filter(({ sort }) => sort === 'carry').map(({ person }) => alone.people[person]!.role),
        ).toContain('server');
        expect(alone.tasks.some(({ sort }) => sort === 'serve')).toBe(false);
    });
    it('takes plates to be ready when called where no line is named', () => {
        const { courses } = withTeam({ lines: 0 });
        expect(courses[0]!.plated.last).toBe(courses[0]!.plated.first);
    });
    it('has wine poured by sommeliers and tables cleared by bussers where there are any', () => {
        const { tasks, people } = withTeam({ sommeliers: 1, bussers: 2 });
        const rolesOf = (sort: RunTask['sort'], course: number) =>
            new Set(
                tasks
                    .filter((task) => task.sort === sort && task.course === course)
                    .map(({ person }) => people[person]!.role),
            );
        expect(rolesOf('pour', 1)).toEqual(new Set(['sommelier']));
        expect(rolesOf('clear', 0)).toEqual(new Set(['busser']));
    });
    it('pours before the plates come, or after, as the house does', () => {
        const poured = (each: typeof usual) => each.courses[1]!.tables.map((one) => one.poured! - one.served.first);
        expect(Math.max(...poured(usual))).toBeLessThanOrEqual(0);
        expect(Math.min(...poured(run({ isWinePouredFirst: false })))).toBeGreaterThan(0);
    });
    it('clears the first guests sooner where the house clears one by one', () => {
        const oneByOne = run({ isClearedOneByOne: true }).courses[0]!;
        expect(oneByOne.cleared.first).toBeLessThan(soup.cleared.first);
        expect(oneByOne.tables[0]!.finished).toBeCloseTo(soup.tables[0]!.finished, 9);
    });
});

describe('what the plan says of a course', () => {
    const courses = (changes: readonly Partial<Evening['courses'][number]>[]): Evening['courses'] =>
        supper.courses.map((course, index) => ({ ...course, ...changes[index] }));

    it('`starts at`: no plate is set down before', () => {
        const { served, plated } = run({ courses: courses([{}, { startsAt: 40 }]) }).courses[1]!;
        expect(served.first).toBeGreaterThanOrEqual(40);
        expect(served.first).toBeLessThan(40.5);
        expect(plated.first).toBeGreaterThan(38);
    });
    it('`preset`: all of it stands that long before guests sit, and is eaten from then on', () => {
        const { courses: done, tasks } = run({ courses: courses([{ standsBefore: 5 }]) });
        expect(done[0]!.served.last).toBeCloseTo(-5, 9);
        expect(done[0]!.tables[0]!.finished).toBeCloseTo(15, 9);
        const seated = tasks.filter(({ sort }) => sort === 'seat');
        expect(Math.min(...seated.map(({ start }) => start))).toBeGreaterThan(-5);
    });
    it('`plated ahead`: every plate is kept before the call', () => {
        const ahead = supper.courses[1]!.dishes.map((dish) => ({ ...dish, isAhead: true }));
        const { fired, plated, leftPass } = run({ courses: courses([{}, { dishes: ahead }]) }).courses[1]!;
        expect(plated.last).toBeLessThanOrEqual(leftPass.first);
        expect(plated.last).toBeLessThanOrEqual(fired + 1);
    });
    it('`plated in`: the stations of a dish set its pace', () => {
        const slow = supper.courses[0]!.dishes.map((dish) => ({ ...dish, stations: [0.25, 0.5] }));
        const { plated } = run({ courses: courses([{ dishes: slow }]) }).courses[0]!;
        // Two lines at half a minute a plate, forty plates.
        expect(plated.last - plated.first).toBeCloseTo(19 * 0.5, 6);
    });
    it('a speech holds the room: it waits for the last table, and the next course for it', () => {
        const speech = { speech: 0, isToast: false, after: 0, isBeforeNext: false, lasts: 6 };
        const { speeches, courses: done } = run({ speeches: [speech] });
        expect(speeches[0]!.start).toBeGreaterThanOrEqual(done[0]!.cleared.last - 1e-9);
        expect(done[1]!.served.first).toBeGreaterThanOrEqual(speeches[0]!.end);
        expect(run({ speeches: [{ ...speech, at: 60 }] }).speeches[0]!.start).toBe(60);
    });
    it('a toast waits until the last glass is poured', () => {
        const toast = { speech: 0, isToast: true, after: 1, isBeforeNext: false, lasts: 3, pour: 1 };
        const { speeches } = run({ speeches: [toast], isWinePouredFirst: false });
        expect(speeches[0]!.start).toBeGreaterThanOrEqual(speeches[0]!.poured!);
    });
    it('warm spoons are laid last, just before the plates', () => {
        const tables = supper.tables.map((each) => ({
            ...each,
            courses: each.courses.map((work) => ({ ...work, temperedPieces: each.guests })),
        }));
        const { tasks } = run({ tables });
        for (const { name } of tables) {
            const [relay, serve] = (['relay', 'serve'] as const).map((sort) =>
                tasks.find((task) => task.sort === sort && task.course === 1 && task.table === name)!,
            );
            expect(serve!.start).toBeGreaterThanOrEqual(relay!.end - 1e-9);
            expect(serve!.start - relay!.end).toBeLessThan(3);
        }
    });
});

describe('whatever the evening', () => {
    const each = (check: (evening: Evening) => void) =>
        fc.assert(fc.property(evenings, check), { numRuns: 60, seed: 11 });

    it('every guest is served every course once, and plates are plated, carried and set down in that order', () => {
        each((evening) => {
            const simulated = simulate(evening);
            const tasks = tasksOf(simulated, courseTimes(simulated));
            evening.courses.forEach((_, course) => {
                const plates = evening.tables.flatMap((one) => one.courses[course]!.plates).length;
                const carried = tasks.filter((task) => task.sort === 'carry' && task.course === course);
                expect(carried.reduce((sum, task) => sum + task.count, 0)).toBe(plates);
                expect(Math.max(0, ...carried.map((task) => task.count))).toBeLessThanOrEqual(evening.pace.platesATrip);
            });
            for (const { tables, dishes } of courseTimes(simulated).filter(
                ({ course }) => course < evening.courses.length,
            )) {
                for (const { plated, leftPass, served, finished, cleared } of tables) {
                    expect(plated.first).toBeLessThanOrEqual(leftPass.first + 1e-9);
                    expect(leftPass.first).toBeLessThan(served.first);
                    expect(served.last).toBeLessThanOrEqual(finished);
                    expect(cleared.last).toBeGreaterThan(finished);
                }
                for (const { first, last } of dishes) {
                    for (const plate of [first, last]) {
                        expect(plate.plated).toBeLessThanOrEqual(plate.leftPass + 1e-9);
                        expect(plate.leftPass).toBeLessThan(plate.served);
                    }
                }
            }
        });
    });
    it('no table is served before it is cleared of the course before', () => {
        each((evening) => {
            const courses = courseTimes(simulate(evening)).filter(({ course }) => course < evening.courses.length);
            courses.slice(1).forEach((course, index) => {
                for (const { table: name, served } of course.tables) {
                    const before = courses
                        .slice(0, index + 1)
                        .findLast((one) => one.tables.some((all) => all.table === name));
                    const cleared = before?.tables.find((all) => all.table === name)?.cleared.last ?? 0;
                    // Cleared when the person is back at the pass; the table itself is free by then at the latest.
                    expect(served.first).toBeGreaterThan(cleared - 1e-9);
                }
            });
        });
    });
    it('nobody does two things at once, and all are at their tables', () => {
        each((evening) => {
            const simulated = simulate(evening);
            const { workforce } = simulated;
            const tasks = tasksOf(simulated, courseTimes(simulated));
            workforce.people.forEach(({ role }, person) => {
                const mine = tasks.filter((task) => task.person === person && task.end > task.start);
                if (role !== evening.team.lineRole && role !== 'captain') {
                    mine.slice(1).forEach((task, index) => {
                        const speaks = [task.sort, mine[index]!.sort].some(
                            (sort) => sort === 'speech' || sort === 'toast',
                        );
                        expect(speaks || task.start >= mine[index]!.end - 1e-9).toBe(true);
                    });
                }
            });
        });
    });
    it('is the same every time', () => {
        each((evening) => {
            const once = courseTimes(simulate(evening));
            expect(courseTimes(simulate(structuredClone(evening)))).toEqual(once);
        });
    });
});

describe('the work of a large evening', () => {
    it('grows with the guests, not faster', () => {
        const activities = (tables: number): number =>
            simulate({
                ...supper,
                tables: Array.from({ length: tables }, (_, index) => table(`T${index + 1}`, 8, 8000 + 100 * index)),
                team: { ...supper.team, servers: tables / 2, runners: tables / 3, lines: Math.ceil(tables / 8) },
            }).service.network.activities.length;
        expect(activities(150)).toBeLessThanOrEqual(15 * activities(15));
    });
});

describe('published figures of pace', () => {
    const tables = (count: number) => Array.from({ length: count }, (_, index) => table(`T${index + 1}`, 10, 8000));
    const many = { servers: 30, runners: 60 };

    it('R23 (quantities 14.2): a line of stations of 3, 4, 2, 4 and 3 s gives the 300th plate 1,212 s after it begins', () => {
        const stations = [3, 4, 2, 4, 3].map((seconds) => seconds / 60);
        const { courses } = withTeam({ ...many, lines: 1, stations }, { tables: tables(30) });
        const { plated } = courses[0]!;
        // The first plate leaves the line after 16 s.
        expect((plated.last - plated.first) * 60).toBeCloseTo(1212 - 16, 6);
    });
    it('quantities 6.2 (PLAT): one line of 10 plates a minute gives 100 in ten minutes', () => {
        const { courses } = withTeam({ ...many, lines: 1, stations: [1 / 10] }, { tables: tables(10) });
        const { plated } = courses[0]!;
        expect(plated.last - plated.first).toBeCloseTo(10 - 1 / 10, 6);
    });
    it('quantities 6.2 (CATQ): 150 guests are served a course within the published five to seven minutes', () => {
        // Teams of the published ratios: one server a table of ten and one runner for two (quantities 6.1, STAF), two lines of 15.
        const { courses } = withTeam({ servers: 15, runners: 8, lines: 2, stations: [1 / 15] }, { tables: tables(15) });
        const { served } = courses[0]!;
        expect(served.last - served.first).toBeGreaterThan(4);
        expect(served.last - served.first).toBeLessThan(7);
    });
});
