/**
 * Times of day against quantities.md §10 (TZ, RFC 3339, ISO 8601) and §14.5 X2 and X3, through the plan itself. Which zone changes its
 * clocks when is the IANA database's, as the runtime carries it. X1 and X5 to X7 are of calendars, tables and reports.
 */
import { describe, expect, it } from 'vitest';
import { check } from '../../packages/language/src/check.js';
import { planJson } from '../../packages/language/src/output/plan-json.js';
import { filesInMemory } from '../../packages/language/src/plan/files.js';
import { eveningClock } from '../../packages/language/src/service/clock/evening.js';

function checked(date: string, zone: string, times: string) {
    const text = `event "Evening" { date ${date}  zone ${zone}  ${times}  guests 24 }
menu { course main "Lamb" { lasts 30 min  contains nothing } }`;
    return check('evening.cover', filesInMemory({ 'evening.cover': text }));
}

/** Hours that pass from the first minute of a day to its last. */
function dayLength(date: string, zone: string): number {
    const { plan } = checked(date, zone, 'seated 00:00  ends 23:59');
    return (eveningClock(plan)!.after(plan.event!.ends, 'end')! + 1) / 60;
}

describe('the length of a day (X2, TZ)', () => {
    it.each([
        ['America/New_York', '2026-03-08', 23],
        ['America/New_York', '2026-11-01', 25],
        ['Europe/Paris', '2026-03-29', 23],
        ['Europe/Paris', '2026-10-25', 25],
        ['America/New_York', '2026-07-04', 24],
        ['Asia/Kolkata', '2026-03-29', 24],
        // Half an hour, as the database has it for this one zone.
        ['Australia/Lord_Howe', '2026-10-04', 23.5],
    ])('%s, %s: %d h', (zone, date, hours) => {
        expect(dayLength(date, zone)).toBe(hours);
    });
});

describe('a time that the clocks show twice, or not at all', () => {
    const found = (rule: string, date: string, zone: string, times: string) => {
        const { findings } = checked(date, zone, times);
        return findings.filter((finding) => finding.rule === rule).map(({ message }) => message);
    };

    it('X3: 2025-11-02 01:30 in New York is 05:30Z or 06:30Z', () => {
        const times = 'seated 19:00  ends 01:30';
        const { plan, findings } = checked('2025-11-01', 'America/New_York', times);
        const change = eveningClock(plan)!.inChange(plan.event!.ends, 'end')!;
        const moments = change.times === 'twice' ? [change.moment, change.again] : [];
        expect(moments.map((moment) => new Date(moment * 60_000).toISOString())).toEqual([
            '2025-11-02T05:30:00.000Z',
            '2025-11-02T06:30:00.000Z',
        ]);
        expect(findings.map(({ rule }) => rule)).toContain('time-exists-twice');
    });
    it.each([
        ['X2', 'America/New_York', '2026-03-08', '02:30', 'from 02:00 to 03:00'],
        ['X2', 'Europe/Paris', '2026-03-29', '02:30', 'from 02:00 to 03:00'],
    ])('%s: %s leaves %s %s out', (_, zone, date, time, jump) => {
        expect(found('time-does-not-exist', date, zone, `seated ${time}`)).toEqual([expect.stringContaining(jump)]);
        expect(found('time-exists-twice', date, zone, `seated ${time}`)).toEqual([]);
    });
    it.each([
        ['X2', 'America/New_York', '2026-11-01', '01:30'],
        ['X2', 'Europe/Paris', '2026-10-25', '02:30'],
    ])('%s: %s shows %s %s twice', (_, zone, date, time) => {
        expect(found('time-exists-twice', date, zone, `seated ${time}`)).toHaveLength(1);
        expect(found('time-does-not-exist', date, zone, `seated ${time}`)).toEqual([]);
    });
    it.each(['01:59', '03:00', '19:00'])('says nothing of %s in New York on 2026-03-08', (time) => {
        expect(found('time-does-not-exist', '2026-03-08', 'America/New_York', `seated ${time}`)).toEqual([]);
    });
    it.each(['00:59', '02:00'])('says nothing of %s in New York on 2026-11-01', (time) => {
        expect(found('time-exists-twice', '2026-11-01', 'America/New_York', `seated ${time}`)).toEqual([]);
    });
    it('asks about every time that a plan states', () => {
        const text = `event "Evening" { date 2026-03-08  zone America/New_York
    doors 02:05  seated 02:10  ends 02:50  guests 24  crew 4 at 02:15 }
menu { course main "Lamb" { lasts 30 min  contains nothing  starts at 02:20 }
    speech "Welcome" at 02:30 }`;
        const { findings } = check('evening.cover', filesInMemory({ 'evening.cover': text }));
        const said = findings.filter(({ rule }) => rule === 'time-does-not-exist').map(({ message }) => message);
        expect(said.map((message) => message.split(', which')[0])).toEqual([
            'The doors open at `02:05`',
            'Guests sit down at `02:10`',
            'The evening ends at `02:50`',
            'The crew eats at `02:15`',
            '`Lamb` starts at `02:20`',
            '`Welcome` begins at `02:30`',
        ]);
    });
});

describe('the instants of the compiled plan (RFC 3339)', () => {
    const event = (date: string, zone: string, times: string) =>
        planJson(checked(date, zone, times)).event as Record<string, unknown>;

    it('stand in the zone of the event, after midnight on the next day, with the offset of then', () => {
        expect(event('2026-10-31', 'America/New_York', 'doors 18:30  seated 19:00  ends 03:00')).toMatchObject({
            doors: { local: '18:30', instant: '2026-10-31T18:30:00-04:00' },
            seated: { local: '19:00', instant: '2026-10-31T19:00:00-04:00' },
            // The clocks have gone back an hour by then.
            ends: { local: '03:00', instant: '2026-11-01T03:00:00-05:00' },
        });
    });
    it('are left out where the day or the zone is not known', () => {
        expect(event('2026-02-30', 'America/New_York', 'seated 19:00').seated).toEqual({ local: '19:00' });
        expect(event('2026-10-17', 'Nowhere/At_All', 'seated 19:00').seated).toEqual({ local: '19:00' });
    });
    it('are those of any zone, whatever its offset', () => {
        const instant = (zone: string) =>
            (event('2026-06-20', zone, 'seated 19:00').seated as { instant: string }).instant.slice(19);
        const zones = ['UTC', 'Asia/Kathmandu', 'America/St_Johns', 'Pacific/Chatham', 'Pacific/Kiritimati'];
        expect(zones.map(instant)).toEqual(['+00:00', '+05:45', '-02:30', '+12:45', '+14:00']);
    });
});
