import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { spoonNot } from './spoon-warmth.js';
import { isSoup } from './vessel-warmth.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'hot-soup-cold-spoon',
    group: 'trade',
    since: '0.1.0',
    title: 'Hot soup with a spoon at room temperature',
    why: 'A cold spoon is the first thing a guest feels of a hot soup. A house that warms its spoons brings them with the soup.',
    source: ['common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        eaten with <|soup-spoon|>
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        eaten with soup-spoon warmed to 40 °C, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const change = facts.isHot && isSoup(facts.kind) && spoonNot(plan, facts, 'warmed');
            if (change && isNew(change.at)) {
                report({
                    at: change.at,
                    message: `${quoted(facts.dish.title)} is hot, and its ${quoted(change.spoon)} is ${change.state ?? 'not warmed'}.`,
                    hint: 'Warm it, to 43 °C (109 °F) at most, and bring it with the soup.',
                    fixes: [change.fix],
                });
            }
        }
    },
});
