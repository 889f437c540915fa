import { titledFoods, unstatedInTitle } from '../service/allergens/titles.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { stateThatItContains } from './state-contents.js';
import { listed, quoted } from './wording.js';

const PLAN = (dish: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24 { 3 vegetarian }
}

menu {
    course main "Main" {
        served on dinner-plate warmed to 60 °C at 62 °C
        lasts 30 min
        ${dish}
        dish "Squash" for vegetarian { contains nothing }
    }
}
`;

export default defineRule({
    id: 'title-food-not-stated',
    group: 'safety',
    severity: 'warning',
    since: '0.2.0',
    title: 'A title names a food that its dish is not said to contain',
    why: 'What a menu says in its title is so plain that nobody writes it down. The count of plates, the cards and the guests who must not meet it go by what is stated.',
    source: ['temperature 3.1', 'temperature 3.2', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A beef dish that states its allergens alone, and guests who eat no meat',
                text: PLAN('<|dish "Braised beef" for the rest|> { contains celery }'),
            },
            {
                title: 'Walnuts in the title of a sauce',
                text: PLAN(
                    'dish "Leek tart" for the rest { contains wheat, egg  <|sauce "Walnut cream"|> { contains milk } }',
                ),
            },
        ],
        right: [
            { text: PLAN('dish "Braised beef" for the rest { contains beef, celery }') },
            {
                title: 'Its kind is made of it',
                text: PLAN('dish "Roast beef" is steak for the rest { contains nothing }'),
            },
            {
                title: 'Words that only look like it',
                text: PLAN('dish "Butter beans" for the rest { contains nothing }'),
            },
            {
                title: 'Said to suit guests who eat none',
                text: PLAN('dish "Pulled ham of jackfruit" for the rest { contains nothing  suits vegetarian }'),
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const food of titledFoods(plan, service)) {
            const { title, contains, at, block } = food;
            // A word that is not known may be the one.
            if (!contains?.what.every(({ name }) => plan.cupboard.substances.has(name))) {
                continue;
            }
            const unstated = unstatedInTitle(food, { plan, groups: service.groups });
            if (unstated.length > 0 && isNew(at)) {
                report({
                    at,
                    message: `The title ${quoted(title)} tells of ${listed(unstated.map(quoted))}, which nothing states.`,
                    hint: 'Ask the kitchen and check every label; then state it, or waive this where the title misleads.',
                    related: [{ at: contains.origin, message: 'What it contains is stated here.' }],
                    // A title may mislead: nobody has it stated without a look.
                    fixes: [stateThatItContains(contains, unstated, { safety: 'show', in: block })],
                });
            }
        }
    },
});
