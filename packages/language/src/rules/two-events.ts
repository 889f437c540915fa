import { defineRule } from './rule.js';
import { listed, quoted } from './wording.js';

export default defineRule({
    id: 'two-events',
    group: 'text',
    since: '0.1.0',
    title: 'Two events in reach of one plan',
    why: 'A plan is for one evening: one date, one list of guests. Two events share a menu or a house by using the same file.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only the chef knows which of the two the plan is for; the other belongs in a file of its own.',
    scope: 'file',
    examples: {
        wrong: [
            {
                text: `event "Lantern night supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 84
}

event <|"Harvest lunch"|> {
    date 2026-10-18
    zone America/Halifax
    seated 12:30
    guests 40
}

menu {
    course dessert "Burnt honey custard" {
        served on dessert-plate at 6 °C
        lasts 20 min
        contains egg, milk
    }
}
`,
            },
        ],
        right: [
            {
                text: `event "Lantern night supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 84
}

menu {
    course dessert "Burnt honey custard" {
        served on dessert-plate at 6 °C
        lasts 20 min
        contains egg, milk
    }
}
`,
            },
        ],
    },
    check({ plan, report }) {
        const events = plan.readings.flatMap((reading) => reading.events);
        const [first, ...others] = events;
        if (first && others.length > 0) {
            const titles = listed(events.map((event) => quoted(event.title)));
            for (const other of others) {
                report({
                    at: other.titleOrigin,
                    message: `This plan reaches ${events.length} events: ${titles}; only the first counts.`,
                    hint: 'Keep one event in the file, and put the other in a file of its own.',
                    related: [{ at: first.titleOrigin, message: 'This is the event that counts.' }],
                });
            }
        }
    },
});
