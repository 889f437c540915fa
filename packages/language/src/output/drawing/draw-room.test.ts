import { describe, expect, it } from 'vitest';
import { crowdedWords, wordsInPicture } from '../../../../../tests/support/words-in-picture.js';
import { check } from '../../check.js';
import { filesInMemory } from '../../plan/files.js';
import { roomPicture } from './pictures.js';
import type { Lettering } from './svg.js';

function pictureOf(room: string, lettering?: Lettering): string {
    const checked = check('a.cover', filesInMemory({ 'a.cover': `event "Supper" { guests 40 }\n${room}` }));
    return roomPicture(checked, undefined, lettering)!;
}

describe('the drawn room', () => {
    it.each(['left', 'right'])('names the pass off the tables before it: %s wall', (wall) => {
        const room = `room "Long gallery" 40 m by 25 m { pass on the ${wall}  table T1 to T38: round 60 inch, 8 seats }`;
        const svg = pictureOf(room, { printedWidth: 200 });
        expect(crowdedWords(svg)).toEqual([]);
        const [pass] = wordsInPicture(svg).filter(({ words }) => words === 'pass');
        const [left, right] = [0, 1].map((corner) => pass!.corners[corner]![0]) as [number, number];
        const [top, bottom] = [1, 2].map((corner) => pass!.corners[corner]![1]) as [number, number];
        const tables = [...svg.matchAll(/<g (?=[^>]*class="table")[^>]*translate\(([\d.]+) ([\d.]+)\)/g)];
        expect(tables).toHaveLength(38);
        for (const [, x, y] of tables) {
            // 60 inches across.
            const across = Math.max(left - Number(x), Number(x) - right, 0);
            const down = Math.max(top - Number(y), Number(y) - bottom, 0);
            expect(Math.hypot(across, down)).toBeGreaterThan(762);
        }
    });

    it('names the pass beside it where there is room', () => {
        const svg = pictureOf('room "Parlour" 18 m by 11 m { table T1 to T3: round 60 inch, 8 seats }');
        const [, y] = /class="pass" cx="[\d.]+" cy="([\d.]+)"/.exec(svg)!;
        const [, baseline] = /y="([\d.]+)" text-anchor="start">pass</.exec(svg)!;
        expect(Math.abs(Number(baseline) - Number(y))).toBeLessThan(120);
    });
});
