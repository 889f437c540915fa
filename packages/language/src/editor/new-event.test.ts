import { describe, expect, it } from 'vitest';
import { check } from '../check.js';
import { filesInMemory } from '../plan/files.js';
import { openPlan } from '../../../../tests/support/open-plan.js';
import { newEvent } from './new-event.js';
import { problemOf } from './questions.js';

const asked = { title: 'Lantern night', date: '2026-10-17', guests: '84', zone: 'America/Halifax' };

const problemWith = (key: string, answer: string): string | undefined =>
    problemOf({ about: 'newEvent', key, answer }, undefined)?.problem;

function written(text: string | undefined, more: Partial<typeof asked> = {}) {
    const open = text === undefined ? undefined : openPlan(text);
    const answer = newEvent({ ...asked, ...more, ...(open ? { folder: open.folder.uri } : {}) }, open?.folder);
    if ('refused' in answer) {
        throw new Error(answer.refused);
    }
    const texts = Object.fromEntries(open?.folder.plans.map((plan) => [plan, open.folder.textOf(plan)!]) ?? []);
    const { findings } = check(answer.name, filesInMemory({ ...texts, [answer.name]: answer.text }));
    return { ...answer, found: findings.map(({ rule, message }) => `${rule}: ${message}`) };
}

const ZONES = [
    'America/Halifax',
    'America/New_York',
    'Europe/London',
    'Europe/Paris',
    'Australia/Sydney',
    'Asia/Tokyo',
    'UTC',
];

describe('a new event', () => {
    it('is found nothing in, wherever it is and however many come', () => {
        for (const zone of ZONES) {
            for (const guests of ['1', '12', '84', '1200']) {
                expect(written(undefined, { zone, guests }).found, `${zone}, ${guests} guests`).toEqual([]);
            }
        }
    });

    it('uses the house of its folder', () => {
        const { text, found } = written('//- house.cover\nhouse "Saltmarsh Hall" { local code canada }\n');
        expect(text).toContain('use "house.cover"');
        expect(text).toContain('guests 84');
        expect(found).toEqual([]);
    });

    it('goes by the code of its zone where the house keeps another', () => {
        const { text, found } = written('//- house.cover\nhouse "Saltmarsh Hall" { local code canada }\n', {
            zone: 'Europe/London',
        });
        expect(text).toContain('use "house.cover"');
        expect(text).toContain('local code uk');
        expect(found).toEqual([]);
    });

    it('is where the other events of the folder are', () => {
        const { text } = written('//- lunch.cover\nevent "Lunch" { zone Europe/Paris }\n', { zone: 'UTC' });
        expect(text).toContain('zone Europe/Paris');
    });

    it('takes none of two houses', () => {
        const { text, found } = written('//- a.cover\nhouse "A" {}\n//- b.cover\nhouse "B" {}\n');
        expect(text).not.toContain('use ');
        expect(found).toEqual([]);
    });

    it('has a name of its own, from its title', () => {
        expect(written(undefined, { title: 'Soirée à l’île, n° 2' }).name).toBe('soiree-a-l-ile-n-2.cover');
        expect(written(undefined, { title: '…' }).name).toBe('event.cover');
        expect(written('//- Lantern-Night.cover\nhouse "A" {}\n').name).toBe('lantern-night-2.cover');
    });

    it('understands a day written otherwise, and asks where it can be two', () => {
        expect(written(undefined, { date: '17 October 2026' }).text).toContain('date 2026-10-17');
        expect(problemWith('date', '3/4/2026')).toBe('That can be 2026-04-03 or 2026-03-04. Which?');
    });

    it.each([
        ['title', ' ', 'What is the event called?'],
        ['title', 'The "best"', 'The name can hold no quotes.'],
        ['date', '2026-02-30', 'Write the day as year, month and day, such as 2026-10-17.'],
        ['date', 'soon', 'Write the day as year, month and day, such as 2026-10-17.'],
        ['guests', 'many', 'How many guests, as a whole number, such as 84?'],
        ['guests', '0', 'How many guests, as a whole number, such as 84?'],
        ['guests', '5001', 'At most 5000 guests at one event.'],
    ] as const)('asks again for the %s after %j', (question, answer, problem) => {
        expect(problemWith(question, answer)).toBe(problem);
        expect(newEvent({ ...asked, [question]: answer }, undefined)).toEqual({ refused: problem });
    });
});
