import { lowCooking } from '../service/cooked-through.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (cook: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
    notice "Raw or undercooked food may raise your risk of illness."
}

menu {
    course main {
        lasts 35 min
        dish "Duck leg" is poultry {
            served on dinner-plate warmed to 60 °C at 63 °C
            ${cook}
            contains duck
        }
    }
}
`;

export default defineRule({
    id: 'cook-temperature-low',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'Poultry, game, minced or stuffed meat, or plant food kept hot, not cooked through',
    why: 'What makes guests ill is all through minced and stuffed meat and poultry, and only cooking to the middle kills it. No notice on the menu makes it safe.',
    source: ['temperature S12', 'temperature S13', 'temperature S14', 'temperature S16'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [{ title: 'Two figures that changed places', text: plan('<|cook to 47 °C|>') }],
        right: [{ text: plan('cook to 74 °C') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        const found = service.facts
            .flatMap(({ dish, kind }) => {
                const low = lowCooking(dish, kind, plan);
                return low?.least && !low.isOnRequest ? [{ dish, ...low, least: low.least }] : [];
            })
            // Where dishes share a clause, the one that needs most decides.
            .toSorted((a, b) => b.least.celsius - a.least.celsius);
        for (const { dish, at, words, food, needs } of found) {
            if (isNew(at)) {
                report({
                    at,
                    message: `${quoted(dish.title)} ${words}; ${food} needs ${needs}.`,
                    hint: `Cook it to ${needs}; a calibrated thermometer and the local food code decide.`,
                    fixes: [
                        {
                            title: `Cook ${quoted(dish.title)} to ${needs}`,
                            safety: 'unsafe',
                            preferred: true,
                            changes: [{ do: 'replace', at: dish.cookTo!.temperature.origin, words: needs }],
                        },
                    ],
                });
            }
        }
    },
});
