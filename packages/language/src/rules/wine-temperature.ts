import { everyDrink, isWine } from './drinks.js';
import { defineRule } from './rule.js';
import { outOfRange, servingRange } from './serving-range.js';

export default defineRule({
    id: 'wine-temperature',
    group: 'drinks',
    since: '0.1.0',
    title: 'A wine poured colder or warmer than its kind is good at',
    why: 'Too warm a red tastes of its alcohol, too cold a white of nothing at all, and a wine can be corrected only before it is poured.',
    source: ['temperature 7.1', 'table-service 9.8', 'table-service 9.9'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour "Country red" 5 fl oz into red-wine-glass at <|24 °C|> is red-wine {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
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
        pour "Country red" 5 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        for (const { pour, kind } of everyDrink(plan, service)) {
            const { title, temperature } = pour;
            const found =
                isWine(kind) && outOfRange({ title, temperature, range: servingRange(kind), kind, how: 'poured' });
            if (found) {
                report(found);
            }
        }
    },
});
