import { ROOM_AIR } from '../service/heat/air.js';
import { heatOfDish } from '../service/heat/heat.js';
import { HOTTEST_LIQUID } from '../service/heat/inverse.js';
import { touchLimits } from '../service/heat/touch-limits.js';
import type { DishHeat } from '../service/heat/types.js';
import type { DishFacts } from '../service/types.js';
import { startOf, whereAndWhen } from './at-the-guest.js';
import { isDoubtful } from './doubt.js';
import { firstSight } from './first-sight.js';
import { whyNothingMends } from './mend-at-the-guest.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const supper = (temperature: string): string => `event "Harvest supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

room "Gallery" 18 m by 11 m { table A to E: round 60 inch, 8 seats }
team { captain 1  servers 3  runners 1  plating-lines 1 at 10 plates per min }

menu {
    course soup "Barley broth" {
        served in soup-bowl warmed to 60 °C at ${temperature}, portion 250 ml
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains barley
    }
}
`;

export default defineRule({
    id: 'unreachable-at-the-guest',
    group: 'service',
    severity: 'warning',
    since: '0.1.0',
    title: 'A temperature that nothing safe at the pass brings to the last guest',
    why: 'Sent so hot that the last guest has it as wanted, a soup scalds the first. That is known before anybody has said how warm it leaves the pass, and on the evening it is too late.',
    source: ['temperature 13', 'temperature 12', 'temperature D11'],
    customs: ['room-temperature', 'humidity', 'warmed-to', 'chilled-to', 'scald-limit'],
    fix: 'never',
    noFix: 'Whether it is wanted cooler, in a warmer bowl, or brought by more people only the chef decides.',
    scope: 'event',
    examples: {
        wrong: [{ title: 'A broth wanted hotter than it can be served', text: supper('<|70 °C|>') }],
        right: [{ text: supper('60 °C') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        const air = service.heat.air.celsius;
        if (air < ROOM_AIR.coldest || air > ROOM_AIR.warmest) {
            // No guests sit in such air, and that is told (`figure-out-of-reach`).
            return;
        }
        for (const facts of service.facts) {
            const { dish } = facts;
            const { temperature: wanted } = dish.served;
            const heat = heatOfDish(service.heat, facts);
            const answer = heat?.answers?.pass;
            // What says how warm it leaves the pass is told by the rules of what it then is at the guest.
            if (!wanted || !heat?.last || startOf(dish) || !answer || !('refused' in answer)) {
                continue;
            }
            // Kept as the local code has it, it comes as wanted or better; no soup of 150 °C is meant.
            if (answer.refused === 'holding' || wanted.value > HOTTEST_LIQUID) {
                continue;
            }
            // A bowl that nobody warms or chills is told first.
            if (!dish.served.vessel?.state || isDoubtful(plan, dish.origin) || !isNew(wanted.origin)) {
                continue;
            }
            report({
                at: wanted.origin,
                message: `${quoted(dish.title)} can’t be at ${wanted.written} before its last guest, ${whereAndWhen(heat.last)}, however it leaves the pass.`,
                hint: `${whyNothingMends(wanted, heat)} ${waysOut(facts, heat)}`,
            });
        }
    },
});

/** What is left to do: not what is done already, nor what would burn a hand. */
function waysOut({ vessel }: DishFacts, { side, covered, vessel: taken }: DishHeat): string {
    if (side !== 'hot') {
        return 'Shorten its way, chill its bowl more, or want it warmer.';
    }
    const mayBeWarmer = vessel !== undefined && taken !== undefined && taken.celsius < touchLimits(vessel).never;
    const ways = [...(covered ? [] : ['carry it covered']), ...(mayBeWarmer ? ['warm its bowl more'] : [])];
    return `${['Shorten its way', ...ways].join(', ')}, or want it cooler.`;
}
