import { heatOfDish } from '../service/heat/heat.js';
import { minutesWords } from './at-the-guest.js';
import { isDoubtful } from './doubt.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (within: string, runners: number): string => `event "Lantern supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 48
}

room "Long gallery" 16 m by 10 m {
    table T1 to T6: round 60 inch, 8 seats
}

team { captain 1  servers 4  runners ${runners}  plating-lines 1 at 12 plates per min }

menu {
    course dessert "Damson ice" is ice-cream {
        served in sorbet-coupe chilled at -12 °C, within ${within}
        eaten with teaspoon chilled, brought with the course
        lasts 12 min
        contains milk, egg
    }
}
`;

export default defineRule({
    id: 'late-at-the-guest',
    group: 'service',
    since: '0.1.0',
    title: 'A plate that takes longer to its guest than it stands',
    why: 'Ices soften and soufflés fall by the minute, and no figure tells how far. The kitchen knows how long its dish stands; the plan tells how long it takes.',
    source: ['temperature 13', 'common practice, no source'],
    fix: 'never',
    noFix: 'More runners, fewer tables, a shorter way or a firmer dish: only the house knows which it can have.',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|1 min|>', 1) }],
        right: [{ text: plan('6 min', 2) }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const { dish } = facts;
            const heat = heatOfDish(service.heat, facts);
            const within = dish.served.within?.time;
            if (!within || !heat?.last || !heat.first || heat.last.minutes <= within.value) {
                continue;
            }
            if (isDoubtful(plan, dish.origin) || !isNew(within.origin)) {
                continue;
            }
            const { last, first } = heat;
            report({
                at: within.origin,
                message: `${quoted(dish.title)} is ${minutesWords(last.minutes)} on its way to the last guest, at ${quoted(last.journey.table)}; it may be ${within.written}.`,
                hint: `It stands ${minutesWords(last.journey.standing)} on the pass and is carried ${minutesWords(last.journey.carried)}; the first guest has it after ${minutesWords(first.minutes)}. Put more runners on it, or plate it in smaller lots.`,
            });
        }
    },
});
