import type { Checked } from './check.js';
import { callsOfEvening, wholeEvening } from './output/calendar/entries.js';
import { icalendar } from './output/calendar/icalendar.js';
import type { Plan } from './plan/types.js';
import { listed } from './rules/wording.js';
import { eveningClock } from './service/clock/evening.js';

/** What stands in a calendar. */
export interface CalendarOptions {
    /** One entry for each call of the evening, in place of one for the evening. */
    readonly calls?: boolean;
    /** A reminder so many minutes before each entry, 0 or more; none where absent. */
    readonly alarm?: number;
}

/** A calendar. */
export interface Calendar {
    /** iCalendar (RFC 5545): `text/calendar`, UTF-8. */
    readonly text: string;
}

/**
 * The evening of a checked plan as a calendar: one entry, or one for each call. Its entries keep their names (UID) while a plan
 * changes, and carry its revision (SEQUENCE), so that a calendar that has taken in an older revision is brought up to date.
 * The same plan gives the same bytes. In a browser it wants a page from a secure address, `https:` or this machine: the library
 * that writes the entries asks for `crypto.randomUUID`.
 * @returns a sentence where the plan does not say when anything is
 */
export function calendar(checked: Checked, { calls, alarm }: CalendarOptions = {}): Calendar | string {
    const missing = whatIsMissing(checked.plan);
    if (missing !== undefined) {
        return missing;
    }
    const entries = calls ? callsOfEvening(checked) : wholeEvening(checked);
    return typeof entries === 'string' ? entries : { text: icalendar(checked, [entries].flat(), alarm) };
}

function whatIsMissing(plan: Plan): string | undefined {
    const { event } = plan;
    if (!event) {
        return 'There is no event in this file.';
    }
    const missing = [
        event.date?.iso === undefined && 'the day (`date 2026-10-17`)',
        !event.zone && 'the time zone (`zone America/Halifax`)',
        event.seated?.minutes === undefined && 'the hour at which guests sit (`seated 19:00`)',
    ].filter((words) => words !== false);
    if (missing.length > 0) {
        return `A calendar needs ${listed(missing)} of the event.`;
    }
    return eveningClock(plan)?.instant(0) === undefined
        ? `There is no time zone \`${event.zone!.text}\`, so no calendar can say when anything is.`
        : undefined;
}
