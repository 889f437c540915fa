/**
 * What the clocks of a place show around a day, from the IANA database that the runtime carries (RFC 6557).
 * The one module that loads the calendar library and, through it, Intl: 20 ms of a cold start. Ask it last.
 */
import { Temporal } from 'temporal-polyfill';

/** Offsets from UTC in minutes, east positive. Moments are minutes since 1970-01-01T00:00Z. */
export interface ZoneOffsets {
    /** In force two days before the day. */
    readonly offset: number;
    /** In order of time; none where the clocks keep still. */
    readonly changes: readonly { readonly moment: number; readonly offset: number }[];
}

/** Days before and after the date that are looked at: an evening, its preparations and its strike. */
const [BEFORE, AFTER] = [2, 3];

/** The last ones asked for: an editor asks at every key. */
const known = new Map<string, ZoneOffsets | undefined>();
const KEPT = 16;

/**
 * @param zone an IANA name such as `America/Halifax`
 * @param date ISO, `2026-10-17`
 * @returns `undefined` for a zone or a day that is not there
 */
export function zoneOffsets(zone: string, date: string): ZoneOffsets | undefined {
    const key = `${zone} ${date}`;
    if (!known.has(key)) {
        if (known.size >= KEPT) {
            known.delete(known.keys().next().value!);
        }
        known.set(key, lookUp(zone, date));
    }
    return known.get(key);
}

function lookUp(zone: string, date: string): ZoneOffsets | undefined {
    try {
        const day = Temporal.PlainDate.from(date);
        let at = day.subtract({ days: BEFORE }).toZonedDateTime(zone);
        const end = day.add({ days: AFTER }).toZonedDateTime(zone);
        const offset = minutesOf(at);
        const changes: { moment: number; offset: number }[] = [];
        // A zone that never changes has no next change however far one looks: only where the ends differ is one looked for.
        while (minutesOf(at) !== minutesOf(end)) {
            const next = at.getTimeZoneTransition('next');
            if (!next || next.epochMilliseconds > end.epochMilliseconds) {
                break;
            }
            changes.push({ moment: next.epochMilliseconds / 60_000, offset: minutesOf(next) });
            at = next;
        }
        return { offset, changes };
    } catch (error) {
        if (error instanceof RangeError) {
            return undefined;
        }
        throw error;
    }
}

const minutesOf = (at: Temporal.ZonedDateTime): number => at.offsetNanoseconds / 60_000_000_000;
