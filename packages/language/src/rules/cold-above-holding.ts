import { reportHolding } from './holding.js';
import { defineRule } from './rule.js';

export default defineRule({
    id: 'cold-above-holding',
    group: 'safety',
    since: '0.1.0',
    title: 'Cold food held above the local code’s limit',
    why: 'Between the cold and the hot limit bacteria grow fast and leave no taste. The limit is the local code’s, and a thermometer shows whether it is kept.',
    source: ['temperature S1', 'temperature S7', 'temperature 2.3', 'table-service 9.7'],
    fix: 'always',
    safety: 'floor',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40  local code canada }
menu {
    course appetizer "Smoked beet and curd" {
        served on salad-plate at 8 °C
        held at <|11 °C|>
        lasts 20 min
        contains milk, mustard
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40  local code canada }
menu {
    course appetizer "Smoked beet and curd" {
        served on salad-plate at 8 °C
        held at 4 °C
        lasts 20 min
        contains milk, mustard
    }
}`,
            },
        ],
    },
    check: (input) => reportHolding(input, 'cold'),
});
