import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestFirst, schedule } from './engine.js';
import { inOrder, type Activity } from './network.js';

describe('the scheduler', () => {
    it('starts what is first in order when somebody is free, and never stops what has begun', () => {
        const activities = [
            { duration: 5, pool: 0 },
            { duration: 1, pool: 0, release: 1 },
            { duration: 1, pool: 0, release: 2 },
        ];
        expect([...schedule({ activities, pools: [1] }, [0, 2, 1]).start]).toEqual([0, 6, 5]);
        expect([...schedule({ activities, pools: [1] }).start]).toEqual([0, 5, 6]);
    });
    it('looks at what becomes ready at a moment before anybody is put to work at it', () => {
        // The third is ready at once, through a milestone that takes no time, and comes first.
        const activities = [{ duration: 1, pool: 0 }, { duration: 0 }, { duration: 1, pool: 0, after: [1] }];
        expect([...schedule({ activities, pools: [1] }, [1, 0, 0]).start]).toEqual([1, 0, 0]);
    });
    it('takes whoever has been free longest', () => {
        const activities = [3, 1, 1, 1].map((duration) => ({ duration, pool: 0 }));
        expect([...schedule({ activities, pools: [3] }).unit]).toEqual([0, 1, 2, 1]);
    });
    it('lets what fits go ahead of what takes more people than are free', () => {
        const activities = [
            { duration: 4, pool: 0 },
            { duration: 2, pool: 0, units: 3 },
            { duration: 1, pool: 0 },
        ];
        const { start, together } = schedule({ activities, pools: [3] });
        expect([...start]).toEqual([0, 4, 0]);
        expect(together.get(1)).toEqual([0, 1, 2]);
    });
    it('keeps the time that must pass after a start or an end', () => {
        const activities: Activity[] = [
            { duration: 10, release: -5 },
            { duration: 1, after: [{ activity: 0, from: 'start', lag: 2 }] },
            { duration: 1, after: [{ activity: 0, from: 'end', lag: 3 }] },
        ];
        expect([...schedule({ activities, pools: [] }).start]).toEqual([-5, -3, 8]);
    });
    it('keeps pieces of a line in order and lets them wait between stations', () => {
        const activities = [
            [1, 5],
            [1, 5],
            [1, 1],
        ].map((duration) => ({ duration, pool: 0 }));
        const { start, end } = schedule({ activities, pools: [1] });
        expect([...start]).toEqual([0, 1, 2]);
        expect([...end]).toEqual([6, 11, 12]);
    });
    it('names those who wait for each other in a circle, and starts neither them nor what comes after', () => {
        const activities = [
            { duration: 1 },
            { duration: 1, after: [0, 3] },
            { duration: 1, after: [1] },
            { duration: 1, after: [2] },
            { duration: 1, after: [3] },
        ];
        expect(inOrder({ activities, pools: [] })).toEqual({ order: [0], circle: [2, 3, 1] });
        expect([...schedule({ activities, pools: [] }).start]).toEqual([0, NaN, NaN, NaN, NaN]);
    });
    it('leaves undone what takes more people than there are', () => {
        const activities = [
            { duration: 1, pool: 0, units: 3 },
            { duration: 1, pool: 0 },
        ];
        expect([...schedule({ activities, pools: [2] }).start]).toEqual([NaN, 0]);
    });
});

/** Random networks: links only go back, so that there is no circle. */
const networks = fc
    .array(
        fc.record({
            duration: fc.nat(9),
            pool: fc.option(fc.nat(1), { nil: undefined }),
            units: fc.integer({ min: 1, max: 2 }),
            links: fc.array(fc.record({ back: fc.integer({ min: 1, max: 6 }), lag: fc.nat(3), start: fc.boolean() }), {
                maxLength: 2,
            }),
        }),
        { minLength: 1, maxLength: 30 },
    )
    .map((drafts) => ({
        pools: [2, 3],
        activities: drafts.map(({ links, ...activity }, index): Activity => ({
            ...activity,
            after: links
                .filter(({ back }) => back <= index)
                .map(({ back, lag, start }) => ({ activity: index - back, from: start ? 'start' : 'end', lag })),
        })),
    }));

describe('whatever the network', () => {
    it('everything is done, after all it comes after, with never more people than there are, and none twice at once', () => {
        fc.assert(
            fc.property(networks, (network) => {
                const { start, end, unit, together } = schedule(network, longestFirst(network));
                network.activities.forEach(({ after = [], duration, pool, units = 1 }, index) => {
                    expect(end[index]).toBe(start[index]! + (duration as number));
                    for (const link of after) {
                        if (typeof link !== 'number') {
                            const from = link.from === 'start' ? start : end;
                            expect(start[index]!).toBeGreaterThanOrEqual(from[link.activity]! + link.lag);
                        }
                    }
                    const mine = together.get(index) ?? [unit[index]!];
                    expect(mine).toHaveLength(pool === undefined ? 1 : units);
                    network.activities.forEach((other, each) => {
                        const overlaps = each < index && start[each]! < end[index]! && start[index]! < end[each]!;
                        if (overlaps && pool !== undefined && other.pool === pool) {
                            const theirs = together.get(each) ?? [unit[each]!];
                            expect(theirs.filter((person) => mine.includes(person))).toEqual([]);
                        }
                    });
                });
            }),
        );
    });
    const jobs = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 6 });
    const machines = fc.integer({ min: 1, max: 3 });
    it('list scheduling takes at most 2 − 1/m of the best, and longest first 4/3 − 1/(3m) (quantities 9, Graham)', () => {
        fc.assert(
            fc.property(jobs, machines, (durations, units) => {
                const network = { activities: durations.map((duration) => ({ duration, pool: 0 })), pools: [units] };
                const best = shortest(durations, units);
                expect(schedule(network).finish).toBeLessThanOrEqual((2 - 1 / units) * best + 1e-9);
                const longest = schedule(network, longestFirst(network)).finish;
                expect(longest).toBeLessThanOrEqual((4 / 3 - 1 / (3 * units)) * best + 1e-9);
            }),
        );
    });
});

/** The least time in which so many machines can do the jobs: every way to share them out is tried. */
function shortest(
    jobs: readonly number[],
    machines: number,
    loads: readonly number[] = Array(machines).fill(0),
): number {
    const [job, ...rest] = jobs;
    return job === undefined
        ? Math.max(...loads)
        : Math.min(...loads.map((load, machine) => shortest(rest, machines, loads.with(machine, load + job))));
}
