import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check } from '../../check.js';
import { filesInMemory } from '../../plan/files.js';
import type { Plan } from '../../plan/types.js';
import { eveningClock } from '../clock/evening.js';
import { prepare, type PreparationsInput } from './preparations.js';
import type { StatedTask } from './stated-tasks.js';
import type { PreparedTask, Preparations } from './types.js';
import { isOutTooLong, minutesOut, planWarming, warmersWanted } from './warming.js';

interface Evening {
    readonly times?: string;
    readonly guests?: string;
    readonly laying?: string;
    readonly house?: string;
    readonly team?: string;
    readonly tasks?: string;
    readonly menu?: string;
    readonly room?: string;
}

function serve({
    times = 'doors 18:30  seated 19:00',
    guests = '24',
    laying = '',
    house = '',
    team = 'captain 1  servers 3  runners 1  plating-lines 1 at 12 plates per min',
    tasks = '',
    menu = 'course soup "Leek" { served in soup-bowl warmed to 60 °C  lasts 15 min  contains milk }',
    room = 'room "Boathouse" 12 m by 9 m { table A to C: round 60 inch, 8 seats }',
}: Evening = {}): {
    readonly plan: Plan;
    readonly preparations: Preparations;
    readonly face: (minutes: number) => string;
} {
    const text = `house "Saltmarsh Hall" { ${house} laying { ${laying} } }
event "Evening" { date 2026-10-17  zone America/Halifax  ${times}  guests ${guests} }
${room}
team { ${team} }
${tasks}
menu { ${menu} }`;
    const { plan, service } = check('evening.cover', filesInMemory({ 'evening.cover': text }));
    return { plan, preparations: service.preparations!, face: (minutes) => eveningClock(plan)!.face(minutes) };
}

const named = (tasks: readonly PreparedTask[], title: string): PreparedTask =>
    tasks.find((task) => task.title === title)!;

describe('set-up', () => {
    it('derives cloths, polishing, folding and covers from tables, covers and the pull list', () => {
        const { preparations } = serve();
        expect(preparations.setUp.tasks.map(({ title, because }) => `${title}: ${because}`)).toEqual([
            'Cloths: 3 cloths, two people 3 min each',
            'Polishing: 48 pieces, 10 s each',
            'Folding: 24 napkins, 20 s each',
            'Covers: 96 pieces, 4 s each',
        ]);
    });
    it('lays covers beyond the guests’ as well, and polishes as fast as the house says', () => {
        const { preparations } = serve({ guests: '20 set for 24', house: 'washing { polish 12 pieces per min }' });
        expect(named(preparations.setUp.tasks, 'Covers').because).toBe('96 pieces, 4 s each');
        expect(named(preparations.setUp.tasks, 'Polishing').because).toBe('48 pieces, 5 s each');
    });
    it('is over for the briefing and the line-up before the doors, and calls people in time', () => {
        const { preparations, face } = serve();
        const { setUp } = preparations;
        expect([setUp.over, setUp.briefing!.end, setUp.lineUp!.end].map(face)).toEqual(['18:10', '18:25', '18:30']);
        expect(Math.max(...setUp.tasks.map((task) => task.end))).toBeCloseTo(setUp.over, 6);
        const first = Math.min(...setUp.calls.map((call) => call.at));
        expect(setUp.begins! - first).toBeCloseTo(10, 6);
        expect(setUp.calls.map(({ role, count }) => `${count} ${role}`)).toEqual(['1 captain', '3 server', '1 runner']);
        // Who only is briefed comes for the briefing.
        expect(face(setUp.calls[0]!.at)).toBe('18:00');
    });
    it('is ready before guests sit where the event names no doors, and before water is poured', () => {
        const { preparations } = serve({
            times: 'seated 19:00',
            menu: 'water still 180 ml course soup "Leek" { lasts 15 min }',
        });
        expect(preparations.doors).toBeLessThan(-10);
        expect(preparations.doors).toBeGreaterThan(-20);
    });
    it('goes round a meal whose hour is stated, and puts one without an hour before the briefing', () => {
        const fixed = serve({ times: 'doors 18:30  seated 19:00  crew 6 at 17:30', laying: 'laying-piece: 20 s' });
        const meal = fixed.preparations.setUp.staffMeal!;
        expect([meal.start, meal.end].map(fixed.face)).toEqual(['17:30', '18:00']);
        const free = serve({ times: 'doors 18:30  seated 19:00  crew 6' }).preparations.setUp;
        expect(free.staffMeal!.end).toBe(free.briefing!.start);
        expect(free.over).toBe(free.staffMeal!.start);
    });
    it('has no task begin before the meal that is not over before it', () => {
        const { preparations } = serve({
            times: 'doors 18:30  seated 19:00  crew 6 at 17:30',
            laying: 'laying-piece: 20 s  folding-napkin: 2 min',
            tasks: `setup { task "Flowers" takes 25 min, by 1 server  task "Candles" takes 12 min, after "Flowers", by 1 server }`,
        });
        const { staffMeal, tasks } = preparations.setUp;
        for (const { title, start, end } of tasks.filter((task) => task.stated !== undefined)) {
            expect(end <= staffMeal!.start + 1e-9 || start >= staffMeal!.end - 1e-9, title).toBe(true);
        }
    });
    it('takes less time with more people, and more with more guests', () => {
        const minutes = (evening: Evening): number => {
            const { setUp } = serve(evening).preparations;
            return setUp.over - setUp.begins!;
        };
        const team = (servers: number) => `captain 1  servers ${servers}  plating-lines 1`;
        const room = 'room "Hall" 30 m by 20 m { table T1 to T12: round 60 inch, 8 seats }';
        const large = { room, guests: '96' };
        expect(minutes({ ...large, team: team(12) })).toBeLessThan(minutes({ ...large, team: team(4) }) / 2);
        expect(minutes({ ...large, team: team(4) })).toBeGreaterThan(minutes({ team: team(4) }) * 2);
    });
    it('tells everybody what to do where, one thing after the other', () => {
        const { setUp } = serve().preparations;
        const tables = setUp.roster.flatMap(({ tasks }) => tasks.filter(({ title }) => title === 'Covers'));
        expect(tables.flatMap((each) => each.tables).sort()).toEqual(['A', 'B', 'C']);
        for (const { tasks } of setUp.roster) {
            tasks
                .slice(1)
                .forEach((task, index) => expect(task.start).toBeGreaterThanOrEqual(tasks[index]!.end - 1e-6));
        }
        const minutes = setUp.roster.flatMap(({ tasks }) => tasks.map(({ start, end }) => end - start));
        const work = setUp.tasks.reduce((sum, task) => sum + task.work, 0);
        expect(minutes.reduce((sum, each) => sum + each, 0)).toBeCloseTo(work, 6);
    });
    it('says which rates are nobody’s but common practice’s, until the house states them', () => {
        const { assumed } = serve().preparations;
        expect(assumed).toEqual(expect.arrayContaining(['laying-cloth', 'laying-piece', 'briefing', 'polish']));
        expect(assumed).not.toContain('staff-meal');
        const stated = serve({
            laying: 'laying-piece: 4 s  briefing: 15 min',
            house: 'washing { polish 6 pieces per min }',
        });
        expect(stated.preparations.assumed).not.toEqual(
            expect.arrayContaining([expect.stringMatching(/^(laying-piece|briefing|polish)$/)]),
        );
    });
    it('is not planned without the hour of seating, nor without a team and tasks', () => {
        const of = (text: string) => check('a.cover', filesInMemory({ 'a.cover': text })).service.preparations;
        expect(of('event "E" { guests 8 } team { servers 2 }')).toBeUndefined();
        expect(of('event "E" { seated 19:00 guests 8 }')).toBeUndefined();
        expect(of('event "E" { seated 19:00 guests 8 } setup { task "Flowers" takes 30 min }')?.setUp.begins).toBe(-30);
    });
});

describe('tasks of the plan', () => {
    it('stand beside the derived ones, by people of the team or from outside', () => {
        const { preparations } = serve({
            tasks: 'setup { task "Flowers" takes 45 min, by 2 florists  task "Candles" takes 10 min, after "Covers", by 2 servers }',
        });
        const { tasks, calls } = preparations.setUp;
        expect(named(tasks, 'Flowers').by).toEqual([{ role: 'florist', people: 2 }]);
        expect(named(tasks, 'Candles').start).toBeGreaterThanOrEqual(named(tasks, 'Covers').end - 1e-9);
        expect(calls.find(({ role }) => role === 'florist')?.each).toHaveLength(2);
    });
    it('take the place of a derived one of their title, with what they state', () => {
        const cloths = (task: string): PreparedTask =>
            named(serve({ tasks: `setup { task "Tables" takes 20 min  ${task} }` }).preparations.setUp.tasks, 'Cloths');
        expect(cloths('task "Cloths" after "Tables"')).toMatchObject({
            because: '3 cloths, two people 3 min each',
            work: 18,
        });
        expect(cloths('task "Cloths" takes 12 min, by 3 servers')).toMatchObject({
            because: '12 min',
            work: 36,
            by: [{ role: 'server', people: 3 }],
        });
        // 18 minutes of work by three are six.
        const shared = cloths('task "Cloths" by 3 servers');
        expect(shared.end - shared.start).toBeCloseTo(6, 6);
    });
    it('are never begun where they wait for each other or for more people than there are', () => {
        const { preparations } = serve({
            tasks: 'setup { task "Cloths" after "Covers"  task "Stage" takes 30 min, by 9 servers }',
        });
        expect(preparations.setUp.circle?.map(({ title }) => title)).toEqual(
            expect.arrayContaining(['Cloths', 'Covers']),
        );
        expect(preparations.setUp.tooMany).toEqual([{ stated: 1, role: 'server', takes: 9, there: 3 }]);
        expect(preparations.setUp.tasks.map(({ title }) => title)).not.toContain('Stage');
    });
});

describe('strike', () => {
    it('begins when the last guest has gone, and goes on over midnight', () => {
        const { preparations, face } = serve({
            times: 'seated 21:00  ends 23:55',
            laying: 'breaking-down-table: 5 min',
        });
        const { strike } = preparations;
        expect(face(strike.guestsGone)).toBe('23:55');
        expect(strike.tasks.map(({ title }) => title)).toEqual(['Clearing', 'Linen', 'Counting', 'Breakdown']);
        expect(strike.tasks[0]!.start).toBe(strike.guestsGone);
        expect(face(strike.over)).toMatch(/^00:\d\d$/);
        expect(strike.by! - strike.guestsGone).toBe(60);
    });
    it('takes guests to linger where nobody says when they go', () => {
        const { strike } = serve({ laying: 'lingering: 45 min' }).preparations;
        expect([strike.isGoneStated, strike.by]).toEqual([false, undefined]);
        expect(strike.guestsGone).toBeGreaterThan(45);
    });
    it('washes what each course leaves as soon as it is cleared, and counts when all is washed', () => {
        const menu = ['soup', 'dessert'].map(
            (kind) => `course ${kind} "${kind}" { served in soup-bowl  lasts 15 min  contains nothing }`,
        );
        const { strike } = serve({
            house: 'washing { 30 racks per hour }',
            menu: `${menu.join(' ')}`,
            times: 'seated 19:00  ends 20:30',
        }).preparations;
        const washing = named(strike.tasks, 'Washing');
        expect(washing.start).toBeLessThan(strike.guestsGone);
        expect(named(strike.tasks, 'Counting').start).toBeGreaterThanOrEqual(washing.end - 1e-9);
        expect(washing.by).toEqual([{ role: 'dish machine', people: 1 }]);
        expect(strike.leaves.map(({ role }) => role)).not.toContain('dish machine');
    });
    it('counts the hours as they pass where the clocks go back', () => {
        const halloween = (ends: string) => {
            const text = `event "Evening" { date 2026-10-31  zone America/New_York  seated 19:00  ends ${ends}  guests 8 }
team { servers 2 }`;
            return check('a.cover', filesInMemory({ 'a.cover': text })).service.preparations!.strike.guestsGone;
        };
        expect([halloween('00:30'), halloween('03:00')]).toEqual([5.5 * 60, 9 * 60]);
    });
});

describe('warming', () => {
    const menu = (kind: string, lasts: number) =>
        `course ${kind} "${kind}" { served on dinner-plate warmed to 60 °C  lasts ${lasts} min  contains nothing }`;

    it('puts plates in so that they are warm when they are wanted', () => {
        const { preparations } = serve({ house: 'own 1 plate-warmer { holds 40 plates }', menu: menu('main', 30) });
        const [load] = preparations.warming;
        expect(load).toMatchObject({ piece: 'dinner-plate', pieces: 24, to: 60, gear: 'plate-warmer' });
        expect(load!.end).toBeCloseTo(load!.wantedUntil, 6);
        // 45 min before the first is plated, by custom.
        expect(load!.end - load!.start).toBeGreaterThanOrEqual(45);
    });
    it('shares what does not fit among the warmers there are', () => {
        const { preparations } = serve({ house: 'own 2 plate-warmer { holds 16 plates }', menu: menu('main', 30) });
        expect(preparations.warming.map(({ pieces, gear }) => [pieces, gear])).toEqual([
            [12, expect.stringMatching(/^plate-warmer [12]$/)],
            [12, expect.stringMatching(/^plate-warmer [12]$/)],
        ]);
    });
    it('has the plates of one course out before those of the next go in', () => {
        const { preparations } = serve({
            house: 'own 1 plate-warmer { holds 40 plates }',
            menu: menu('fish', 20) + menu('main', 30),
        });
        const [first, second] = preparations.warming;
        expect([first!.course, second!.course]).toEqual([0, 1]);
        expect(first!.end).toBeLessThanOrEqual(second!.start + 1e-9);
        expect(first!.end).toBeLessThan(first!.wantedUntil);
    });
    it('lets what fits together stand together, and be in until it is wanted', () => {
        const { preparations } = serve({
            house: 'own 1 plate-warmer { holds 48 plates }',
            menu: menu('fish', 20) + menu('main', 30),
        });
        expect(preparations.warming.map(({ course, pieces }) => [course, pieces])).toEqual([
            [0, 24],
            [1, 24],
        ]);
        for (const { end, wantedUntil } of preparations.warming) {
            expect(end).toBeCloseTo(wantedUntil, 6);
        }
    });
    it('never has more in a warmer than it holds, and everything in on time', () => {
        const wanted = fc.record({
            course: fc.nat(4),
            piece: fc.constantFrom('soup-bowl', 'dinner-plate'),
            pieces: fc.integer({ min: 1, max: 90 }),
            from: fc.integer({ min: -10, max: 120 }),
            lasts: fc.integer({ min: 0, max: 15 }),
        });
        const given = fc.record({
            wanted: fc.array(
                wanted.map(({ lasts, ...each }) => ({ ...each, until: each.from + lasts })),
                { maxLength: 5 },
            ),
            gear: fc.array(fc.record({ name: fc.constant('plate-warmer'), holds: fc.integer({ min: 1, max: 80 }) }), {
                minLength: 1,
                maxLength: 4,
            }),
            minutes: fc.integer({ min: 1, max: 60 }),
        });
        fc.assert(
            fc.property(given, (input) => {
                const loads = planWarming(input);
                const all = (pieces: readonly { readonly pieces: number }[]) =>
                    pieces.reduce((sum, each) => sum + each.pieces, 0);
                expect(all(loads)).toBe(all(input.wanted));
                for (const [index, { holds }] of input.gear.entries()) {
                    const name = input.gear.length > 1 ? `plate-warmer ${index + 1}` : 'plate-warmer';
                    const mine = loads.filter(({ gear }) => gear === name);
                    for (const { start } of mine) {
                        const there = mine.filter((load) => load.start <= start && start < load.end);
                        expect(all(there)).toBeLessThanOrEqual(holds);
                    }
                }
                for (const { start, end, wantedUntil } of loads) {
                    expect(end).toBeLessThanOrEqual(wantedUntil + 1e-9);
                    expect(end - start).toBeGreaterThanOrEqual(input.minutes - 1e-9);
                }
                // Where all of it fits at once nothing has to make room.
                if (all(input.wanted) <= input.gear.reduce((sum, { holds }) => sum + holds, 0)) {
                    expect(loads.every(({ end, wantedUntil }) => wantedUntil - end < 1e-9)).toBe(true);
                }
                const more = warmersWanted({ input, more: { name: 'plate-warmer', holds: 20 } });
                const gear = [
                    ...input.gear,
                    ...Array<(typeof input.gear)[number]>(more).fill({ name: 'plate-warmer', holds: 20 }),
                ];
                expect(planWarming({ ...input, gear }).some(isOutTooLong)).toBe(false);
            }),
            { seed: 5, numRuns: 150 },
        );
    });
    it('knows how long a vessel has been out of its warmer when it is filled', () => {
        const load = { course: 0, piece: 'soup-bowl', pieces: 10, start: -60 };
        const loads = [
            { ...load, end: -20, wantedUntil: 5 },
            { ...load, end: 10, wantedUntil: 10 },
        ];
        expect([0, 5, 6, 10].map((at) => minutesOut(loads, at))).toEqual([20, 25, 0, 0]);
        expect(minutesOut([], 5)).toBe(0);
    });
});

describe('every schedule', () => {
    const arbitraryTasks = fc
        .array(
            fc.record({
                takes: fc.integer({ min: 1, max: 40 }),
                servers: fc.integer({ min: 0, max: 3 }),
                after: fc.array(fc.nat(), { maxLength: 3 }),
                uncertain: fc.boolean(),
            }),
            { minLength: 1, maxLength: 14 },
        )
        .map((drafts) =>
            drafts.map(({ takes, servers, after, uncertain }, index): StatedTask => ({
                index,
                title: `Task ${index}`,
                takes,
                between: uncertain ? { least: takes / 2, most: takes * 2 } : undefined,
                // Only earlier ones: no circles.
                after: index === 0 ? [] : [...new Set(after.map((other) => `Task ${other % index}`))],
                by: servers > 0 ? { role: 'server', count: servers } : undefined,
            })),
        );
    const input = (setup: readonly StatedTask[], meal: boolean, servers: number): PreparationsInput => ({
        pools: [{ role: 'server', count: servers, isOfTheFloor: true }],
        rates: { cloth: 0, piece: 0, napkin: 0, card: 0, polish: 0, strikePiece: 0, strip: 0, breakDown: 0, count: 0 },
        setup,
        strike: setup,
        times: {
            doors: -30,
            lineUp: 5,
            briefing: 15,
            meal: meal ? { minutes: 30, at: -120 } : undefined,
            callAhead: 10,
            readyChance: 0.9,
            guestsGone: 180,
            isGoneStated: true,
        },
    });

    it('keeps the order of tasks, has nobody in two places, and keeps meals free', () => {
        fc.assert(
            fc.property(arbitraryTasks, fc.boolean(), fc.integer({ min: 3, max: 5 }), (setup, meal, servers) => {
                const { setUp, strike } = prepare(input(setup, meal, servers));
                for (const { tasks, from, to } of [
                    { tasks: setUp.tasks, from: -Infinity, to: setUp.over },
                    { tasks: strike.tasks, from: strike.guestsGone, to: strike.over },
                ]) {
                    expect(tasks).toHaveLength(setup.length);
                    for (const task of tasks) {
                        const stated = setup[task.stated!]!;
                        expect(task.start).toBeGreaterThanOrEqual(from - 1e-6);
                        expect(task.end).toBeLessThanOrEqual(to + 1e-6);
                        expect(task.slack).toBeGreaterThanOrEqual(0);
                        for (const earlier of stated.after) {
                            expect(named(tasks, earlier).end).toBeLessThanOrEqual(task.start + 1e-6);
                        }
                        // At the beginning of any task no more are at work than there are.
                        const now = task.start + 1e-6;
                        const busy = tasks.filter((each) => each.start <= now && each.end > now);
                        const people = busy.map((each) => setup[each.stated!]!.by?.count ?? 0);
                        expect(people.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(servers);
                    }
                }
                const { staffMeal } = setUp;
                for (const { start, end } of staffMeal ? setUp.tasks : []) {
                    expect(end <= staffMeal!.start + 1e-6 || start >= staffMeal!.end - 1e-6).toBe(true);
                }
            }),
            { seed: 5, numRuns: 150 },
        );
    });
    it('is no longer than the work one after the other, and no shorter than the longest chain or the work shared', () => {
        fc.assert(
            fc.property(arbitraryTasks, (setup) => {
                const certain = setup.map((task) => ({ ...task, between: undefined }));
                const { setUp } = prepare(input(certain, false, 3));
                const takes = setUp.over - setUp.begins!;
                const chain = (task: StatedTask): number =>
                    task.takes! +
                    Math.max(0, ...task.after.map((title) => chain(certain.find((each) => each.title === title)!)));
                const shared = certain.reduce((sum, task) => sum + task.takes! * (task.by?.count ?? 0), 0) / 3;
                expect(takes).toBeLessThanOrEqual(certain.reduce((sum, task) => sum + task.takes!, 0) + 1e-6);
                expect(takes).toBeGreaterThanOrEqual(Math.max(shared, ...certain.map(chain)) - 1e-6);
            }),
            { seed: 6, numRuns: 150 },
        );
    });
});
