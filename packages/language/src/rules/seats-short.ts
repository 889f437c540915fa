import type { Tables } from '../plan/types.js';
import { fixesThat } from './room-trial.js';
import { defineRule } from './rule.js';
import { moreSeats, moreTables } from './table-changes.js';
import { seatsMissing } from './table-problems.js';
import { counted, listed, quoted } from './wording.js';

const plan = (guests: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests ${guests}
}

room "Boat store" 9 m by 7 m {
    table A to C: round 60 inch, 8 seats
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
    id: 'seats-short',
    group: 'guests',
    severity: 'warning',
    since: '0.1.0',
    title: 'Fewer seats in the room than guests',
    why: 'A guest without a chair is found out when all others sit. A table more, or a longer one, changes the count of cloths, covers and servers.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|30|>') }],
        right: [{ text: plan('24 set for 26') }],
    },
    check({ plan, service, report }) {
        const { room, event } = plan;
        const guests = event?.guests;
        if (!room || !guests || room.tables.length === 0 || room.tables.some(isOpen)) {
            return;
        }
        const seats = room.tables.reduce((sum, { names, seats }) => sum + names.length * seats!.count, 0);
        const { count, origin } = guests.expected;
        // Covers set beyond the guests (`set for`) are laid as more guests come, with a chair each.
        if (seats >= count) {
            return;
        }
        const tables = room.tables.map(({ names, seats }) => `${counted(names.length, 'table')} of ${seats!.count}`);
        report({
            at: origin,
            message: `${quoted(room.title)} has ${counted(seats, 'seat')} (${listed(tables)}) for ${counted(count, 'guest')}: ${count - seats} short.`,
            hint: 'Add a table to the room, or more seats where the tables allow it.',
            related: [{ at: room.head, message: 'The room and its tables are here.' }],
            fixes: fixesThat((changed, after) => seatsMissing(changed, after) === 0, { plan, service }, [
                room.tables.flatMap((each) => moreSeats(plan, each, count - seats)),
                room.tables.flatMap((each) => moreTables(plan, each, count - seats)),
            ]),
        });
    },
});

/** A table that does not say how many sit at it, or a range that cannot be counted, may have room for all. */
function isOpen({ seats, names, last }: Tables): boolean {
    return seats === undefined || (last !== undefined && names.length === 1);
}
