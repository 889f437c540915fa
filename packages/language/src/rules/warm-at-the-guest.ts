import { degreesLike } from '../plan/degrees.js';
import { heatOfDish } from '../service/heat/heat.js';
import type { DishHeat, DrinkHeat } from '../service/heat/types.js';
import type { DishFacts, PourFacts } from '../service/types.js';
import { bandLike, minutesWords, misses, startOf, whereAndWhen } from './at-the-guest.js';
import { isDoubtful } from './doubt.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { mendsAtTheGuest, whyNothingMends } from './mend-at-the-guest.js';
import { defineRule, type Report } from './rule.js';
import { quoted } from './wording.js';

const TEAM = 'team { captain 1  servers 3  runners 1  plating-lines 1 at 10 plates per min }';

const lunch = (course: string, team = TEAM): string => `event "Garden lunch" {
    date 2027-07-03
    zone America/Halifax
    seated 12:30
    guests 40
}

room "Terrace" 12 m by 10 m {
    at 28 °C
    table A to E: round 60 inch, 8 seats
}

${team}

menu {
    ${course}
}
`;

const soup = (start: string, bowl = '10 °C'): string => `course cold-soup "Cucumber and buttermilk" {
        served in soup-bowl chilled to ${bowl} on underliner at 7 °C, portion 200 ml
        leaves the pass at ${start}
        lasts 15 min
        contains milk
    }`;

const wine = (how: string): string =>
    lunch(`course cheese "Marsh cheeses" {
        served on cheese-plate at 16 °C
        lasts 20 min
        contains milk
        pour "Orchard brut" 100 ml into sparkling-flute at 6 °C, is sparkling-wine {
            contains sulphites
            ${how}
            instead "Apple press" 100 ml, is juice { contains nothing }
        }
    }`);

export default defineRule({
    id: 'warm-at-the-guest',
    group: 'service',
    since: '0.1.0',
    title: 'A cold dish or drink that reaches its guests warmer than it is wanted',
    why: 'A bowl or glass at room temperature warms what is poured into it at once. Cold soup and sparkling wine lose by it what they are served for.',
    source: ['temperature 13', 'temperature 12', 'temperature W3', 'temperature §11'],
    customs: ['room-temperature', 'humidity', 'chilled-to', 'fridge-temperature', 'freezer-temperature'],
    fix: 'sometimes',
    noFix: 'Where nothing safe is cold enough, its way has to become shorter or the room cooler.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'A cold soup in a warm room', text: lunch(soup('<|7 °C|>')) },
            { title: 'A bowl that is not cold enough', text: lunch(soup('<|6 °C|>', '12 °C'), '') },
            { title: 'A sparkling wine straight from the refrigerator', text: wine('chilled in <|fridge|>') },
        ],
        right: [{ text: lunch(soup('4 °C')) }, { text: wine('chilled in ice-water') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const heat = heatOfDish(service.heat, facts);
            const found = heat && !isDoubtful(plan, facts.dish.origin) && warmDish(facts, heat);
            if (found && isNew(found.at)) {
                report(found);
            }
        }
        for (const heat of service.heat.drinks) {
            const facts = service.pours[heat.pour];
            const found = facts && !isDoubtful(plan, facts.pour.origin) && warmDrink(facts, heat);
            if (found && isNew(found.at)) {
                report(found);
            }
        }
    },
});

function warmDish(facts: DishFacts, heat: DishHeat): Report | undefined {
    const { dish } = facts;
    const wanted = dish.served.temperature;
    const start = startOf(dish);
    const found = heat.last?.temperature ?? heat.poured;
    // What starts warmer than it is wanted contradicts itself: that has a rule of its own.
    if (heat.side !== 'cold' || !wanted || !start || start.temperature.value > wanted.value) {
        return undefined;
    }
    if (found?.celsius === undefined || !misses(wanted, found.celsius, 'cold')) {
        return undefined;
    }
    const fixes = mendsAtTheGuest(facts, heat);
    const mend = fixes[0] ? `${fixes[0].title}.` : whyNothingMends(wanted, heat);
    const stays = heat.staysFor
        ? `Standing in the room it is ${wanted.written} or colder for ${minutesWords(heat.staysFor)}.`
        : undefined;
    return {
        at: start.temperature.origin,
        message: heat.last
            ? `${quoted(dish.title)} is at ${bandLike(wanted, found)} before its last guest, ${whereAndWhen(heat.last)}; it is wanted at ${wanted.written}.`
            : `${quoted(dish.title)} is at ${bandLike(wanted, found)} as soon as it is in its vessel; it is wanted at ${wanted.written}.`,
        hint: [mend, stays].filter((each) => each !== undefined).join(' ') || 'Shorten its way.',
        fixes,
    };
}

/** A drink that even straight from where it is chilled is too warm once it is in its glass. */
function warmDrink({ pour, glass }: PourFacts, { coldest }: DrinkHeat): Report | undefined {
    const { temperature: wanted, chilledIn, title } = pour;
    if (!wanted || !chilledIn || !glass || !coldest || coldest.bath > wanted.value) {
        return undefined;
    }
    if (!misses(wanted, coldest.celsius, 'cold')) {
        return undefined;
    }
    const fixes: Fix[] =
        chilledIn.name === 'fridge'
            ? [
                  {
                      title: `Chill ${quoted(title)} in ice and water`,
                      safety: 'unsafe',
                      changes: [{ do: 'replace', at: chilledIn.origin, words: 'ice-water' }],
                  },
              ]
            : [];
    return {
        at: chilledIn.origin,
        message: `${quoted(title)} comes from ${quoted(chilledIn.name)} at ${degreesLike(wanted, coldest.bath)} at best, and its ${quoted(glass.name)} makes that ${degreesLike(wanted, coldest.celsius)}; it is wanted at ${wanted.written}.`,
        hint: 'Chill it colder, or chill the glasses.',
        fixes,
    };
}
