/**
 * The clocks of an evening. Everything that is computed counts minutes after guests are seated, as they pass; a clock on the
 * wall shows something else once it has been put forward or back.
 */
import { lazily, lazilyOfEach } from '../../plan/lazily.js';
import type { ClockTime, Event, Plan } from '../../plan/types.js';
import { clockFace, DAY, dayOf, isoInstant, midnightOf, offsetAt, showing, type Showing } from './local-time.js';
import { zoneOffsets, type ZoneOffsets } from './zone-offsets.js';

/** Minutes since midnight: doors that open so late, for guests who sit down so early, open the day before. */
const [LATE_EVENING, EARLY_MORNING] = [20 * 60, 5 * 60];

/**
 * Minutes since midnight between which clocks are never changed: so in every zone of the IANA database from 2001 on, but for
 * the day that Samoa and Tokelau left out in 2011; `evening.test.ts` looks. Everything else is looked up.
 */
export const STILL = { from: 7 * 60, to: 21 * 60 } as const;

export interface EveningClock {
    /** Minutes after guests are seated at which the clocks show a time: that of the same evening, the first where it comes twice. */
    after(time: ClockTime | undefined, meaning?: Meaning): number | undefined;
    /** The change of the clocks that a time falls into, so that they show it never or twice; else `undefined`. */
    inChange(time: ClockTime | undefined, meaning?: Meaning): InChange | undefined;
    /** What the clocks show so many minutes after guests are seated: `19:05`. */
    face(minutes: number): string;
    /** The same with the day and the offset from UTC, `2026-10-17T19:05:00-03:00`; `undefined` where day or zone are not known. */
    instant(minutes: number): string | undefined;
}

export type InChange = Exclude<Showing, { readonly times: 'once' }> & {
    /** The day that the time is on, ISO. */
    readonly date: string;
    /** From UTC before the change and after it, minutes. */
    readonly offsets: readonly [before: number, after: number];
};

/** `end` is after guests are seated, however late; any other time is within half a day of it. */
export type Meaning = 'near' | 'end' | 'doors';

/** @returns `undefined` where the event does not say when guests are seated */
export function eveningClock({ event }: Plan): EveningClock | undefined {
    return event && clockOf(event);
}

const clockOf = lazilyOfEach(makeClock);

function makeClock(event: Event): EveningClock | undefined {
    if (event.seated?.minutes === undefined) {
        return undefined;
    }
    const seated = event.seated.minutes + (sitsAfterMidnight(event) ? DAY : 0);
    const { date, zone } = event;
    const iso = date?.iso;
    const midnight = iso === undefined ? undefined : midnightOf(iso);

    // Walls are minutes since the midnight that begins the event's day.
    const wallOf = (time: ClockTime | undefined, meaning: Meaning): number | undefined => {
        if (time?.minutes === undefined) {
            return undefined;
        }
        if (meaning === 'doors') {
            return time.minutes;
        }
        const apart = (time.minutes - seated) % DAY;
        const positive = apart < 0 ? apart + DAY : apart;
        // Half a day on is a late hour of the evening, not an early one of the morning.
        return seated + (meaning === 'end' || positive <= DAY / 2 ? positive : positive - DAY);
    };
    const offsets = lazily((): ZoneOffsets | undefined =>
        zone && iso !== undefined ? zoneOffsets(zone.text, iso) : undefined,
    );
    const moment = (wall: number): number | undefined => {
        const known = midnight === undefined ? undefined : offsets();
        return known && showing(midnight! + wall, known).moment;
    };
    /** Where both are of one day's still hours, the clocks can't have been changed between them. */
    const isPlain = (wall: number, other: number): boolean =>
        isStill(wall) && isStill(other) && Math.floor(wall / DAY) === Math.floor(other / DAY);

    return {
        after(time, meaning = 'near') {
            const wall = wallOf(time, meaning);
            if (wall === undefined || isPlain(wall, seated)) {
                return wall === undefined ? undefined : wall - seated;
            }
            const [at, from] = [moment(wall), moment(seated)];
            return at === undefined || from === undefined ? wall - seated : at - from;
        },
        inChange(time, meaning = 'near') {
            const wall = wallOf(time, meaning);
            const known = wall === undefined || isStill(wall) ? undefined : offsets();
            if (wall === undefined || midnight === undefined || !known) {
                return undefined;
            }
            const shown = showing(midnight + wall, known);
            if (shown.times === 'once') {
                return undefined;
            }
            const before = midnight + wall - shown.moment;
            const after = before + (shown.times === 'never' ? 1 : -1) * (shown.to - shown.from);
            return { ...shown, date: dayOf(midnight + wall), offsets: [before, after] };
        },
        face(minutes) {
            const wall = seated + minutes;
            const from = isPlain(Math.round(wall), seated) ? undefined : moment(seated);
            const known = from === undefined ? undefined : offsets();
            return clockFace(known && from !== undefined ? from + minutes + offsetAt(from + minutes, known) : wall);
        },
        instant(minutes) {
            const from = moment(seated);
            const known = offsets();
            return from === undefined || !known
                ? undefined
                : isoInstant(from + minutes, offsetAt(from + minutes, known));
        },
    };
}

/** A supper after midnight: doors open late on the event's day, and guests sit down early on the next. */
export function sitsAfterMidnight({ doors, seated }: Event): boolean {
    const [opens, sits] = [doors?.minutes, seated?.minutes];
    return opens !== undefined && sits !== undefined && opens >= LATE_EVENING && sits < EARLY_MORNING;
}

function isStill(wall: number): boolean {
    const ofDay = ((wall % DAY) + DAY) % DAY;
    return ofDay >= STILL.from && ofDay < STILL.to;
}
