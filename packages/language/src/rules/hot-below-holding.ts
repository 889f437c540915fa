import { reportHolding } from './holding.js';
import { defineRule } from './rule.js';

export default defineRule({
    id: 'hot-below-holding',
    group: 'safety',
    since: '0.1.0',
    title: 'Hot food held below the local code’s limit',
    why: 'Between the cold and the hot limit bacteria grow fast and leave no taste. The limit is the local code’s, and a thermometer shows whether it is kept.',
    source: ['temperature S2', 'temperature S6', 'temperature 2.3', 'table-service 9.7'],
    fix: 'always',
    safety: 'floor',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40  local code canada }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        held at <|52 °C|>
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40  local code canada }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        held at 74 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check: (input) => reportHolding(input, 'hot'),
});
