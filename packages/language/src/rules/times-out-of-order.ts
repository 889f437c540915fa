import type { Event, Menu, Plan } from '../plan/types.js';
import { eveningClock, sitsAfterMidnight } from '../service/clock/evening.js';
import { clockFace } from '../service/clock/local-time.js';
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
            { title: 'An end before the beginning', text: plan('seated 12:30  ends <|3:30|>') },
            { title: 'The crew eats while guests do', text: plan('seated 19:00  crew 12 at <|19:10|>') },
        ],
        right: [
            { text: plan('doors 18:00  seated 18:30  ends 23:30  crew 12 at 17:00') },
            { title: 'An evening over midnight', text: plan('seated 19:00  ends 01:00') },
        ],
    },
    check({ plan, report }) {
        const { event, menu } = plan;
        if (event) {
            judgeDoors(event, report);
            judgeCrew(event, menu, report);
            judgeEnd(plan, event, report);
        }
    },
});

/** Minutes. */
const HALF_A_DAY = 12 * 60;

function judgeDoors(event: Event, report: (report: Report) => void): void {
    const { doors, seated } = event;
    const [from, to] = [doors?.minutes, seated?.minutes];
    if (!doors || !seated || from === undefined || to === undefined || from <= to || sitsAfterMidnight(event)) {
        return;
    }
    const evening = to + HALF_A_DAY;
    const isMorning = to < HALF_A_DAY && evening >= from;
    const fix: Fix = isMorning
        ? {
              title: `Seat guests at ${clockFace(evening)}`,
              safety: 'unsafe',
              preferred: true,
              changes: [{ do: 'replace', at: seated.origin, words: clockFace(evening) }],
          }
        : {
              title: `Open the doors at ${clockFace(to)} and seat guests at ${clockFace(from)}`,
              safety: 'unsafe',
              preferred: true,
              changes: [
                  { do: 'replace', at: doors.origin, words: clockFace(to) },
                  { do: 'replace', at: seated.origin, words: clockFace(from) },
              ],
          };
    report({
        at: seated.origin,
        message: `Guests sit down at ${quoted(seated.written)}, before the doors open at ${quoted(doors.written)}.`,
        hint: isMorning
            ? 'Hours run from 0 to 24: half past six in the evening is `18:30`.'
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

/** An evening goes on past midnight, and not for half a day. */
function judgeEnd(plan: Plan, { ends, seated }: Event, report: (report: Report) => void): void {
    const lasts = eveningClock(plan)?.after(ends, 'end');
    if (!ends || !seated || ends.minutes === undefined || lasts === undefined || lasts <= HALF_A_DAY) {
        return;
    }
    const later = ends.minutes + HALF_A_DAY;
    const isMorning = ends.minutes < HALF_A_DAY && later > (seated.minutes ?? 0);
    report({
        at: ends.origin,
        message: `The evening ends at ${quoted(ends.written)}, before guests sit down at ${quoted(seated.written)}.`,
        hint: isMorning
            ? 'Hours run from 0 to 24: half past six in the evening is `18:30`.'
            : 'Write when the last guest is to have gone; an hour past midnight is `01:00`.',
        related: [{ at: seated.origin, message: 'Guests sit down here.' }],
        fixes: isMorning
            ? [
                  {
                      title: `End at ${clockFace(later)}`,
                      safety: 'unsafe',
                      preferred: true,
                      changes: [{ do: 'replace', at: ends.origin, words: clockFace(later) }],
                  },
              ]
            : [],
    });
}
