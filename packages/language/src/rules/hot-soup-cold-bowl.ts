import { defineRule } from './rule.js';
import { reportVessels } from './vessel-warmth.js';

export default defineRule({
    id: 'hot-soup-cold-bowl',
    group: 'service',
    since: '0.1.0',
    title: 'Hot soup in a bowl that is not warmed',
    why: 'A bowl at room temperature takes some 15 °C out of soup the moment it is poured, before anyone has carried it.',
    source: ['table-service 9.2', 'table-service 9.1', 'temperature 10.1'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served <|in soup-bowl|> on underliner at 64 °C
        eaten with soup-spoon warmed, brought with the course
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
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check: (input) =>
        reportVessels(input, {
            dishes: 'hot',
            soup: true,
            plainWillDo: false,
            hint: 'Warm it, so that the soup is still hot in front of the guest.',
        }),
});
