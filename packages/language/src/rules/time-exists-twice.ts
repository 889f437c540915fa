import { isoOffset } from '../service/clock/local-time.js';
import { show } from '../plan/quantity.js';
import { timesInChange, writeTime } from './clock-changes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (ends: string): string => `event "Boathouse supper" {
    date 2025-11-01
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

/** Minutes: a time before the hour that comes twice is named a little earlier than its last minute. */
const A_LITTLE = 5;

export default defineRule({
    id: 'time-exists-twice',
    group: 'guests',
    severity: 'warning',
    since: '0.2.0',
    title: 'A time that the clocks show twice that night',
    why: 'In the night in which the clocks go back an hour comes twice. Half the cars and half the crew take the first, the others the second.',
    source: ['quantities 10', 'quantities 14.5'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [{ title: 'The hour between one and two in the night of 2 November 2025', text: plan('<|01:30|>') }],
        right: [{ text: plan('00:30') }],
    },
    check({ plan, report }) {
        for (const { stated, change } of timesInChange(plan, 'twice')) {
            const [first, second] = change.offsets.map(isoOffset);
            report({
                at: stated.time.origin,
                message: `${stated.what} at ${quoted(stated.time.written)}, which the clocks of ${quoted(plan.event?.zone?.text ?? '')} show twice on ${change.date}: at ${first} from UTC, and ${show(change.again - change.moment, 'min')} later at ${second}.`,
                hint: 'It is counted as the first. Write a time that comes once, so that nobody has to ask.',
                fixes: [writeTime(stated, change.to, true), writeTime(stated, change.from - A_LITTLE)],
            });
        }
    },
});
