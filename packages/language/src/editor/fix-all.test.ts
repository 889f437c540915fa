import { describe, expect, it } from 'vitest';
import { filesInMemory } from '../plan/files.js';
import { fixAll } from './fix-all.js';

const HEAD = 'event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }\n';

describe('fixing all', () => {
    it('applies what is surely meant, and more where it is told to', () => {
        const text = 'house "Saltmarsh Hall" {\n    own 4 dinner-frok, 6 soup-spoon\n    spare 5\n}\n';
        const files = filesInMemory({ 'house.cover': text.replace('5\n', '5 percent\n') });
        const safe = fixAll('house.cover', files, 'safe');
        expect(safe.texts.get('house.cover')).toBe(text.replace('spare 5', 'spare 5 %'));
        const unsafe = fixAll('house.cover', files, 'unsafe');
        expect(unsafe.texts.get('house.cover')).toBe(
            text.replace('spare 5', 'spare 5 %').replace('dinner-frok', 'dinner-fork'),
        );
        expect(unsafe.checked.findings).toEqual([]);
        expect(unsafe.applied.map(({ rule }) => rule)).toEqual(['unknown-name', 'written-otherwise']);
    });

    it('leaves open what only the writer can tell', () => {
        const files = filesInMemory({ 'room.cover': 'room "Long gallery" {\n    at 21\n}\n' });
        const { texts, applied, rounds, checked } = fixAll('room.cover', files, 'unsafe');
        expect({ texts: [...texts], applied, rounds }).toEqual({ texts: [], applied: [], rounds: 0 });
        expect(checked.findings.map(({ rule }) => rule)).toEqual(['missing-unit']);
    });

    it('goes on while one fix makes room for the next, over files', () => {
        const files = filesInMemory({
            'hall/house.cover': 'house "Saltmarsh Hall" {\n    own 40 soup-spon\n}\n',
            'hall/supper.cover': `use "house.cover"\n${HEAD}menu {\n    course soup "Broth" {\n        served in soup-bowl on dinner-plate at 64 °C\n        lasts 15 min\n        contains nothing\n    }\n}\n`,
        });
        const { texts, rounds, checked } = fixAll('hall/supper.cover', files, 'unsafe');
        expect([...texts.keys()].sort()).toEqual(['hall/house.cover', 'hall/supper.cover']);
        expect(texts.get('hall/house.cover')).toContain('own 40 soup-spoon');
        expect(texts.get('hall/supper.cover')).toContain('served in soup-bowl warmed on dinner-plate at 64 °C');
        expect(rounds).toBeGreaterThan(0);
        expect(checked.findings).toEqual([]);
    });

    it('mends words in a file that cannot be read to its end, and nothing else, where that makes a line of sense', () => {
        const files = filesInMemory({
            'house.cover': 'house "Saltmarsh Hall" {\n    spare 5 percent\n    own 4 dinner-frok\n    own own\n}\n',
            'guests.cover':
                'seating {\n    A. Reed at T1, no milk\n    "B. Holm" at T1, vegan\n    "C. Park", pleased\n}\n',
        });
        const house = 'house "Saltmarsh Hall" {\n    spare 5 %\n    own 4 dinner-fork\n    own own\n}\n';
        expect([...fixAll('house.cover', files, 'unsafe').texts]).toEqual([['house.cover', house]]);
        const guests = fixAll('guests.cover', files, 'unsafe');
        expect(guests.texts.get('guests.cover')).toBe(
            'seating {\n    "A. Reed" at T1, without milk\n    "B. Holm" at T1, is vegan\n    "C. Park", is pleased\n}\n',
        );
        expect(guests.checked.findings).toEqual([]);
        expect([...fixAll('guests.cover', files, 'safe').texts]).toEqual([]);
    });
});
