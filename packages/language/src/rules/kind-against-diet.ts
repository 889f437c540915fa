import { madeOfAgainst } from '../service/diets.js';
import { sortOf } from './guest-words.js';
import { defineRule } from './rule.js';
import { listed, quoted } from './wording.js';

const PLAN = (dish: string): string => `event "Harvest home" {
    date 2026-09-26
    zone America/Halifax
    seated 18:00
    guests 40 { 5 vegetarian }
}

menu {
    course main "Main" {
        served on dinner-plate warmed to 60 °C at 62 °C
        eaten with dinner-fork and dinner-knife
        lasts 25 min
        contains nothing
        dish "Roast goose" is poultry for the rest { cook to 74 °C }
        dish "Celeriac" ${dish} { cook to 74 °C }
    }
}
`;

export default defineRule({
    id: 'kind-against-diet',
    group: 'guests',
    severity: 'warning',
    since: '0.1.0',
    title: 'A dish for guests of a diet is of a kind that the diet leaves out',
    why: 'A dish that is for vegetarians is taken to suit them, whatever its kind is made of: a steak may be of cauliflower. A word copied from the dish above would feed them meat.',
    source: ['common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'The kind was copied from the goose',
                text: PLAN('is <|poultry|> for vegetarian'),
            },
        ],
        right: [
            { text: PLAN('is vegetable-main for vegetarian') },
            {
                title: 'A mock goose, said to suit them',
                text: PLAN('is poultry for vegetarian').replace(
                    'for vegetarian {',
                    'for vegetarian { suits vegetarian ',
                ),
            },
        ],
    },
    check({ plan, service, report }) {
        for (const { dish, kind } of service.facts) {
            if (!kind || dish.who?.sort !== 'some') {
                continue;
            }
            for (const need of dish.who.needs) {
                if (need.sort !== 'diet' || dish.suits.some((named) => named.name === need.diet.name)) {
                    continue;
                }
                const made = madeOfAgainst(kind, need, plan.cupboard);
                if (made.length > 0) {
                    const of = listed(made.map(quoted));
                    report({
                        at: dish.kind.origin,
                        message: `${quoted(dish.title)} is for ${sortOf({ needs: [need], children: false })}, and ${quoted(kind.name)} is a kind made of ${of}.`,
                        hint: `Ask the kitchen what it is made of. Without ${of}, write \`suits ${need.diet.name}\`; with it, serve these guests another dish.`,
                        fixes: [
                            {
                                title: `Say that ${quoted(dish.title)} suits ${quoted(need.diet.name)}`,
                                safety: 'show',
                                changes: [{ do: 'add-clause', to: dish.origin, clause: `suits ${need.diet.name}` }],
                            },
                        ],
                    });
                }
            }
        }
    },
});
