import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { check, type Checked } from './check.js';
import { restOfEvening } from './output/comparison/rest-of-evening.js';
import { filesInMemory } from './plan/files.js';
import { whatIf, type Otherwise } from './what-if.js';

const folder = new URL('../../../examples/saltmarsh-hall/', import.meta.url);
const FILES = [
    'recipes/roast-squash-soup.json',
    'recipes/smoked-beet.md',
    'cupboard.cover',
    'house.cover',
    'long-gallery.cover',
    'lantern-supper.cover',
    'mess-night.cover',
];
const texts = Object.fromEntries(FILES.map((file) => [file, readFileSync(new URL(file, folder), 'utf8')]));

function planned(name: string, mend: (text: string) => string = (text) => text): Checked {
    return check(name, filesInMemory({ ...texts, [name]: mend(texts[name]!) }));
}

/** What is refused, or nothing. */
function refusal(checked: Checked, otherwise: Otherwise): string | undefined {
    const answer = whatIf(checked, otherwise);
    return typeof answer === 'string' ? answer : undefined;
}

const supper = planned('lantern-supper.cover');
const mess = planned('mess-night.cover');
const clock = (hours: number, minutes: number): number => hours * 60 + minutes;

describe('a team without hands', () => {
    it('is refused: nobody serves, or nobody plates', () => {
        expect(refusal(mess, { people: { servers: 0 } })).toMatch(
            /^With 0 servers nobody serves, .* Ask for 1 or more\.$/,
        );
        expect(refusal(mess, { people: { server: 0 } })).toMatch(/nobody serves/);
        expect(refusal(mess, { people: { 'plating-lines': 0 } })).toMatch(/^With 0 plating lines nobody plates, /);
        expect(refusal(mess, { people: { runners: 0, sommeliers: 0, bussers: 0 } })).toBeUndefined();
    });

    it('has no evening', () => {
        const teamOf = (words: string): Checked =>
            planned('mess-night.cover', (text) => text.replace(/^ +servers? \d+.*$/m, words));
        expect(mess.service.run).toBeDefined();
        expect(teamOf('servers 0').service.run).toBeUndefined();
        expect(
            planned('mess-night.cover', (text) => text.replace(/plating-lines \d+.*$/m, 'plating-lines 0')).service.run,
        ).toBeUndefined();
    });

    it('is counted by role, whether its name is that of one or of several', () => {
        const answer = whatIf(mess, { people: { server: 9 } });
        const servers =
            typeof answer === 'string'
                ? []
                : answer.checked.plan.team!.roles.filter(({ role }) => /^servers?$/.test(role.name));
        expect(servers.map(({ count }) => count.count)).toEqual([9]);
    });
});

describe('an evening that runs', () => {
    const callsOf = (checked: Checked, otherwise: Otherwise): string[] => {
        const answer = whatIf(checked, otherwise);
        return typeof answer === 'string'
            ? [answer]
            : restOfEvening(answer.checked).map((call) => `${call.clock} ${call.text}`);
    };
    const underway = { minutes: clock(20, 10), done: 'soup' };

    it('is told by the clock on the wall, also where guests sat down late', () => {
        const first = (otherwise: Otherwise): string | undefined => callsOf(mess, otherwise)[0]?.slice(0, 5);
        expect(first({ underway })).toBe('20:10');
        expect(first({ underway, late: 15 })).toBe('20:10');
    });

    it('has no course cleared before guests sit down, and asks for what was meant', () => {
        expect(refusal(mess, { underway: { minutes: clock(8, 10), done: 'soup' } })).toBe(
            'At 08:10 no course can be cleared: guests sit down at 19:15. Did you mean 20:10?',
        );
        expect(refusal(mess, { underway: { minutes: clock(19, 0), done: 'dessert' } })).toBe(
            'At 19:00 no course can be cleared: guests sit down at 19:15.',
        );
        expect(refusal(mess, { underway: { minutes: clock(19, 20), done: 'soup' }, late: 15 })).toBe(
            'At 19:20 no course can be cleared: guests sit down at 19:30.',
        );
        expect(refusal(mess, { underway: { minutes: clock(0, 30), done: 'soup' } })).toBeUndefined();
    });

    it('takes the name of a course however its letters are written, and lists the courses there are', () => {
        expect(callsOf(mess, { underway: { ...underway, done: 'Soup' } })).toEqual(callsOf(mess, { underway }));
        expect(refusal(mess, { underway: { ...underway, done: 'pudding' } })).toMatch(
            /^The menu has no course `pudding`\. It has `.*`soup`/,
        );
    });
});

describe('a figure out of reach', () => {
    it.each<readonly [Otherwise, RegExp]>([
        [{ roomTemperature: -300 }, /-300 °C.*from -10 to 45 °C\.$/],
        [{ roomTemperature: 400 }, /400 °C.*from -10 to 45 °C\.$/],
        [{ roomTemperature: NaN }, /from -10 to 45 °C\.$/],
        [{ late: 99 * 60 }, /at most 6 h later/],
        [{ guests: 0 }, /from 1 to 5000\.$/],
        [{ guests: 6000 }, /from 1 to 5000\.$/],
        [{ setFor: 0 }, /from 1 to 5000\.$/],
        [{ people: { 'plating-lines': 1001 } }, /^Plating lines: 1001 .* from 0 to 1000\.$/],
    ])('is refused with its limits: %o', (otherwise, said) => {
        expect(refusal(supper, otherwise)).toMatch(said);
    });

    it('is one beyond the limits', () => {
        for (const roomTemperature of [-10, 45]) {
            expect(refusal(supper, { roomTemperature })).toBeUndefined();
        }
        expect(refusal(supper, { late: 6 * 60 })).toBeUndefined();
    });
});

it('tells a number that the plan did not state', () => {
    const answer = whatIf(mess, { guaranteed: 10 });
    const said = typeof answer === 'string' ? [answer] : answer.changes.map(({ text }) => text);
    expect(said).toContain('guests guaranteed: 10');
});

describe('errors', () => {
    const cautionOf = (checked: Checked, otherwise: Otherwise): string | undefined => {
        const answer = whatIf(checked, otherwise);
        return typeof answer === 'string' ? answer : answer.caution;
    };

    it('that the figures bring are told before what changes', () => {
        expect(cautionOf(supper, { guests: 86 })).toBeUndefined();
        expect(cautionOf(supper, { guests: 3 })).toMatch(
            /^With these figures the plan has \d+ errors?: do not rely on/,
        );
    });

    it('that the plan has as written are told too', () => {
        const wrong = planned('lantern-supper.cover', (text) => text.replace(/^ +zone .*$/m, '    nonsense'));
        expect(cautionOf(wrong, { late: 15 })).toMatch(
            /^The plan has \d+ errors?: mend (it|them) before you trust these figures\.$/,
        );
        expect(cautionOf(wrong, { guests: 3 })).toMatch(/figures\. With these figures the plan has \d+ more errors?: /);
    });
});
