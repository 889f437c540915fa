import { show } from '../plan/quantity.js';
import { eveningClock } from '../service/clock/evening.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (ends: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    ends ${ends}
    guests 24
}

room "Boathouse" 12 m by 9 m {
    table A to C: round 60 inch, 8 seats
}

team { captain 1   servers 3   runners 1   plating-lines 1 at 12 plates per min }

menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'service-outlasts-evening',
    group: 'service',
    since: '0.2.0',
    title: 'Service that goes on when the last guest is to have gone',
    why: 'Cars are ordered, buses leave and the hall is handed back at the hour that the plan states, whether dessert has come or not.',
    source: ['table-service 10.17', 'quantities 6.2', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|19:20|>') }],
        right: [{ text: plan('20:00') }],
    },
    check({ plan, service, report }) {
        const clock = eveningClock(plan);
        const { ends } = plan.event ?? {};
        const end = clock?.after(ends, 'end');
        const run = end === undefined ? undefined : service.run;
        if (!run || !clock || !ends || end === undefined || run.over <= end) {
            return;
        }
        const over = Math.ceil(run.over);
        const later = clock.face(Math.ceil(run.over / ROUND) * ROUND);
        const last = plan.menu?.courses.at(-1);
        report({
            at: ends.origin,
            message: `The last table is cleared at ${clock.face(over)}, ${show(Math.ceil(run.over - end), 'min')} after the ${quoted(ends.written)} at which the last guest is to have gone.`,
            hint: `Let the evening end at ${later}, seat guests earlier, or serve a course less.`,
            related: last ? [{ at: last.head, message: 'This is the last course.' }] : [],
            fixes: [
                {
                    title: `End at ${later}`,
                    safety: 'unsafe',
                    preferred: true,
                    changes: [{ do: 'replace', at: ends.origin, words: later }],
                },
            ],
        });
    },
});

/** An evening is announced to the quarter of an hour, min. */
const ROUND = 15;
