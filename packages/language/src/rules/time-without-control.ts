import { judgeByCode } from '../plan/degrees.js';
import type { Origin } from '../plan/origin.js';
import { show, type Quantity } from '../plan/quantity.js';
import type { Plan } from '../plan/types.js';
import { sideOf } from '../service/heat/dish-heat.js';
import { isKeptAhead } from '../service/heat/journey.js';
import { isWithinTime, offControlLimit } from '../service/heat/off-control.js';
import type { DishFacts, Service } from '../service/types.js';
import { hoursWords } from './at-the-guest.js';
import { codeWith } from './code-figures.js';
import { isDoubtful } from './doubt.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (clauses: string): string => `event "Garden lunch" {
    date 2027-07-03
    zone America/New_York
    seated 12:30
    guests 40
}

room "Terrace" 12 m by 10 m {
    at 25 °C
    table A to E: round 60 inch, 8 seats
}

menu {
    course appetizer "Smoked beet and curd" {
        served on salad-plate at 8 °C
        ${clauses}
        lasts 20 min
        contains milk, mustard
    }
}
`;

export default defineRule({
    id: 'time-without-control',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'Food that stands longer without temperature control than the food code allows',
    why: 'Out of the cold or the heat bacteria double every half hour. Most codes let time stand in for a thermometer for a few hours, and what is left then is thrown away.',
    source: ['temperature S6', 'temperature S7', 'temperature 2.3', 'temperature W16'],
    customs: ['room-temperature'],
    fix: 'sometimes',
    noFix: 'Where no time is stated that could be shorter, how the food is kept has to change.',
    scope: 'event',
    examples: {
        wrong: [{ title: 'Set out long before guests sit', text: plan('preset <|4 h|> before seating') }],
        right: [{ text: plan('preset 30 min before seating') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const stay = stayOf(plan, service, facts);
            if (!stay || isDoubtful(plan, facts.dish.origin)) {
                continue;
            }
            const side = sideOf(facts) === 'hot' ? 'hot' : 'cold';
            const off = { side, warmest: service.heat.air.celsius, minutes: stay.minutes } as const;
            const found = codeWith(plan, (code) => offControlLimit(code, off));
            if (!found || isWithinTime(found.value, off) || !isNew(stay.at)) {
                continue;
            }
            const { figure, orIfBelow } = found.value;
            const limit = figure.size.written;
            const cooler =
                orIfBelow === undefined
                    ? ''
                    : ` A longer time is allowed only where it never gets warmer than ${show(orIfBelow, '°C')}, and the room is warmer.`;
            report({
                at: stay.at,
                message: `${quoted(facts.dish.title)} is ${hoursWords(stay.minutes)} without temperature control until it is eaten; ${side} food may be ${limit} (${found.by}).`,
                hint: `Keep it in the cold or the heat for longer, write the time on it, and throw away what is left after ${limit}.${cooler} The local code decides.`,
                fixes: shorter(stay, figure.high),
            });
        }
    },
});

interface Stay {
    /** From the end of its control until the last guest has eaten it. */
    readonly minutes: number;
    /** The time that could be shorter. */
    readonly stated?: Quantity;
    readonly what: string;
    readonly at: Origin;
}

/** Only what the plan itself says of food that stands: set out before guests, plated ahead, or held by time alone. */
function stayOf(plan: Plan, service: Service, facts: DishFacts): Stay | undefined {
    const { dish, course } = facts;
    const courseRun = service.run?.courses.find((each) => each.course === course.index);
    const plates = courseRun?.dishes.find((each) => each.dish === dish.index);
    const lasts = course.lasts?.time.value ?? 0;
    if (course.preset) {
        const { before, origin } = course.preset;
        const minutes =
            courseRun && plates ? courseRun.finished.last - plates.first.plated : (before?.value ?? 0) + lasts;
        return { minutes, ...(before && { stated: before }), what: 'Set', at: before?.origin ?? origin };
    }
    const onTheTable = courseRun && plates ? courseRun.finished.last - plates.first.plated : lasts;
    const held = dish.heldAt;
    if (held?.time && !isKept(plan, held.temperature)) {
        return { minutes: held.time.value + onTheTable, stated: held.time, what: 'Hold', at: held.time.origin };
    }
    return dish.platedAhead && !isKeptAhead(dish)
        ? { minutes: onTheTable, what: 'Plate', at: dish.platedAhead.origin }
        : undefined;
}

/** Cold enough or hot enough for the code: then time does not count. */
function isKept({ code }: Plan, held: Quantity): boolean {
    const hot = code.figures['hot-holding'];
    const cold = code.figures['cold-holding'];
    return (
        (hot !== undefined && !judgeByCode(held, hot, 'least').isBroken) ||
        (cold !== undefined && !judgeByCode(held, cold, 'most').isBroken)
    );
}

/** Five minutes, in which a kitchen reckons. */
const STEP = 5;

function shorter({ minutes, stated, what, at }: Stay, limit: number): Fix[] {
    const left = stated && Math.floor((stated.value - (minutes - limit)) / STEP) * STEP;
    if (!left || left <= 0) {
        return [];
    }
    const words = left % 60 === 0 ? `${left / 60} h` : show(left, 'min');
    const title = what === 'Set' ? `Set it out ${words} before seating` : `Hold it for ${words}`;
    return [{ title, safety: 'unsafe', changes: [{ do: 'replace', at, words }] }];
}
