import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { spoonNot } from './spoon-warmth.js';
import { isSortOfKind } from '../plan/suiting.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'intermezzo-spoon-not-chilled',
    group: 'trade',
    since: '0.1.0',
    title: 'An intermezzo with a spoon at room temperature',
    why: 'An intermezzo is two or three spoonfuls of ice; a spoon at room temperature melts the first. A house that chills its spoons brings them with the coupe.',
    source: ['common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course intermezzo "Quince sorbet" {
        served in sorbet-coupe on dessert-plate at -10 °C
        eaten with <|sorbet-spoon|>
        lasts 10 min
        contains nothing
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course intermezzo "Quince sorbet" {
        served in sorbet-coupe on dessert-plate at -10 °C
        eaten with sorbet-spoon chilled, brought with the course
        lasts 10 min
        contains nothing
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const { dish, course, isHot } = facts;
            const isIntermezzo = [course.kind, dish.kind].some(({ name }) =>
                isSortOfKind(plan.cupboard, name, 'intermezzo'),
            );
            const change = isIntermezzo && !isHot && spoonNot(plan, facts, 'chilled');
            if (change && isNew(change.at)) {
                report({
                    at: change.at,
                    message: `${quoted(dish.title)} is an intermezzo, and its ${quoted(change.spoon)} is ${change.state ?? 'not chilled'}.`,
                    hint: 'Chill it, and bring it with the course.',
                    fixes: [change.fix],
                });
            }
        }
    },
});
