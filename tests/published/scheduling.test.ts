/**
 * Flow lines, critical paths and list scheduling against quantities.md §14.2 (R22, R23) and §14.4, through the scheduler that
 * every plan is run with. Order of jobs is always the one printed; the scheduler is not asked to find the best.
 *
 * Not expressed here:
 * | id  | why                                                                                            |
 * | --- | ---------------------------------------------------------------------------------------------- |
 * | R1–R21 | racks, staff and room, no schedules: with the calculations they belong to                    |
 * | S8, S9, S11 by Johnson's rule | the plan serves in the order of the tables and never sorts jobs; the printed orders are run, and where an order is called optimal every other order is tried |
 */
import { describe, expect, it } from 'vitest';
import { criticalPath } from '../../packages/language/src/service/run/critical-path.js';
import { longestFirst, schedule } from '../../packages/language/src/service/run/engine.js';
import { durationOf, type Activity, type Network } from '../../packages/language/src/service/run/network.js';
import { chanceWithin, expectedTime, varianceOfTime } from '../../packages/language/src/service/run/three-point.js';

/** Pieces through one line in the order given. @param times of each piece, at each station */
const makespan = (times: readonly (readonly number[])[]): number =>
    schedule({ activities: times.map((duration) => ({ duration, pool: 0 })), pools: [1] }).finish;

function everyOrder<T>(items: readonly T[]): T[][] {
    return items.length < 2
        ? [[...items]]
        : items.flatMap((item, index) => everyOrder(items.toSpliced(index, 1)).map((rest) => [item, ...rest]));
}

const inOrderOf = <T>(names: string, jobs: Record<string, T>): T[] => [...names].map((name) => jobs[name]!);

describe('flow lines', () => {
    it('R22 (quantities 14.2): 300 plates in 20 min are one plate every 4.0 s', () => {
        expect(makespan(Array.from({ length: 300 }, () => [4]))).toBe(20 * 60);
    });
    it('R23 (quantities 14.2): stations of 3, 4, 2, 4 and 3 s pass the 300th plate after 1,212 s', () => {
        expect(makespan(Array.from({ length: 300 }, () => [3, 4, 2, 4, 3]))).toBe(16 + 299 * 4);
    });
    it('quantities 9: N pieces take the sum of the stations and N − 1 times the slowest', () => {
        const stations = [2.5, 1, 6, 6, 0.5];
        for (const pieces of [1, 2, 17]) {
            expect(makespan(Array.from({ length: pieces }, () => stations))).toBe(16 + (pieces - 1) * 6);
        }
    });
    it('S8 (trap): P O N M L takes 28; the printed 26 is when the first station has done, not the second', () => {
        const jobs = { L: [10, 2], M: [5, 4], N: [7, 5], O: [3, 6], P: [1, 7] };
        expect(makespan(inOrderOf('PONML', jobs))).toBe(28);
        expect(makespan(inOrderOf('PONML', jobs).map(([first]) => [first!]))).toBe(26);
        expect(Math.min(...everyOrder(Object.values(jobs)).map(makespan))).toBe(28);
    });
    it('S9 (trap): D A C B E F takes 43; the page prints 42 in one place and 39 in another', () => {
        // The second station has D A C B without a gap from 2 to 35 and E to 38; F leaves the first at 42 and takes 1 more.
        const jobs = { A: [3, 8], B: [12, 10], C: [5, 9], D: [2, 6], E: [9, 3], F: [11, 1] };
        expect(makespan(inOrderOf('DACBEF', jobs))).toBe(43);
    });
    it('S11: B E A C D takes 35 and no order less; C E D B A of the second set 38, and no order less', () => {
        const first = { A: [5, 8], B: [3, 9], C: [8, 7], D: [7, 2], E: [4, 6] };
        expect(makespan(inOrderOf('BEACD', first))).toBe(35);
        expect(Math.min(...everyOrder(Object.values(first)).map(makespan))).toBe(35);
        const second = { A: [5, 2], B: [9, 3], C: [8, 7], D: [5, 4], E: [9, 6] };
        expect(makespan(inOrderOf('CEDBA', second))).toBe(38);
        expect(Math.min(...everyOrder(Object.values(second)).map(makespan))).toBe(38);
    });
});

/** Activities on arcs: each comes after all that end where it begins. @param arcs `1-2 7` */
function arcs(text: string): Network & { readonly names: string[] } {
    const list = text.split(', ').map((each) => {
        const [, name, from, to, time] = /^((\d+)-(\d+)) (\d+)$/.exec(each)!;
        return { name: name!, from, to, duration: Number(time) };
    });
    return {
        names: list.map(({ name }) => name),
        pools: [],
        activities: list.map(({ from, duration }) => ({
            duration,
            after: list.flatMap(({ to }, index) => (to === from ? [index] : [])),
        })),
    };
}

/** Activities by letter. @param rows `D 6 after C, E` */
function letters(text: string): Network & { readonly names: string } {
    const rows = text.split('; ').map((row) => /^(\w) ([\d.]+)(?: after (.+))?$/.exec(row)!);
    const names = rows.map(([, name]) => name).join('');
    return {
        names,
        pools: [],
        activities: rows.map(([, , time, after]) => ({
            duration: Number(time),
            after: after?.split(', ').map((name) => names.indexOf(name)),
        })),
    };
}

const criticalNames = (network: Network & { readonly names: string | readonly string[] }): string =>
    criticalPath(network)
        .critical.map((index) => network.names[index])
        .join(' ');

describe('critical paths', () => {
    const s1 = arcs('1-2 7, 1-3 10, 2-4 6, 3-4 5, 3-5 4, 4-5 3, 5-6 2');
    const s2 = arcs('1-2 8, 1-3 10, 1-4 9, 2-5 6, 2-6 4, 3-5 5, 4-5 0, 4-7 7, 5-7 12, 5-8 15, 6-9 18, 7-8 4, 8-9 7');
    const s3 = letters(
        'A 2; B 4 after A; C 10 after B; D 6 after C; E 4 after C; F 5 after E; G 7 after D; H 9 after E, G; I 7 after C; ' +
            'J 8 after F, I; K 4 after J; L 5 after J; M 2 after H; N 6 after K, L',
    );
    const s4 = letters(
        'A 7; B 11 after A; C 12 after A; D 9 after A; E 2 after B; F 10 after B, C; G 3 after C; H 2 after D, E, F, G; ' +
            'I 6 after D; J 8 after H, I',
    );

    it('S1 (TAYL 4): 20, slack 2 0 2 0 4 0 0, critical 1-3-4-5-6', () => {
        const path = criticalPath(s1);
        expect(path.finish).toBe(20);
        expect([...path.slack]).toEqual([2, 0, 2, 0, 4, 0, 0]);
        expect(criticalNames(s1)).toBe('1-3 3-4 4-5 5-6');
    });
    it('S2 (TAYL 5): 38, the printed slacks, critical 1-3-5-7-8-9', () => {
        const path = criticalPath(s2);
        expect(path.finish).toBe(38);
        expect([...path.slack]).toEqual([1, 0, 6, 1, 8, 0, 6, 11, 0, 1, 8, 0, 0]);
        expect(criticalNames(s2)).toBe('1-3 3-5 5-7 7-8 8-9');
    });
    it('S3 (HILL): 44, critical A B C E F J L N, floats D 4 G 4 H 4 I 2 K 1 M 4; 79 one after the other', () => {
        const path = criticalPath(s3);
        expect(path.finish).toBe(44);
        expect(criticalNames(s3)).toBe('A B C E F J L N');
        const floats = [...s3.names].flatMap((name, index) =>
            path.slack[index]! > 0 ? [name, path.slack[index]] : [],
        );
        expect(floats).toEqual(['D', 4, 'G', 4, 'H', 4, 'I', 2, 'K', 1, 'M', 4]);
        expect(s3.activities.reduce((sum, activity) => sum + durationOf(activity), 0)).toBe(79);
    });
    it('S4 (STUD): 70 in all, 39 via A C F H J; the printed sums 30, 38 and 32 are of other paths', () => {
        expect(s4.activities.reduce((sum, activity) => sum + durationOf(activity), 0)).toBe(70);
        expect(criticalPath(s4).finish).toBe(39);
        expect(criticalNames(s4)).toBe('A C F H J');
        const path = (names: string): number =>
            [...names].reduce((sum, name) => sum + durationOf(s4.activities[s4.names.indexOf(name)]!), 0);
        expect([path('ABEHJ'), path('ABFHJ'), path('ACGHJ')]).toEqual([30, 38, 32]);
    });
    it('the scheduler without anybody to wait for starts everything at its earliest', () => {
        for (const network of [s1, s2, s3, s4]) {
            const { start, finish } = schedule(network);
            expect(finish).toBe(criticalPath(network).finish);
            expect(start).toEqual(criticalPath(network).earliestStart);
        }
    });
    it('S3 with one pair of hands takes the sum, 79', () => {
        const activities = s3.activities.map((activity): Activity => ({ ...activity, pool: 0 }));
        expect(schedule({ activities, pools: [1] }, longestFirst({ activities, pools: [1] })).finish).toBe(79);
    });
    it('S5 (HEIZ): three-point times, expected 260, critical A C D G H I L, variance 319.44, 0.712 within 270', () => {
        const rows: Record<string, [least: number, likely: number, most: number, after: string]> = {
            A: [20, 30, 40, ''],
            B: [20, 65, 80, 'A'],
            C: [50, 60, 100, 'A'],
            D: [30, 50, 100, 'C'],
            E: [25, 30, 35, 'B'],
            F: [0.1, 0.1, 0.1, 'E'],
            G: [25, 30, 35, 'DE'],
            H: [10, 20, 30, 'G'],
            I: [20, 25, 60, 'H'],
            J: [8, 10, 12, 'H'],
            K: [0.1, 0.1, 0.1, 'J'],
            L: [20, 25, 60, 'IK'],
        };
        const names = Object.keys(rows);
        const points = Object.values(rows).map(([least, likely, most]) => ({ least, likely, most }));
        const network = {
            names,
            pools: [],
            activities: Object.values(rows).map(([, , , after], index) => ({
                duration: expectedTime(points[index]!),
                after: [...after].map((name) => names.indexOf(name)),
            })),
        };
        const path = criticalPath(network);
        expect(path.finish).toBeCloseTo(260, 9);
        expect(criticalNames(network)).toBe('A C D G H I L');
        const variance = path.critical.reduce((sum, index) => sum + varianceOfTime(points[index]!), 0);
        expect(variance).toBeCloseTo(319.44, 2);
        expect(Math.sqrt(variance)).toBeCloseTo(17.87, 2);
        expect(chanceWithin(270, path.finish, variance)).toBeCloseTo(0.712, 3);
    });
});

describe('list scheduling', () => {
    const machines = (count: number, jobs: readonly number[]): Network => ({
        activities: jobs.map((duration) => ({ duration, pool: 0 })),
        pools: [count],
    });
    const asWritten = (network: Network): number => schedule(network).finish;
    const longest = (network: Network): number => schedule(network, longestFirst(network)).finish;

    it('S6 (LPTW): 4 5 6 7 8 on two take 18 as written, 17 longest first, 15 at best', () => {
        const jobs = [4, 5, 6, 7, 8];
        expect(asWritten(machines(2, jobs))).toBe(18);
        expect(longest(machines(2, jobs))).toBe(17);
        const best = Math.min(...everyOrder(jobs).map((order) => asWritten(machines(2, order))));
        expect(best).toBe(15);
        expect(17 / best).toBeLessThanOrEqual(4 / 3 - 1 / 6);
    });
    it('S6 (LPTW): on three, 13 as written and 11 longest first, which is the best', () => {
        const jobs = [4, 5, 6, 7, 8];
        expect(asWritten(machines(3, jobs))).toBe(13);
        expect(longest(machines(3, jobs))).toBe(11);
        expect(Math.min(...everyOrder(jobs).map((order) => asWritten(machines(3, order))))).toBe(11);
    });
    it('S7: longest first takes 15 on four where 12 can be had: the bound 4/3 − 1/12 is reached', () => {
        const jobs = [7, 7, 6, 6, 5, 5, 4, 4, 4];
        expect(longest(machines(4, jobs))).toBe(15);
        // 48 on four is 12 at the least, and this order reaches it.
        expect(asWritten(machines(4, [7, 7, 6, 4, 4, 6, 5, 5, 4]))).toBe(12);
        expect(15 / 12).toBe(4 / 3 - 1 / 12);
    });
});
