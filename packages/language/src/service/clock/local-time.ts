/** Between what a clock on the wall shows and the moments it shows it at. Moments are minutes since 1970-01-01T00:00Z. */
import type { ZoneOffsets } from './zone-offsets.js';

/** A time of the wall: minutes since 1970-01-01T00:00 on the clocks of the place. */
export type WallTime = number;

/** What becomes of a time that a clock on the wall is to show. */
export type Showing =
    | { readonly times: 'once'; readonly moment: number }
    /** The clocks go forward past it: `moment` is as long after the change as the time is after the skipped hour's beginning. */
    | { readonly times: 'never'; readonly moment: number; readonly from: WallTime; readonly to: WallTime }
    /** The clocks go back and show it again. */
    | {
          readonly times: 'twice';
          readonly moment: number;
          readonly again: number;
          readonly from: WallTime;
          readonly to: WallTime;
      };

/** When the clocks show a time; one that comes twice is meant the first time (RFC 5545 3.3.5, as it is for one that is skipped). */
export function showing(wall: WallTime, { offset, changes }: ZoneOffsets): Showing {
    let before = offset;
    for (const change of changes) {
        // The clocks run on to `until` and then show `thence`.
        const until = change.moment + before;
        const thence = change.moment + change.offset;
        if (wall < Math.min(until, thence)) {
            break;
        }
        if (wall < until) {
            return { times: 'twice', moment: wall - before, again: wall - change.offset, from: thence, to: until };
        }
        if (wall < thence) {
            return { times: 'never', moment: wall - before, from: until, to: thence };
        }
        before = change.offset;
    }
    return { times: 'once', moment: wall - before };
}

/** Offset from UTC at a moment, minutes. */
export function offsetAt(moment: number, { offset, changes }: ZoneOffsets): number {
    return changes.findLast((change) => change.moment <= moment)?.offset ?? offset;
}

/** `2026-10-17T19:00:00-03:00` (ISO 8601, RFC 3339), to the second. */
export function isoInstant(moment: number, offset: number): string {
    const seconds = Math.round(moment * 60);
    const wall = new Date((seconds + offset * 60) * 1000).toISOString().slice(0, 19);
    return `${wall}${isoOffset(offset)}`;
}

/** `-03:00`. */
export function isoOffset(offset: number): string {
    const whole = Math.round(Math.abs(offset));
    return `${offset < 0 ? '-' : '+'}${two(Math.floor(whole / 60))}:${two(whole % 60)}`;
}

/** `19:05`, rounded to the minute. @param minutes since any midnight */
export function clockFace(minutes: number): string {
    const ofDay = ((Math.round(minutes) % DAY) + DAY) % DAY;
    return `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}

/** Minutes of a day without a change of the clocks. */
export const DAY = 24 * 60;

/** Minutes from 1970 to the midnight that begins a day. @param date ISO, `2026-10-17` */
export function midnightOf(date: string): WallTime {
    return Date.parse(`${date}T00:00:00Z`) / 60_000;
}

/** The day that a time of the wall is on, `2026-10-18`. */
export function dayOf(wall: WallTime): string {
    return new Date(wall * 60_000).toISOString().slice(0, 10);
}

const two = (number: number): string => String(number).padStart(2, '0');
