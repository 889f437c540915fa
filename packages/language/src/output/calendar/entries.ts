import { counted } from '../../rules/wording.js';
import { eveningClock } from '../../service/clock/evening.js';
import type { Compared } from '../comparison/change.js';
import { restOfEvening } from '../comparison/rest-of-evening.js';
import { courseTitle, dayInWords, FIGURES_ADVISE } from '../sheets/evening.js';

/** One entry of a calendar. Times are minutes after guests are seated, on the minute. */
export interface CalendarEntry {
    /** What it is, whatever its time and words: the same in every revision of a plan. */
    readonly key: string;
    readonly summary: string;
    readonly description: string;
    readonly start: number;
    /** Absent for what takes no time, such as the hour at which people are wanted. */
    readonly end?: number;
}

/** The whole evening as one entry, from the doors until its end. @returns a sentence where the plan does not say when it ends */
export function wholeEvening(source: Compared): CalendarEntry | string {
    const { plan, service } = source;
    const { doors, ends, title } = plan.event!;
    const clock = eveningClock(plan)!;
    const end = clock.after(ends, 'end') ?? service.preparations?.strike.guestsGone ?? service.run?.over;
    if (end === undefined) {
        return 'The plan does not say when the evening ends. Write `ends 23:30` into the event, or state room and team, so that it is computed.';
    }
    const lines = [
        `${counted(service.guestCount, 'guest')}, covers for ${service.setFor}.`,
        ...momentsBefore(source).map(({ start, summary }) => `${clock.face(start)}  ${summary}.`),
        `${clock.face(0)}  Guests sit.`,
        ...restOfEvening(source).map(({ clock: face, text }) => `${face}  ${sentence(text)}.`),
        ...foot(source),
    ];
    return {
        key: 'evening',
        summary: title,
        description: lines.join('\n'),
        ...span(clock.after(doors, 'doors') ?? 0, end),
    };
}

/**
 * One entry for each call of the evening: when people are wanted, what is done before doors, each course, toast and speech.
 * @returns a sentence where no run sheet tells when anything is called
 */
export function callsOfEvening(source: Compared): CalendarEntry[] | string {
    const { plan, service } = source;
    if (!service.run) {
        return 'No run sheet tells when anything is called. It wants guests, a menu, a room with tables, and a team with servers.';
    }
    const clock = eveningClock(plan)!;
    const about = foot(source);
    const told = new Map(
        restOfEvening(source)
            .filter(({ text }) => text.startsWith('call '))
            .map(({ minutes, text }) => [minutes, sentence(text)]),
    );
    const before = momentsBefore(source).map((moment): CalendarEntry => ({
        ...moment,
        description: [plan.event!.title, ...about].join('\n'),
    }));
    const seated: CalendarEntry = {
        key: 'seated',
        summary: 'Guests sit',
        description: [plan.event!.title, `${counted(service.guestCount, 'guest')}.`, ...about].join('\n'),
        start: 0,
    };
    const courses = service.run.courses.map(({ course, fired, served }): CalendarEntry => {
        const title = courseTitle(plan, course);
        return {
            key: `course ${title}`,
            summary: `Call: ${title}`,
            description: [plan.event!.title, `${told.get(fired) ?? ''}.`, ...about].join('\n'),
            ...span(fired, served.last),
        };
    });
    const speeches = service.run.speeches.map(({ speech, start, end }): CalendarEntry => {
        const { title, sort } = plan.menu!.speeches[speech]!;
        return {
            key: `${sort} ${title ?? ''}`,
            summary: capital(title ? `${sort}: ${title}` : sort),
            description: [plan.event!.title, `Until ${clock.face(end)}.`, ...about].join('\n'),
            ...span(start, end),
        };
    });
    return [...before, seated, ...courses, ...speeches].toSorted((a, b) => a.start - b.start);
}

/** What is to be at a certain time before guests sit. */
function momentsBefore({ plan, service }: Compared): Omit<CalendarEntry, 'description'>[] {
    const { preparations } = service;
    const doors = eveningClock(plan)!.after(plan.event?.doors, 'doors');
    const { calls = [], staffMeal, briefing, lineUp } = preparations?.setUp ?? {};
    const timed = (key: string, summary: string, time?: { readonly start: number; readonly end: number }) =>
        time ? [{ key, summary, ...span(time.start, time.end) }] : [];
    return [
        ...calls.map(({ role, count, at }) => ({
            key: `wanted ${role}`,
            summary: `Call time: ${counted(count, role.replaceAll('-', ' '))}`,
            start: Math.round(at),
        })),
        ...timed('crew-meal', 'Crew eats', staffMeal),
        ...timed('briefing', 'Briefing', briefing),
        ...timed('line-up', 'Line-up', lineUp),
        ...(doors === undefined ? [] : timed('doors', 'Doors', { start: doors, end: 0 })),
    ].toSorted((a, b) => a.start - b.start);
}

/** On the minute, and never without any length: an end that is no later than its beginning is none (RFC 5545 3.8.2.2). */
function span(start: number, end: number): { readonly start: number; readonly end: number } {
    const from = Math.round(start);
    return { start: from, end: Math.max(Math.round(end), from + 1) };
}

function foot({ plan }: Compared): string[] {
    const { date, zone, revision } = plan.event!;
    return [
        `${dayInWords(date!.iso!)}${revision ? `, revision ${revision.count}` : ''}. Times in the text are those of ${zone!.text}.`,
        FIGURES_ADVISE,
    ];
}

/** What a call is, without the marks that a terminal wants. */
const sentence = (text: string): string => capital(text.replace(/`([^`]*)`/g, '“$1”'));
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
