import { defineRule } from './rule.js';
import { reportVessels } from './vessel-warmth.js';

export default defineRule({
    id: 'cold-soup-warm-bowl',
    group: 'service',
    since: '0.1.0',
    title: 'Cold soup in a bowl that is not chilled',
    why: 'A bowl holds as much heat as the soup in it, so at room temperature it warms a cold soup through before the first spoonful.',
    source: ['table-service 9.1'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Garden lunch" { date 2027-07-03  zone America/Halifax  seated 12:30  guests 40 }
menu {
    course cold-soup "Cucumber and buttermilk" {
        served <|in soup-bowl|> on underliner at 6 °C
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Garden lunch" { date 2027-07-03  zone America/Halifax  seated 12:30  guests 40 }
menu {
    course cold-soup "Cucumber and buttermilk" {
        served in soup-bowl chilled on underliner at 6 °C
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check: (input) =>
        reportVessels(input, {
            dishes: 'cold',
            soup: true,
            plainWillDo: false,
            hint: 'Chill it, so that the soup stays cold in front of the guest.',
        }),
});
