import type { Event, Menu } from '../plan/types.js';
import type { Fix } from './fixes.js';
import { defineRule, type Report } from './rule.js';
import { quoted } from './wording.js';

const plan = (times: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    ${times}
    guests 24
}

menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'times-out-of-order',
    group: 'guests',
    since: '0.1.0',
    title: 'Times of the evening in the wrong order',
    why: 'The run sheet counts every time from the hour at which guests sit down. They cannot sit before the doors open, and a crew that has not eaten before then eats after the last guest has left.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'A morning hour for an evening', text: plan('doors 18:00  seated <|6:30|>') },
            { title: 'Guests sit before the doors open', text: plan('doors 19:00  seated <|18:30|>') },
            { title: 'The crew eats while guests do', text: plan('seated 19:00  crew 12 at <|19:10|>') },
        ],
        right: [{ text: plan('doors 18:00  seated 18:30  crew 12 at 17:00') }],
    },
    check({ plan: { event, menu }, report }) {
        if (event) {
            judgeDoors(event, report);
            judgeCrew(event, menu, report);
        }
    },
});

/** Minutes since midnight. */
const [HALF_A_DAY, LATE_EVENING, EARLY_MORNING] = [12 * 60, 20 * 60, 5 * 60];

function judgeDoors({ doors, seated }: Event, report: (report: Report) => void): void {
    const [from, to] = [doors?.minutes, seated?.minutes];
    if (!doors || !seated || from === undefined || to === undefined || from <= to) {
        return;
    }
    // A supper after midnight.
    if (from >= LATE_EVENING && to < EARLY_MORNING) {
        return;
    }
    const evening = to + HALF_A_DAY;
    const isMorning = to < HALF_A_DAY && evening >= from;
    const fix: Fix = isMorning
        ? {
              title: `Seat guests at ${clock(evening)}`,
              safety: 'unsafe',
              preferred: true,
              changes: [{ do: 'replace', at: seated.origin, words: clock(evening) }],
          }
        : {
              title: `Open the doors at ${clock(to)} and seat guests at ${clock(from)}`,
              safety: 'unsafe',
              preferred: true,
              changes: [
                  { do: 'replace', at: doors.origin, words: clock(to) },
                  { do: 'replace', at: seated.origin, words: clock(from) },
              ],
          };
    report({
        at: seated.origin,
        message: `Guests sit down at ${quoted(seated.written)}, before the doors open at ${quoted(doors.written)}.`,
        hint: isMorning
            ? `Hours run from 0 to 24: half past six in the evening is \`18:30\`.`
            : 'Doors open first; then guests sit down.',
        related: [{ at: doors.origin, message: 'The doors open here.' }],
        fixes: [fix],
    });
}

/** A crew may eat before guests sit or when they have gone, and not while it serves them. */
function judgeCrew({ crew, seated }: Event, menu: Menu | undefined, report: (report: Report) => void): void {
    const [eats, sits] = [crew?.at?.minutes, seated?.minutes];
    const service = (menu?.courses ?? []).reduce((sum, { lasts }) => sum + (lasts?.time.value ?? 0), 0);
    if (eats === undefined || sits === undefined || eats < sits || eats >= sits + service) {
        return;
    }
    report({
        at: crew!.at!.origin,
        severity: 'warning',
        message: `The crew eats at ${quoted(crew!.at!.written)}, while it serves the guests who sit down at ${quoted(seated!.written)}.`,
        hint: 'Let the crew eat before guests sit down, with time left to change and to be briefed.',
        related: [{ at: seated!.origin, message: 'Guests sit down here.' }],
    });
}

function clock(minutes: number): string {
    return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':');
}
