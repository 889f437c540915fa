import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseRemedy, costOf, type Choice, type StockProblem } from './choose-remedy.js';
import { finishTimes, windowsOf, type WashJob } from './dish-room-schedule.js';
import { up } from './lots.js';

/** Tries every set of washes and substitutions, and rents what is then short. Knows the rules, not the integer program. */
function cheapestByTrying(problem: StockProblem): number {
    const { pieces, washes, substitutions, lot } = problem;
    let best = Infinity;
    for (let set = 0; set < 1 << (washes.length + substitutions.length); set++) {
        const washed = washes.flatMap((_, index) => ((set >> index) & 1 ? [index] : []));
        const swapped = substitutions.flatMap((_, index) => ((set >> (washes.length + index)) & 1 ? [index] : []));
        if (!isAllowed(problem, washed, swapped)) {
            continue;
        }
        const lots = pieces.map(({ onHand, inUse, spare }, piece) => {
            const used =
                inUse -
                washed.reduce((sum, wash) => sum + (washes[wash]!.piece === piece ? washes[wash]!.saves : 0), 0) +
                swapped.reduce((sum, swap) => {
                    const { piece: from, by, count } = substitutions[swap]!;
                    return sum - (from === piece ? count : 0) + (by === piece ? count : 0);
                }, 0);
            return up(Math.max(0, used + up(spare * used) - onHand) / lot);
        });
        best = Math.min(best, costOf(problem, { washes: washed, substitutions: swapped, lots }));
    }
    return best;
}

function isAllowed(problem: StockProblem, washed: readonly number[], swapped: readonly number[]): boolean {
    const washes = washed.map((index) => problem.washes[index]!);
    const swaps = swapped.map((index) => problem.substitutions[index]!);
    const isOnce = (keys: readonly unknown[]): boolean => new Set(keys).size === keys.length;
    const jobs = [...washes.map((wash) => wash.job), ...problem.jobs];
    const finished = finishTimes(jobs);
    return (
        isOnce(washes.map((wash) => `${wash.piece} ${wash.after}`)) &&
        isOnce(washes.map((wash) => `${wash.piece} ${wash.for}`)) &&
        isOnce(swaps.map((swap) => swap.site)) &&
        !swaps.some((swap) =>
            washes.some(
                (wash) =>
                    [swap.piece, swap.by].includes(wash.piece) &&
                    (swap.courses.includes(wash.after) || swap.courses.includes(wash.for)),
            ),
        ) &&
        // What the dish room washes anyway and is late with already does not count against what is chosen beside it.
        (washes.length === 0 || jobs.every((job, index) => finished[index]! <= job.due + 1e-9))
    );
}

const job: fc.Arbitrary<WashJob> = fc.record({
    release: fc.integer({ min: 0, max: 3 }).map((course) => course * 20),
    due: fc.integer({ min: 2, max: 6 }).map((course) => course * 20),
    work: fc.integer({ min: 1, max: 40 }),
});

/** Up to four pieces, three washes and three substitutions: every case that can be tried out. */
const problem: fc.Arbitrary<StockProblem> = fc.integer({ min: 1, max: 4 }).chain((count) => {
    const piece = fc.integer({ min: 0, max: count - 1 });
    return fc.record({
        pieces: fc.array(
            fc.record({
                onHand: fc.integer({ min: 0, max: 40 }),
                inUse: fc.integer({ min: 20, max: 60 }),
                spare: fc.constantFrom(0, 0.05, 0.1),
            }),
            { minLength: count, maxLength: count },
        ),
        washes: fc.array(
            fc
                .record({
                    piece,
                    after: fc.integer({ min: 0, max: 2 }),
                    for: fc.integer({ min: 3, max: 4 }),
                    count: fc.integer({ min: 1, max: 10 }),
                    overset: fc.integer({ min: 0, max: 2 }),
                    job,
                })
                .map(({ overset, ...wash }) => ({ ...wash, saves: wash.count + overset })),
            { maxLength: 3 },
        ),
        // What is washed anyway can be done in time: a wash that can't is a finding of its own.
        jobs: fc
            .array(job, { maxLength: 1 })
            .map((jobs) => jobs.filter(({ release, due, work }) => release + work <= due)),
        substitutions: fc.array(
            fc
                .record({
                    piece,
                    by: piece,
                    count: fc.integer({ min: 1, max: 10 }),
                    site: fc.integer({ min: 0, max: 2 }),
                    courses: fc.subarray([0, 1, 2, 3, 4], { minLength: 1, maxLength: 2 }),
                })
                .filter(({ piece: from, by }) => from !== by || count === 1)
                .map((swap) => (swap.piece === swap.by ? { ...swap, count: 0 } : swap)),
            { maxLength: 3 },
        ),
        lot: fc.constantFrom(1, 1, 12),
        isDelivered: fc.boolean(),
        costs: fc.record({
            rent: fc.integer({ min: 0, max: 5 }),
            delivery: fc.integer({ min: 0, max: 60 }),
            wash: fc.integer({ min: 0, max: 5 }),
            substitute: fc.integer({ min: 0, max: 5 }),
        }),
    });
});

describe('what to wash, substitute and rent', () => {
    it('costs what the cheapest of all possible choices costs', () => {
        fc.assert(
            fc.property(problem, (given) => {
                const choice: Choice = chooseRemedy(given);
                expect(choice.isProved).toBe(true);
                expect(choice.cost).toBeCloseTo(cheapestByTrying(given), 6);
            }),
            { seed: 3, numRuns: 2000 },
        );
    });

    it('does so in every small case: two pieces, two washes, two other pieces', () => {
        const pick = <T>(...values: readonly T[]): readonly T[] => values;
        const job = (work: number): WashJob => ({ release: 0, due: 30, work });
        const washes = [
            { piece: 0, after: 0, for: 1, count: 2, saves: 2, job: job(20) },
            { piece: 1, after: 0, for: 1, count: 1, saves: 2, job: job(15) },
        ];
        const substitutions = [
            { piece: 0, by: 1, count: 2, site: 0, courses: [2] },
            { piece: 1, by: 0, count: 1, site: 1, courses: [1] },
        ];
        const subsets = <T>(all: readonly T[]): T[][] =>
            all.reduce<T[][]>((sets, each) => [...sets, ...sets.map((set) => [...set, each])], [[]]);
        const costs = pick(
            { rent: 1, delivery: 3, wash: 0.25, substitute: 0.5 },
            { rent: 2, delivery: 0, wash: 3, substitute: 1 },
        );
        let cases = 0;
        const cheaper: unknown[] = [];
        for (const inUse of pick([2, 2], [2, 4], [4, 2], [4, 4], [3, 5])) {
            for (const onHand of pick([0, 0], [0, 4], [1, 2], [2, 1], [3, 3], [4, 0], [6, 6])) {
                for (const spare of pick(0, 0.5)) {
                    for (const lot of pick(1, 3)) {
                        for (const cost of costs) {
                            for (const isDelivered of pick(true, false)) {
                                for (const some of subsets(washes)) {
                                    for (const others of subsets(substitutions)) {
                                        const given: StockProblem = {
                                            pieces: inUse.map((count, piece) => ({
                                                inUse: count,
                                                onHand: onHand[piece]!,
                                                spare,
                                            })),
                                            ...{ washes: some, jobs: [], substitutions: others, lot, isDelivered },
                                            costs: cost,
                                        };
                                        cases += 1;
                                        const found = chooseRemedy(given).cost;
                                        if (Math.abs(found - cheapestByTrying(given)) > 1e-9) {
                                            cheaper.push(given);
                                        }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
        expect(cases).toBe(5 * 7 * 2 * 2 * 2 * 2 * 4 * 4);
        expect(cheaper).toEqual([]);
    });

    it('leaves nothing short, and nothing late', () => {
        fc.assert(
            fc.property(problem, (given) => {
                const { washes, substitutions, lots } = chooseRemedy(given);
                expect(isAllowed(given, washes, substitutions)).toBe(true);
                given.pieces.forEach(({ onHand, inUse, spare }, piece) => {
                    const used =
                        inUse -
                        washes
                            .map((wash) => given.washes[wash]!)
                            .reduce((sum, wash) => sum + (wash.piece === piece ? wash.saves : 0), 0) +
                        substitutions
                            .map((swap) => given.substitutions[swap]!)
                            .reduce(
                                (sum, { piece: from, by, count }) =>
                                    sum - (from === piece ? count : 0) + (by === piece ? count : 0),
                                0,
                            );
                    expect(used + up(spare * used)).toBeLessThanOrEqual(onHand + lots[piece]! * given.lot);
                });
            }),
            { seed: 5, numRuns: 500 },
        );
    });
});

describe('the dish room', () => {
    it('is late with something exactly where a span holds more work than minutes', () => {
        fc.assert(
            fc.property(fc.array(job, { minLength: 1, maxLength: 6 }), (jobs) => {
                const finished = finishTimes(jobs);
                const isInTime = jobs.every(({ due }, index) => finished[index]! <= due + 1e-9);
                const fits = windowsOf(jobs).every(
                    ({ minutes, jobs: inside }) =>
                        inside.reduce((sum, index) => sum + jobs[index]!.work, 0) <= minutes + 1e-9,
                );
                expect(fits).toBe(isInTime);
            }),
            { seed: 7, numRuns: 2000 },
        );
    });

    it('comes to an end whatever the figures are', () => {
        const minutes = fc.double({ min: 0, max: 200, noNaN: true });
        const any = fc.record({ release: minutes, due: minutes, work: fc.double({ min: 0, max: 60, noNaN: true }) });
        fc.assert(
            fc.property(fc.array(any, { minLength: 1, maxLength: 5 }), (jobs) => {
                const finished = finishTimes(jobs);
                jobs.forEach(({ release, work }, index) =>
                    expect(finished[index]!).toBeGreaterThanOrEqual(release + work - 1e-9),
                );
            }),
            { seed: 13, numRuns: 2000 },
        );
    });

    it('never works before the pieces come, nor longer than it must', () => {
        fc.assert(
            fc.property(fc.array(job, { minLength: 1, maxLength: 6 }), (jobs) => {
                const finished = finishTimes(jobs);
                jobs.forEach(({ release, work }, index) =>
                    expect(finished[index]!).toBeGreaterThanOrEqual(release + work),
                );
                const last =
                    Math.max(...jobs.map((each) => each.release)) + jobs.reduce((sum, each) => sum + each.work, 0);
                expect(Math.max(...finished)).toBeLessThanOrEqual(last);
            }),
            { seed: 9, numRuns: 500 },
        );
    });
});
