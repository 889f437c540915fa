/** Minutes of the evening and times of the day. */
import type { ClockTime, Plan } from '../../plan/types.js';

const DAY = 24 * 60;

/** A time of the day as minutes after guests are seated: within half a day of it, so that 00:30 comes after 19:00. */
export function afterSeated(plan: Plan, time: ClockTime | undefined): number | undefined {
    const seated = plan.event?.seated?.minutes;
    if (seated === undefined || time?.minutes === undefined) {
        return undefined;
    }
    const apart = (time.minutes - seated) % DAY;
    return apart <= -DAY / 2 ? apart + DAY : apart > DAY / 2 ? apart - DAY : apart;
}

/**
 * Minutes after guests are seated as a time of the day, `19:05`, rounded to the minute.
 * @returns `undefined` where the event does not say when guests are seated
 */
export function clockOf(plan: Plan, minutes: number): string | undefined {
    const seated = plan.event?.seated?.minutes;
    if (seated === undefined) {
        return undefined;
    }
    const two = (number: number): string => String(number).padStart(2, '0');
    const ofDay = (((seated + Math.round(minutes)) % DAY) + DAY) % DAY;
    return `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}
