import { defineRule } from './rule.js';
import { reportVessels } from './vessel-warmth.js';

export default defineRule({
    id: 'hot-dish-cold-plate',
    group: 'service',
    since: '0.1.0',
    title: 'A hot dish on a plate that is not warmed',
    why: 'The plate often weighs more than the food on it. A cold one draws the heat out of a hot dish while it is still at the pass.',
    source: ['table-service 9.1', 'table-service 9.3', 'table-service 9.4', 'temperature P2'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served <|on dinner-plate|> at 63 °C
        lasts 30 min
        contains nothing
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
    }
}`,
            },
        ],
    },
    check: (input) =>
        reportVessels(input, {
            dishes: 'hot',
            soup: false,
            plainWillDo: false,
            hint: 'Hot plates for hot dishes: warm it.',
        }),
});
