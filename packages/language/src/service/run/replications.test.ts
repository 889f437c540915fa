import { describe, expect, it } from 'vitest';
import type { Evening } from './evening.js';
import { evening as usual } from '../../../../../tests/support/simulated-evenings.js';
import { MOST_REPLICATIONS, replicate } from './replications.js';

const evening = usual();
const asked = { evening, count: 60, seed: 7, window: 5 };

describe('replications', () => {
    it('are the same for the same seed, and others for another', () => {
        const once = replicate(asked);
        expect(replicate(structuredClone(asked))).toEqual(once);
        expect(replicate({ ...asked, seed: 8 }).courses).not.toEqual(once.courses);
    });
    it('tell nothing new where nothing varies', () => {
        const courses = evening.courses.map((course) => ({ ...course, spread: 0 }));
        const still: Evening = { ...evening, courses, pace: { ...evening.pace, tripSpread: 0 } };
        for (const { chance, due, starts } of replicate({ ...asked, evening: still }).courses) {
            expect(chance).toBe(1);
            expect(starts).toEqual({ first: due, last: due });
        }
    });
    it('are less sure of a course the more eating times vary, and surer the wider its window', () => {
        const chance = (spread: number, window: number) => {
            const courses = evening.courses.map((course) => ({ ...course, spread }));
            return replicate({ ...asked, window, evening: { ...evening, courses } }).courses[1]!.chance;
        };
        expect(chance(8, 2)).toBeLessThan(chance(1, 2));
        expect(chance(8, 8)).toBeGreaterThan(chance(8, 2));
    });
    it('count a stated start, which a course never comes before', () => {
        const courses = evening.courses.map((course, index) => ({ ...course, startsAt: index === 1 ? 30 : undefined }));
        const [, main] = replicate({ ...asked, evening: { ...evening, courses } }).courses;
        expect(main!.due).toBe(30);
        expect(main!.starts.first).toBeGreaterThanOrEqual(30);
        expect(main!.chance).toBe(1);
    });
    it('stop where more tell no more, and say so', () => {
        expect(
            replicate({ ...asked, count: 1e9, evening: { ...evening, tables: evening.tables.slice(0, 1) } }),
        ).toMatchObject({
            asked: 1e9,
            count: MOST_REPLICATIONS,
        });
    });
});
