import fc from 'fast-check';
import ICAL from 'ical.js';
import { Temporal } from 'temporal-polyfill';
import { calendar, check, filesInMemory, type CalendarOptions, type Checked } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { workspace } from '../sheets/workspace.js';

// What RFC 5545 and RFC 7986 demand of a calendar (quantities 10), and what a program that knows nothing of how it was written
// (ical.js) reads in it.

const supper = check('examples/saltmarsh-hall/lantern-supper.cover', workspace);

function written(checked: Checked, options?: CalendarOptions): string {
    const made = calendar(checked, options);
    if (typeof made === 'string') {
        throw new Error(made);
    }
    return made.text;
}

/** A small event with the clauses that matter here. */
const planned = (clauses: string, more = ''): Checked =>
    check(
        'a.cover',
        filesInMemory({ 'a.cover': `event "Supper" { ${clauses} guests 8 } ${more} menu { course soup "Leek" {} }` }),
    );
const usual = 'date 2026-10-17 zone America/Halifax seated 19:00 ends 23:00';

/** The plan with another title. */
const titled = (title: string): Checked => {
    const checked = planned(usual);
    return { ...checked, plan: { ...checked.plan, event: { ...checked.plan.event!, title } } };
};

const eventsOf = (text: string): ICAL.Event[] =>
    new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
const unfolded = (text: string): string[] => text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);
const octets = (line: string): number => new TextEncoder().encode(line).length;
/** Property lines by name, such as `DTSTART`. */
const lines = (text: string, name: string): string[] =>
    unfolded(text).filter((line) => new RegExp(`^${name}[;:]`).test(line));

const whole = written(supper);
const calls = written(supper, { calls: true, alarm: 10 });

describe.each([
    ['the evening as one entry', whole],
    ['an entry for each call, with a reminder', calls],
])('%s', (_, text) => {
    it('has lines of at most 75 octets that end with CR and LF, and continues them after one space (RFC5545 3.1)', () => {
        expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        expect(Math.max(...text.split('\r\n').map(octets))).toBeLessThanOrEqual(75);
        expect(text).toContain('\r\n ');
    });

    it('has one PRODID, one VERSION, and something in it (RFC5545 3.6)', () => {
        expect(lines(text, 'PRODID')).toHaveLength(1);
        expect(lines(text, 'VERSION')).toEqual(['VERSION:2.0']);
        expect(lines(text, 'METHOD')).toEqual([]);
        expect(eventsOf(text).length).toBeGreaterThan(0);
    });

    it('gives each entry one UID, one DTSTAMP and one DTSTART, and never both an end and a length (RFC5545 3.6.1)', () => {
        for (const entry of text.split('BEGIN:VEVENT\r\n').slice(1)) {
            const names = unfolded(`${entry.split('BEGIN:VALARM')[0]!}\r\n`).map((line) => /^[A-Z-]+/.exec(line)?.[0]);
            for (const name of ['UID', 'DTSTAMP', 'DTSTART', 'SEQUENCE', 'SUMMARY']) {
                expect(names.filter((each) => each === name)).toHaveLength(1);
            }
            expect(names).not.toContain('DURATION');
        }
    });

    it('states every time in UTC, so that no zone is wanting (RFC5545 3.3.5, 3.6.5, 3.8.7.2)', () => {
        const times = ['DTSTAMP', 'DTSTART', 'DTEND'].flatMap((name) => lines(text, name));
        expect(times.length).toBeGreaterThan(2);
        expect(times.filter((line) => !/^[A-Z]+:\d{8}T\d{6}Z$/.test(line))).toEqual([]);
        expect(text).not.toContain('TZID');
    });

    it('ends each entry later than it begins (RFC5545 3.8.2.2)', () => {
        for (const { startDate, endDate, component } of eventsOf(text)) {
            if (component.hasProperty('dtend')) {
                expect(endDate.compare(startDate)).toBe(1);
            }
        }
    });

    it('names each entry once, by a UUID without a host or a person in it (RFC5545 3.8.4.7, RFC7986 5.3)', () => {
        const uids = eventsOf(text).map(({ uid }) => uid);
        expect(new Set(uids).size).toBe(uids.length);
        expect(
            uids.filter((uid) => !/^[\da-f]{8}-[\da-f]{4}-5[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/.test(uid)),
        ).toEqual([]);
    });

    it('names no colour, which a number would not be (RFC7986 5.9)', () => {
        expect(lines(text, 'COLOR')).toEqual([]);
    });
});

describe('texts', () => {
    it('of forty accented letters are parted between letters (X1, RFC5545 3.1)', () => {
        const text = written(titled('é'.repeat(40)));
        const at = text.split('\r\n').findIndex((line) => line.startsWith('SUMMARY:'));
        const [first, second] = text.split('\r\n').slice(at, at + 2);
        expect([octets(first!), octets(second!)]).toEqual([74, 15]);
        expect(first).toBe(`SUMMARY:${'é'.repeat(33)}`);
        expect(second).toBe(` ${'é'.repeat(7)}`);
    });

    it('escape backslash, semicolon, comma and line break, and leave colons (RFC5545 3.3.11)', () => {
        expect(lines(written(titled('a\\b; c, d: e\nf')), 'SUMMARY')).toEqual(['SUMMARY:a\\\\b\\; c\\, d: e\\nf']);
    });

    it('are read back as they were written, whatever they are', () => {
        fc.assert(
            fc.property(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200 }), (title) => {
                const text = written(titled(title));
                expect(eventsOf(text)[0]!.summary).toBe(title);
                expect(Math.max(...text.split('\r\n').map(octets))).toBeLessThanOrEqual(75);
            }),
            { numRuns: 200, seed: 20261017 },
        );
    });

    it('have no characters that a calendar may not have', () => {
        expect(eventsOf(written(titled('a\0b\u001Bc\u007Fd\te')))[0]!.summary).toBe('abcd\te');
    });
});

describe('times', () => {
    const times = (checked: Checked): [start: string, end: string, hours: number] => {
        const [{ startDate, endDate }] = eventsOf(written(checked)) as [ICAL.Event];
        const [start, end] = [startDate.toJSDate(), endDate.toJSDate()];
        return [start.toISOString(), end.toISOString(), (end.getTime() - start.getTime()) / 3_600_000];
    };

    it.each([
        ['America/Halifax', '2026-10-17T19:00', 4],
        ['America/Halifax', '2026-01-17T19:00', 4],
        ['Europe/Paris', '2026-07-17T19:00', 4],
        ['Asia/Kathmandu', '2026-07-17T19:00', 4],
        ['Pacific/Auckland', '2026-12-31T19:00', 4],
    ])('in %s on %s are those of the calendar library', (zone, seated, hours) => {
        const start = Temporal.PlainDateTime.from(seated).toZonedDateTime(zone);
        const [date] = seated.split('T');
        expect(times(planned(`date ${date} zone ${zone} seated 19:00 ends 23:00`))).toEqual([
            new Date(start.epochMilliseconds).toISOString(),
            new Date(start.add({ hours }).epochMilliseconds).toISOString(),
            hours,
        ]);
    });

    // X2, X3, TZ
    it.each([
        ['America/New_York', '2026-03-07', '22:00', '04:00', 5],
        ['America/New_York', '2026-10-31', '22:00', '04:00', 7],
        ['Europe/Paris', '2026-03-28', '22:00', '04:00', 5],
        ['Europe/Paris', '2026-10-24', '22:00', '04:00', 7],
    ])('in %s in the night after %s, from %s to %s, are %i hours apart', (zone, date, seated, ends, hours) => {
        expect(times(planned(`date ${date} zone ${zone} seated ${seated} ends ${ends}`))[2]).toBe(hours);
    });

    it('begin with the doors', () => {
        expect(times(planned(`doors 18:30 ${usual}`))[0]).toBe('2026-10-17T21:30:00.000Z');
        expect(times(planned(usual))[0]).toBe('2026-10-17T22:00:00.000Z');
    });
});

describe('a plan that has changed', () => {
    const byKey = (text: string) => new Map(eventsOf(text).map((event) => [event.uid, event]));
    const changed = (revision: number, late: number): Checked => {
        return check('examples/saltmarsh-hall/lantern-supper.cover', {
            read: (path) => {
                const file = workspace.read(path);
                return file.state === 'read' && path.endsWith('lantern-supper.cover')
                    ? {
                          ...file,
                          text: file.text
                              .replace('revision 4', `revision ${revision}`)
                              .replace('seated 19:00', `seated 19:${late}`),
                      }
                    : file;
            },
        });
    };

    it('keeps the names of its entries and counts its revision, so that a calendar is brought up to date', () => {
        const before = byKey(calls);
        const after = byKey(written(changed(5, 15), { calls: true }));
        expect([...after.keys()].toSorted()).toEqual([...before.keys()].toSorted());
        const soup = [...before.values()].find(({ summary }) => summary === 'Call: Roast squash soup')!;
        const later = after.get(soup.uid)!;
        expect([soup.sequence, later.sequence]).toEqual([4, 5]);
        expect(later.startDate.subtractDate(soup.startDate).toSeconds()).toBe(15 * 60);
        const stamp = ({ component }: ICAL.Event): string => String(component.getFirstPropertyValue('dtstamp'));
        expect([stamp(soup), stamp(later)]).toEqual(['2026-10-17T00:00:04Z', '2026-10-17T00:00:05Z']);
        expect(later.startDate.compare(soup.startDate)).toBe(1);
    });

    it('is named by its reference, else by day and title; other events have other names', () => {
        const uid = (checked: Checked): string => eventsOf(written(checked))[0]!.uid;
        expect(uid(planned(`${usual} reference "a"`))).toBe(
            uid(planned('date 2026-10-18 zone America/Halifax seated 19:00 ends 23:00 reference "a"')),
        );
        const others = [planned(usual), titled('Lunch'), planned(`${usual} reference "b"`), supper];
        expect(new Set(others.map(uid)).size).toBe(others.length);
        expect(uid(planned(usual))).not.toBe(uid(planned(usual.replace('17', '18'))));
    });

    it('has the same bytes each time', () => {
        expect(written(check('examples/saltmarsh-hall/lantern-supper.cover', workspace))).toBe(whole);
    });
});

describe('what stands in it', () => {
    it('the evening: place, guests and every call in the hours of the place', () => {
        const [{ location, description, summary }] = eventsOf(whole) as [ICAL.Event];
        expect([summary, location]).toEqual(['Lantern night supper', 'Long gallery, Saltmarsh Hall']);
        expect(description).toMatch(/^84 guests, covers for 88\.\n/);
        expect(description).toContain(
            '\n18:30  Doors.\n19:00  Guests sit.\n19:01  Call “Smoked beet and curd”: first guest',
        );
        expect(description).toContain('Times in the text are those of America/Halifax.');
        expect(description).toContain('licensed staff decide.');
    });

    it('the calls: people, meal, briefing, doors, courses, toast, coffee, in order and with their reminder', () => {
        const events = eventsOf(calls);
        expect(events.map(({ summary }) => summary)).toEqual([
            'Call time: 7 servers',
            'Call time: 3 runners',
            'Call time: 1 captain',
            'Crew eats',
            'Briefing',
            'Line-up',
            'Doors',
            'Guests sit',
            'Call: Smoked beet and curd',
            'Call: Roast squash soup',
            'Call: Quince sorbet',
            'Call: Main course',
            'Call: Leaves from the walled garden',
            'Call: Three cheeses of the marsh',
            'Toast: To the lantern keepers',
            'Call: Burnt honey custard',
            'Call: Coffee',
        ]);
        const triggers = events.map(({ component }) =>
            String(component.getFirstSubcomponent('valarm')?.getFirstPropertyValue('trigger')),
        );
        // RFC5545 3.3.6
        expect(new Set(triggers)).toEqual(new Set(['-PT10M']));
        const times = events.map(({ startDate }) => startDate.toUnixTime());
        expect(times).toEqual(times.toSorted((a, b) => a - b));
        const run = supper.service.run!.courses[1]!;
        const soup = events[9]!;
        expect(soup.startDate.toString()).toBe(
            Temporal.ZonedDateTime.from('2026-10-17T19:00[America/Halifax]')
                .add({ minutes: Math.round(run.fired) })
                .toInstant()
                .toString(),
        );
    });

    it('no guest by name', () => {
        const eight = check('examples/saltmarsh-hall/table-of-eight.cover', workspace);
        for (const text of [written(eight), written(eight, { calls: true })]) {
            expect(unfolded(text).join('\n')).not.toMatch(/Isolde|I\. M\./);
        }
    });
});

describe('a plan that does not say when anything is', () => {
    it.each([
        ['zone America/Halifax seated 19:00 ends 23:00', /the day/],
        ['date 2026-10-17 seated 19:00 ends 23:00', /the time zone/],
        ['date 2026-10-17 zone America/Halifax ends 23:00', /the hour at which guests sit/],
        ['ends 23:00', /the day .*, the time zone .* and the hour at which/],
        ['date 2026-10-17 zone America/Halifax seated 19:00', /does not say when the evening ends/],
        ['date 2026-10-17 zone America/Atlantis seated 19:00 ends 23:00', /no time zone `America\/Atlantis`/],
    ])('%s: says so', (clauses, words) => {
        expect(calendar(planned(clauses))).toMatch(words);
    });

    it('has no calls without a run sheet, and no calendar without an event', () => {
        expect(calendar(planned(usual), { calls: true })).toMatch(/^No run sheet tells/);
        expect(calendar(check('a.cover', filesInMemory({ 'a.cover': 'menu {}' })))).toBe(
            'There is no event in this file.',
        );
    });
});
