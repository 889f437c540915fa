import { degreesLike } from '../plan/degrees.js';
import type { Band } from '../service/heat/band.js';
import { heatOfDish } from '../service/heat/heat.js';
import type { DishHeat } from '../service/heat/types.js';
import type { DishFacts } from '../service/types.js';
import { bandLike, degreesBeyond, minutesWords, misses, startOf, whereAndWhen } from './at-the-guest.js';
import { isDoubtful } from './doubt.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { mendsAtTheGuest, startAt, whyNothingMends } from './mend-at-the-guest.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const evening = (course: string): string => `event "Lantern supper" {
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
    ${course}
}
`;

const soup = (bowl: string, pass: string, wanted = 64): string =>
    evening(`course soup "Roast squash soup" {
        served in soup-bowl warmed to ${bowl} at ${wanted} °C, portion 250 ml
        leaves the pass at ${pass}
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }`);

const lamb = (start: string): string =>
    evening(`course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 60 °C
        ${start}
        lasts 30 min
        contains nothing
    }`);

export default defineRule({
    id: 'cold-at-the-guest',
    group: 'service',
    since: '0.1.0',
    title: 'A hot dish that reaches its guests colder than it is wanted',
    why: 'What leaves the kitchen hot has a bowl to warm, a pass to stand on and a room to cross. It is found out by the last guest, and then it is too late.',
    source: ['temperature 13', 'temperature 12', 'temperature P4', 'temperature P5', 'temperature W9'],
    customs: ['room-temperature', 'humidity', 'warmed-to', 'scald-limit'],
    fix: 'sometimes',
    noFix: 'Where no pour and no bowl is hot enough within what is safe, the way has to become shorter: more runners, or fewer tables.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'Soup that cools on its way', text: soup('45 °C', '<|73 °C|>') },
            { title: 'A roast, by what is published of plates', text: lamb('leaves the pass at <|62 °C|>') },
            {
                title: 'A thermometer that says so',
                text: lamb('leaves the pass at <|70 °C|>\n        measured 60 °C after 1 min'),
            },
        ],
        right: [{ text: soup('60 °C', '77 °C') }, { text: lamb('leaves the pass at 68 °C\n        held at 65 °C') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const { dish } = facts;
            const { temperature: wanted } = dish.served;
            const heat = heatOfDish(service.heat, facts);
            const start = startOf(dish);
            // What starts colder than it is wanted contradicts itself: that has a rule of its own.
            if (!wanted || !start || heat?.side !== 'hot' || start.temperature.value < wanted.value) {
                continue;
            }
            const at = start.temperature.origin;
            const told = tell(facts, heat);
            if (!told || isDoubtful(plan, dish.origin) || !isNew(at)) {
                continue;
            }
            report({
                at,
                message: `${quoted(dish.title)} ${told.is}; it is wanted at ${wanted.written}.`,
                hint: told.hint,
                fixes: told.fixes,
            });
        }
    },
});

interface Told {
    readonly is: string;
    readonly hint: string;
    readonly fixes: readonly Fix[];
}

/** What it is like before its guests, and what mends that, where it is colder than wanted. */
function tell(facts: DishFacts, heat: DishHeat): Told | undefined {
    const wanted = facts.dish.served.temperature!;
    const isCold = (band: Band | undefined): boolean =>
        band !== undefined && misses(wanted, band.celsius ?? band.high, 'hot');
    const { first, last, published, poured } = heat;
    if (published) {
        // What food is held at keeps it safe; it does not say how hot the kitchen sends it.
        return heat.start?.how === 'leaves-the-pass' && isCold(published)
            ? tellPublished(facts, heat, published)
            : undefined;
    }
    const atLast = last?.temperature;
    if (!isCold(atLast ?? poured)) {
        return undefined;
    }
    const fixes = mendsAtTheGuest(facts, heat);
    const firstHas = first?.temperature?.celsius;
    const { cooledTo } = heat.vessel ?? {};
    const hints = [
        cooledTo === undefined
            ? undefined
            : `Its ${quoted(facts.vessel!.name)} is out of the warmer for ${minutesWords(last!.journey.outOfWarmer)} before it is filled, and at ${degreesLike(wanted, cooledTo)} by then: see that first.`,
        firstHas === undefined ? undefined : `The first guest has it at ${degreesLike(wanted, firstHas)}.`,
        fixes[0] ? `${fixes[0].title}.` : whyNothingMends(wanted, heat),
        facts.dish.measured ? 'A hotter start wants a new reading.' : undefined,
        heat.staysFor
            ? `Standing in the room it is ${wanted.written} or hotter for ${minutesWords(heat.staysFor)}.`
            : undefined,
    ];
    return {
        is: atLast
            ? `is at ${bandLike(wanted, atLast)} before its last guest, ${whereAndWhen(last)}`
            : `is at ${bandLike(wanted, poured!)} as soon as it is in its vessel`,
        hint: hints.filter((each) => each !== undefined).join(' '),
        fixes,
    };
}

/** So much hotter at the pass it is still as wanted after the most that plates are known to lose. */
function tellPublished({ dish }: DishFacts, { answers }: DishHeat, published: Band): Told {
    const wanted = dish.served.temperature!;
    const { verb, temperature } = startOf(dish)!;
    return {
        is: `${verb} at ${temperature.written} and comes to its guests at ${bandLike(wanted, published)}, by the published drops`,
        hint: 'Have it hotter, or hold a thermometer to one plate on its way and write what it shows: `measured 63 °C after 3 min`.',
        fixes: answers?.range ? startAt(dish, degreesBeyond(wanted, answers.range.high, 'hot')) : [],
    };
}
