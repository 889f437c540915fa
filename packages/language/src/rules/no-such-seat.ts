import { defineRule } from './rule.js';
import { counted, quoted } from './wording.js';

const plan = (row: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 16 {
        ${row}
    }
}

room "Long gallery" 18 m by 11 m {
    table T1 to T2: round 60 inch, 8 seats
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
    id: 'no-such-seat',
    group: 'guests',
    since: '0.1.0',
    title: 'A seat the table does not have',
    why: 'The plate for a guest with an allergy goes to a numbered seat. A number past the last leaves the server to guess.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only the host knows where the guest sits.',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('1 vegetarian at T1 seat <|9|>') }],
        right: [{ text: plan('1 vegetarian at T1 seat 8') }],
    },
    check({ plan, report }) {
        const seats = [...(plan.event?.guests?.rows ?? []), ...plan.seating].flatMap((each) => each.seat ?? []);
        for (const { table, seat } of seats) {
            const tables = plan.room?.tables.find((each) => each.names.includes(table.name));
            const most = tables?.seats?.count;
            if (seat && tables && most !== undefined && (seat.count < 1 || seat.count > most)) {
                report({
                    at: seat.origin,
                    message: `${quoted(table.name)} has ${counted(most, 'seat')}, and no seat ${seat.count}.`,
                    hint: `Give a seat from 1 to ${most}.`,
                    related: [{ at: tables.origin, message: `${counted(most, 'seat')} here.` }],
                });
            }
        }
    },
});
