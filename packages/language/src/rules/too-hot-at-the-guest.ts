import { degreesLike } from '../plan/degrees.js';
import type { Quantity } from '../plan/quantity.js';
import { heatOfDish } from '../service/heat/heat.js';
import type { DishHeat } from '../service/heat/types.js';
import type { DishFacts } from '../service/types.js';
import { bandLike, degreesBeyond, startOf, whereAndWhen } from './at-the-guest.js';
import { isDoubtful } from './doubt.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { startAt } from './mend-at-the-guest.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (pass: string): string => `event "Lantern supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

room "Long gallery" 12 m by 10 m {
    at 20 °C
    table T1 to T5: round 60 inch, 8 seats
}

team { captain 1  servers 3  runners 1  plating-lines 1 at 10 plates per min }

menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed to 60 °C at 64 °C, portion 250 ml
        leaves the pass at ${pass}
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}
`;

export default defineRule({
    id: 'too-hot-at-the-guest',
    group: 'safety',
    safety: 'floor',
    severity: 'warning',
    since: '0.1.0',
    title: 'A soup that scalds the first guest who tastes it',
    why: 'What is poured hot enough for the last table is hotter at the first, a minute from the pass. Above 72 °C soup hurts the mouth, and a child’s sooner.',
    source: ['temperature D10', 'temperature D11', 'temperature 13'],
    customs: ['scald-limit'],
    fix: 'sometimes',
    noFix: 'Where what spares the first guest is cold at the last, the way has to become shorter.',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|92 °C|>') }],
        right: [{ text: plan('78 °C') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const { dish } = facts;
            const heat = heatOfDish(service.heat, facts);
            const first = heat?.first;
            const limit = plan.customs['scald-limit'].value;
            const start = startOf(dish);
            const celsius = first?.temperature?.celsius;
            if (!start || !heat || !first?.temperature || celsius === undefined || Math.round(celsius) <= limit) {
                continue;
            }
            // What is wanted so hot is found where it is wanted.
            const isWanted = facts.wanted !== undefined && facts.wanted > limit;
            if (isWanted || isDoubtful(plan, dish.origin) || !isNew(start.temperature.origin)) {
                continue;
            }
            const like = dish.served.temperature ?? start.temperature;
            report({
                at: start.temperature.origin,
                message: `${quoted(dish.title)} is at ${bandLike(like, first.temperature)} before its first guest, ${whereAndWhen(first)}; above ${degreesLike(like, limit)} it scalds.`,
                hint: 'Pour it cooler and shorten the way of the last table, or let it stand; serve children cooler still. A thermometer decides.',
                fixes: cooler(facts, heat, like),
            });
        }
    },
});

/** The hottest that spares the first guest, where the last one still has it as wanted. */
function cooler({ dish }: DishFacts, { answers }: DishHeat, like: Quantity): Fix[] {
    const { hottest, pass } = answers ?? {};
    if (hottest === undefined || !pass || !('celsius' in pass) || dish.measured) {
        return [];
    }
    const words = degreesBeyond(like, hottest, 'cold');
    return Number.parseFloat(degreesBeyond(like, pass.celsius, 'hot')) <= Number.parseFloat(words)
        ? startAt(dish, words)
        : [];
}
