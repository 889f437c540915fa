import { clockFace } from '../service/clock/local-time.js';
import { timesInChange, writeTime } from './clock-changes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (ends: string): string => `event "Boathouse supper" {
    date 2026-03-07
    zone America/New_York
    seated 19:00
    ends ${ends}
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
    id: 'time-does-not-exist',
    group: 'guests',
    since: '0.2.0',
    title: 'A time that the clocks leave out that night',
    why: 'In the night in which the clocks go forward an hour is missing. A crew called or cars ordered for a time inside it come an hour apart, each sure of being right.',
    source: ['quantities 10', 'quantities 14.5'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [{ title: 'The hour between two and three in the night of 8 March 2026', text: plan('<|02:30|>') }],
        right: [{ text: plan('01:30') }],
    },
    check({ plan, report }) {
        for (const { stated, change } of timesInChange(plan, 'never')) {
            const gap = change.to - change.from;
            const shown = (stated.time.minutes ?? 0) + gap;
            report({
                at: stated.time.origin,
                message: `${stated.what} at ${quoted(stated.time.written)}, which does not exist on ${change.date} in ${quoted(plan.event?.zone?.text ?? '')}: the clocks go forward from ${clockFace(change.from)} to ${clockFace(change.to)}.`,
                hint: `Until it is written otherwise it is counted as ${clockFace(shown)}, what the clocks show by then.`,
                fixes: [writeTime(stated, shown, true)],
            });
        }
    },
});
