import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { check } from '../../check.js';
import { filesInMemory } from '../../plan/files.js';
import type { ClockTime } from '../../plan/types.js';
import { eveningClock, STILL, type EveningClock } from './evening.js';
import { DAY } from './local-time.js';

function clockOf(date: string, zone: string, times: string): EveningClock & { readonly ends?: ClockTime } {
    const text = `event "Evening" { date ${date} zone ${zone} ${times} guests 4 }`;
    const { plan } = check('evening.cover', filesInMemory({ 'evening.cover': text }));
    return { ...eveningClock(plan)!, ends: plan.event?.ends };
}

const at = (minutes: number): ClockTime => ({ minutes, written: '', origin: { file: '', start: 0, end: 0 } });

describe('the clock of an evening', () => {
    it('counts minutes after guests are seated, over midnight as well', () => {
        const clock = clockOf('2026-10-17', 'America/Halifax', 'doors 18:30 seated 19:00 ends 01:00');
        expect(clock.after(at(18 * 60 + 30))).toBe(-30);
        expect(clock.after(at(20 * 60 + 15))).toBe(75);
        expect(clock.after(at(30))).toBe(5.5 * 60);
        expect(clock.after(clock.ends, 'end')).toBe(6 * 60);
        expect([clock.face(0), clock.face(74.6), clock.face(330)]).toEqual(['19:00', '20:15', '00:30']);
    });
    it('takes an evening to last as long as it does where the clocks go back, or forward', () => {
        const back = clockOf('2026-10-31', 'America/New_York', 'seated 19:00 ends 03:00');
        expect(back.after(back.ends, 'end')).toBe(9 * 60);
        // Six hours after seven it is one, and an hour later it is one again.
        expect([6, 7, 8, 9].map((hours) => back.face(hours * 60))).toEqual(['01:00', '01:00', '02:00', '03:00']);
        const forward = clockOf('2026-03-07', 'America/New_York', 'seated 19:00 ends 04:00');
        expect(forward.after(forward.ends, 'end')).toBe(8 * 60);
        expect([6, 7, 8].map((hours) => forward.face(hours * 60))).toEqual(['01:00', '03:00', '04:00']);
    });
    it('seats a supper after midnight on the day after its doors open', () => {
        const clock = clockOf('2026-10-31', 'America/New_York', 'doors 23:30 seated 00:15 ends 03:00');
        expect(clock.after(at(23.5 * 60), 'doors')).toBe(-45);
        expect(clock.instant(0)).toBe('2026-11-01T00:15:00-04:00');
        expect(clock.instant(120)).toBe('2026-11-01T01:15:00-05:00');
    });
    it('needs neither day nor zone to count by', () => {
        const text = 'event "Evening" { seated 19:00 ends 01:00 guests 4 }';
        const { plan } = check('evening.cover', filesInMemory({ 'evening.cover': text }));
        const clock = eveningClock(plan)!;
        expect([clock.after(plan.event!.ends, 'end'), clock.face(360), clock.instant(0)]).toEqual([
            360,
            '01:00',
            undefined,
        ]);
    });
    it('is not there without the hour of seating', () => {
        const { plan } = check(
            'evening.cover',
            filesInMemory({ 'evening.cover': 'event "Evening" { doors 18:00 guests 4 }' }),
        );
        expect(eveningClock(plan)).toBeUndefined();
    });
    it('goes back and forth between the minutes of an evening and the clocks', () => {
        for (const [date, zone] of [
            ['2026-10-31', 'America/New_York'],
            ['2026-03-28', 'America/Nuuk'],
            ['2026-04-03', 'Pacific/Easter'],
            ['2026-10-17', 'Asia/Tokyo'],
        ] as const) {
            const clock = clockOf(date, zone, 'seated 19:00');
            for (let minutes = -300; minutes <= 600; minutes += 5) {
                const zoned = Temporal.ZonedDateTime.from(`${date}T19:00[${zone}]`).add({ minutes });
                expect(clock.face(minutes), `${zone} ${minutes}`).toBe(zoned.toPlainTime().toString().slice(0, 5));
                expect(clock.instant(minutes)).toBe(zoned.toString({ timeZoneName: 'never' }));
            }
        }
    });
});

describe('the hours in which no clock is changed', () => {
    it('hold in every zone of the database', { timeout: 60_000 }, () => {
        const years = process.env.SLOW ? [2012, 2050] : [2024, 2030];
        const broken: string[] = [];
        for (const zone of Intl.supportedValuesOf('timeZone')) {
            let change = Temporal.ZonedDateTime.from(`${years[0]}-01-01T00:00[${zone}]`).getTimeZoneTransition('next');
            for (; change && change.year <= years[1]!; change = change.getTimeZoneTransition('next')) {
                const before = change.subtract({ nanoseconds: 1 }).offsetNanoseconds;
                const shift = (change.offsetNanoseconds - before) / 60e9;
                const shown = change.hour * 60 + change.minute;
                // What is left out lies before the first time shown, what comes twice after it.
                const [from, to] = shift > 0 ? [shown - shift, shown] : [shown, shown - shift];
                const touches = [-DAY, 0, DAY].some((day) => from < STILL.to + day && to > STILL.from + day);
                if (shift !== 0 && touches) {
                    broken.push(`${zone} ${change.toString()}`);
                }
            }
        }
        expect(broken).toEqual([]);
    });
});
