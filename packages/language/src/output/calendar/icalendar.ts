/** Internet Calendaring, RFC 5545: the calendar as a text that any calendar program takes in. */
import ical from 'ical-generator';
import { v5 as uuidOf } from 'uuid';
import { eveningClock } from '../../service/clock/evening.js';
import type { Compared } from '../comparison/change.js';
import type { CalendarEntry } from './entries.js';

/** Drawn once, for the names that are made of a plan (RFC 9562 5.5). A change would part every calendar from its plan. */
const NAMESPACE = '3f6d4ba8-0648-49c8-bf37-7475810e0130';

/** Not allowed in a text of a calendar (RFC 5545 3.3.11). */
const CONTROLS = /[\0-\x08\x0B\x0C\x0E-\x1F\x7F]/g;

/**
 * Times are written in UTC, which every program shows as the hours of whoever reads it, and which alone can tell the two halves
 * apart of an hour that comes twice.
 * @param alarm minutes before each entry; none where absent
 * @returns lines of at most 75 octets, each with CR and LF
 */
export function icalendar({ plan }: Compared, entries: readonly CalendarEntry[], alarm?: number): string {
    const { title, date, reference, revision, zone } = plan.event!;
    const day = date!.iso!;
    const clock = eveningClock(plan)!;
    const sequence = revision?.count ?? 0;
    const stamp = new Date(Date.parse(`${day}T00:00:00Z`) + sequence * 1000);
    const evening = reference ? `reference ${reference.text}` : `${day} ${zone!.text} ${title}`;
    const place = [plan.room?.title, plan.house.origin && plan.house.title].filter((name) => name !== undefined);
    const calendar = ical({ prodId: { company: 'Underliner', product: 'Service plan', language: 'EN' } });
    const seen = new Map<string, number>();
    for (const { key, summary, description, start, end } of entries) {
        // The second of two that are called the same is the second in every revision.
        const number = (seen.get(key) ?? 0) + 1;
        seen.set(key, number);
        const event = calendar.createEvent({
            id: uuidOf(`${evening}\n${key}${number > 1 ? `\n${number}` : ''}`.normalize('NFC'), NAMESPACE),
            sequence,
            stamp,
            start: new Date(clock.instant(start)!),
            end: end === undefined ? undefined : new Date(clock.instant(end)!),
            summary: plain(summary),
            description: plain(description),
            location: place.length > 0 ? plain(place.join(', ')) : undefined,
        });
        if (alarm !== undefined) {
            event.createAlarm({ triggerBefore: alarm * 60 });
        }
    }
    return `${calendar.toString().trimEnd()}\r\n`;
}

const plain = (text: string): string => text.replace(CONTROLS, '');
