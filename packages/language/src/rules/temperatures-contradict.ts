import { judgeByCode } from '../plan/degrees.js';
import type { Quantity } from '../plan/quantity.js';
import type { Plan } from '../plan/types.js';
import { sideOf } from '../service/heat/dish-heat.js';
import type { DishFacts } from '../service/types.js';
import { isDoubtful } from './doubt.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (clauses: string): string => `event "Lantern supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        ${clauses}
        lasts 30 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'temperatures-contradict',
    group: 'service',
    since: '0.1.0',
    title: 'Temperatures of one dish that cannot all be true',
    why: 'On its way a hot dish only cools and a cold one only warms. One of the figures is a slip, and the kitchen will follow one of them.',
    source: ['temperature H1', 'temperature 13'],
    fix: 'sometimes',
    noFix: 'A reading is what the thermometer showed; only who held it knows whether it or the other figure is wrong.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'Colder at the pass than at the guest', text: plan('leaves the pass at <|58 °C|>') },
            { title: 'Held colder than it is wanted', text: plan('held at <|61 °C|>') },
            {
                title: 'A reading hotter than it was',
                text: plan('leaves the pass at 72 °C\n        measured <|76 °C|> after 4 min'),
            },
        ],
        right: [{ text: plan('held at 78 °C\n        leaves the pass at 75 °C\n        measured 70 °C after 3 min') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const { dish } = facts;
            if (isDoubtful(plan, dish.origin)) {
                continue;
            }
            const start = startThatContradicts(plan, facts);
            const { temperature: wanted } = dish.served;
            if (start && wanted && isNew(start.temperature.origin)) {
                const side = sideOf(facts) === 'hot' ? 'colder' : 'warmer';
                report({
                    at: start.temperature.origin,
                    message: `${quoted(dish.title)} ${start.verb} at ${start.temperature.written}, ${side} than the ${wanted.written} it is wanted at before the guest.`,
                    hint: 'Nothing on its way makes it so. Write what it starts from, or what it is wanted at.',
                    related: [{ at: wanted.origin, message: 'It is wanted so here.' }],
                    fixes: dish.leavesPass ? swapped(start.temperature, wanted) : [],
                });
            }
            const from = dish.leavesPass?.temperature ?? dish.heldAt?.temperature;
            const reading = dish.measured?.temperature;
            if (!start && from && reading && isNew(reading.origin) && isBeyond(facts, from, reading)) {
                const side = sideOf(facts) === 'hot' ? 'hotter' : 'colder';
                report({
                    at: reading.origin,
                    message: `A thermometer is said to have shown ${reading.written} in ${quoted(dish.title)}, ${side} than the ${from.written} it starts from.`,
                    hint: 'Correct the one that is wrong; the reading wins where both are sure.',
                    related: [{ at: from.origin, message: 'It starts from here.' }],
                });
            }
        }
    },
});

/** Where its start is on the wrong side of what is wanted. What is held within the danger zone has rules of its own. */
function startThatContradicts(
    plan: Plan,
    facts: DishFacts,
): { readonly temperature: Quantity; readonly verb: string } | undefined {
    const { dish } = facts;
    const wanted = dish.served.temperature;
    const side = sideOf(facts);
    const isWrong = (start: Quantity): boolean =>
        wanted !== undefined && (side === 'hot' ? start.value < wanted.value : start.value > wanted.value);
    if (side !== 'hot' && side !== 'cold') {
        return undefined;
    }
    if (dish.leavesPass) {
        const { temperature } = dish.leavesPass;
        return isWrong(temperature) ? { temperature, verb: 'leaves the pass' } : undefined;
    }
    const held = dish.heldAt?.temperature;
    if (!held || dish.reheat || !isWrong(held)) {
        return undefined;
    }
    const limit = plan.code.figures[`${side}-holding`];
    const isKept = limit !== undefined && !judgeByCode(held, limit, side === 'hot' ? 'least' : 'most').isBroken;
    return isKept ? { temperature: held, verb: 'is held' } : undefined;
}

function isBeyond(facts: DishFacts, from: Quantity, reading: Quantity): boolean {
    const side = sideOf(facts);
    return side === 'hot' ? reading.value > from.value : side === 'cold' && reading.value < from.value;
}

/** The two figures may simply have changed places. */
function swapped(start: Quantity, wanted: Quantity): Fix[] {
    return [
        {
            title: `Start at ${wanted.written} and have it at ${start.written} before the guest`,
            safety: 'unsafe',
            changes: [
                { do: 'replace', at: start.origin, words: wanted.written },
                { do: 'replace', at: wanted.origin, words: start.written },
            ],
        },
    ];
}
