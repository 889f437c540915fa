import { defineRule } from './rule.js';
import { reportVessels } from './vessel-warmth.js';

export default defineRule({
    id: 'cold-dish-warm-plate',
    group: 'service',
    since: '0.1.0',
    title: 'A cold dish on a warmed plate',
    why: 'A warmed plate wilts leaves, melts ices and loosens creams before they reach the guest.',
    source: ['table-service 9.1', 'table-service 9.6'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course salad "Bitter leaves" {
        served <|on salad-plate warmed|> at 8 °C
        lasts 15 min
        contains mustard
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course salad "Bitter leaves" {
        served on salad-plate chilled at 8 °C
        lasts 15 min
        contains mustard
    }
}`,
            },
        ],
    },
    check: (input) =>
        reportVessels(input, {
            dishes: 'cold',
            soup: false,
            plainWillDo: true,
            hint: 'Chilled plates for cold dishes: chill it, or leave it as it is.',
        }),
});
