import { utcTicks } from 'd3-time';
import type { Event } from '../../../plan/types.js';

/** A length of time on the page. */
export interface ClockLine {
    /** Minutes after guests are seated. */
    readonly from: number;
    readonly to: number;
    readonly ticks: readonly number[];
    /** Where a moment stands on the page. */
    readonly x: (minutes: number) => number;
}

const MINUTE = 60_000;

/**
 * Ticks at round times of the clock, or round minutes where nobody says when guests sit.
 * @param left where `from` stands on the page
 * @param perMinute units of the page
 * @param apart minutes between ticks, about
 */
export function clockLine(
    event: Event | undefined,
    { from, to }: { readonly from: number; readonly to: number },
    left: number,
    perMinute: number,
    apart: number,
): ClockLine {
    const seated = event?.seated?.minutes ?? 0;
    const instant = (minutes: number): Date => new Date((seated + minutes) * MINUTE);
    const ticks = utcTicks(instant(from), instant(to), (to - from) / apart).map(
        (tick) => tick.getTime() / MINUTE - seated,
    );
    return { from, to, ticks, x: (minutes) => left + (minutes - from) * perMinute };
}
