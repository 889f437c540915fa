/** Times of day for the compiled plan: what the clock on the wall shows, and the moment it shows it at. */
import type { ClockTime, Plan } from '../plan/types.js';
import { eveningClock, type Meaning } from '../service/clock/evening.js';
import { clockFace } from '../service/clock/local-time.js';
import type { Json } from './plan-values.js';

/** A time that the plan states. The instant is left out where the event's day, zone or hour of seating is not known. */
export function clockJson(plan: Plan, time: ClockTime | undefined, meaning: Meaning = 'near'): Json | undefined {
    if (!time) {
        return undefined;
    }
    const clock = eveningClock(plan);
    const after = clock?.after(time, meaning);
    return {
        local: time.minutes === undefined ? time.written : clockFace(time.minutes),
        instant: after === undefined ? undefined : clock?.instant(after),
    };
}

/** A time that is computed. @param minutes after guests are seated; before that they are negative */
export function momentJson(plan: Plan, minutes: number): Json {
    const clock = eveningClock(plan);
    return {
        // Seconds are kept: they are how far apart two plates are.
        minutes: Math.round(minutes * 60) / 60,
        local: clock?.face(minutes),
        instant: clock?.instant(minutes),
    };
}
