/**
 * Set-up against the scheduling examples of quantities.md §14.4 and the formulas of §9, through the plan itself: each example is
 * written as a `setup` block. Dropped: S8, S9 and S11 (jobs that pass two stations in one order) are no set-up; the plating lines
 * are tested with them. S10 is not in the dossier.
 */
import { describe, expect, it } from 'vitest';
import { check } from '../../packages/language/src/check.js';
import { filesInMemory } from '../../packages/language/src/plan/files.js';
import type { Preparations } from '../../packages/language/src/service/preparations/types.js';

function prepared(tasks: string, laying = '', team = ''): Preparations {
    const text = `house "Saltmarsh Hall" { laying { briefing: 0 min  line-up: 0 min  ${laying} } }
event "Evening" { date 2026-10-17  zone America/New_York  doors 18:30  seated 19:00 }
${team}
setup { ${tasks} }`;
    return check('evening.cover', filesInMemory({ 'evening.cover': text })).service.preparations!;
}

const task = (title: string, takes: number | string, after: readonly string[] = []): string =>
    `task "${title}" takes ${typeof takes === 'number' ? `${takes} min` : takes}${
        after.length > 0 ? `, after ${after.map((each) => `"${each}"`).join(' and ')}` : ''
    }`;

/** Activities on arcs `i-j`: each comes after those that end where it begins. */
function onArcs(arcs: readonly (readonly [string, number])[]): string {
    const [from, to] = [0, 1].map((end) => (arc: string) => arc.split('-')[end]!);
    return arcs
        .map(([arc, takes]) =>
            task(
                arc,
                takes,
                arcs.map(([other]) => other).filter((other) => to!(other) === from!(arc)),
            ),
        )
        .join('\n');
}

const length = ({ setUp, doors }: Preparations): number => Number((doors - setUp.begins!).toFixed(6));
const slackOf = ({ setUp }: Preparations): Record<string, number> =>
    Object.fromEntries(setUp.tasks.map(({ title, slack }) => [title, slack]));
const critical = ({ setUp }: Preparations): string[] =>
    setUp.tasks.filter(({ isCritical }) => isCritical).map(({ title }) => title);

describe('critical paths and slacks (quantities 9, CPM)', () => {
    it('S1 (TAYL 4): duration 20, critical 1-3-4-5-6', () => {
        const of = prepared(
            onArcs([
                ['1-2', 7],
                ['1-3', 10],
                ['2-4', 6],
                ['3-4', 5],
                ['3-5', 4],
                ['4-5', 3],
                ['5-6', 2],
            ]),
        );
        expect(length(of)).toBe(20);
        expect(slackOf(of)).toEqual({ '1-2': 2, '1-3': 0, '2-4': 2, '3-4': 0, '3-5': 4, '4-5': 0, '5-6': 0 });
        expect(critical(of)).toEqual(['1-3', '3-4', '4-5', '5-6']);
    });
    it('S2 (TAYL 5): duration 38 with a dummy of no time, critical 1-3-5-7-8-9', () => {
        const of = prepared(
            onArcs([
                ['1-2', 8],
                ['1-3', 10],
                ['1-4', 9],
                ['2-5', 6],
                ['2-6', 4],
                ['3-5', 5],
                ['4-5', 0],
                ['4-7', 7],
                ['5-7', 12],
                ['5-8', 15],
                ['6-9', 18],
                ['7-8', 4],
                ['8-9', 7],
            ]),
        );
        expect(length(of)).toBe(38);
        expect(slackOf(of)).toEqual({
            '1-2': 1,
            '1-3': 0,
            '1-4': 6,
            '2-5': 1,
            '2-6': 8,
            '3-5': 0,
            '4-5': 6,
            '4-7': 11,
            '5-7': 0,
            '5-8': 1,
            '6-9': 8,
            '7-8': 0,
            '8-9': 0,
        });
        expect(critical(of)).toEqual(['1-3', '3-5', '5-7', '7-8', '8-9']);
    });
    it('S3 (HILL): duration 44, critical A B C E F J L N', () => {
        const of = prepared(
            [
                task('A', 2),
                task('B', 4, ['A']),
                task('C', 10, ['B']),
                task('D', 6, ['C']),
                task('E', 4, ['C']),
                task('F', 5, ['E']),
                task('G', 7, ['D']),
                task('H', 9, ['E', 'G']),
                task('I', 7, ['C']),
                task('J', 8, ['F', 'I']),
                task('K', 4, ['J']),
                task('L', 5, ['J']),
                task('M', 2, ['H']),
                task('N', 6, ['K', 'L']),
            ].join('\n'),
        );
        expect(length(of)).toBe(44);
        expect(critical(of)).toEqual(['A', 'B', 'C', 'E', 'F', 'J', 'L', 'N']);
        expect(slackOf(of)).toMatchObject({ D: 4, G: 4, H: 4, I: 2, K: 1, M: 4 });
    });
    it('S4 (STUD): duration 39 by A C F H J, the work of all tasks 70', () => {
        const of = prepared(
            [
                task('A', 7),
                task('B', 11, ['A']),
                task('C', 12, ['A']),
                task('D', 9, ['A']),
                task('E', 2, ['B']),
                task('F', 10, ['B', 'C']),
                task('G', 3, ['C']),
                task('H', 2, ['D', 'E', 'F', 'G']),
                task('I', 6, ['D']),
                task('J', 8, ['H', 'I']),
            ].join('\n'),
        );
        expect(length(of)).toBe(39);
        expect(critical(of)).toEqual(['A', 'C', 'F', 'H', 'J']);
        expect(of.setUp.tasks.reduce((sum, { work }) => sum + work, 0)).toBe(70);
    });
});

describe('S5 (HEIZ): tasks of uncertain length (quantities 9, PERT)', () => {
    const three = (title: string, least: number, likely: number, most: number, after: readonly string[] = []): string =>
        `${task(title, `${likely} min, between ${least} min and ${most} min`, after)}`;
    const tasks = [
        three('A', 20, 30, 40),
        three('B', 20, 65, 80, ['A']),
        three('C', 50, 60, 100, ['A']),
        three('D', 30, 50, 100, ['C']),
        three('E', 25, 30, 35, ['B']),
        three('F', 0.1, 0.1, 0.1, ['E']),
        three('G', 25, 30, 35, ['D', 'E']),
        three('H', 10, 20, 30, ['G']),
        three('I', 20, 25, 60, ['H']),
        three('J', 8, 10, 12, ['H']),
        three('K', 0.1, 0.1, 0.1, ['J']),
        three('L', 20, 25, 60, ['I', 'K']),
    ].join('\n');

    it('expects 260 min along A C D G H I L, with a variance of 319.44', () => {
        const of = prepared(tasks, 'ready-chance: 50 %');
        expect(length(of)).toBeCloseTo(260, 6);
        expect(critical(of)).toEqual(['A', 'C', 'D', 'G', 'H', 'I', 'L']);
        expect(of.setUp.chance.mean).toBeCloseTo(260, 6);
        expect(of.setUp.chance.variance).toBeCloseTo(319.44, 2);
        expect(Math.sqrt(of.setUp.chance.variance)).toBeCloseTo(17.87, 2);
    });
    it('is ready within 270 min with a chance of 0.712', () => {
        const of = prepared(tasks, 'ready-chance: 90 %  get-in: 270 min');
        expect(of.setUp.chance.available).toBeCloseTo(270, 6);
        expect(of.setUp.chance.inTime).toBeCloseTo(0.712, 3);
    });
    it('is begun so much earlier that it is ready nine times of ten', () => {
        const of = prepared(tasks, 'ready-chance: 90 %');
        // 1.2816 standard deviations, as any table of the normal distribution has it.
        expect(length(of)).toBeCloseTo(260 + 1.2816 * 17.873, 1);
        expect(of.setUp.chance.inTime).toBeCloseTo(0.9, 6);
    });
});

describe('people who are too few for everything at once', () => {
    const jobs = (minutes: readonly number[], servers: number): number =>
        length(
            prepared(
                minutes.map((each, index) => `${task(`Job ${index}`, each)}, by 1 server`).join('\n'),
                'get-in: any-time',
                `team { servers ${servers} }`,
            ),
        );

    it('S6 (LPTW): longest first, 17 for two and 11, the optimum, for three', () => {
        expect(jobs([4, 5, 6, 7, 8], 2)).toBe(17);
        expect(jobs([4, 5, 6, 7, 8], 3)).toBe(11);
    });
    it('S7: the tight case for four, 15 where 12 would be best', () => {
        expect(jobs([7, 7, 6, 6, 5, 5, 4, 4, 4], 4)).toBe(15);
    });
});
