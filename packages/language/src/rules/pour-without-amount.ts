import type { Kind } from '../plan/cupboard.js';
import { isKindOf } from '../plan/names.js';
import type { Quantity } from '../plan/quantity.js';
import type { Pour } from '../plan/types.js';
import type { Service } from '../service/types.js';
import { isDoubtful } from './doubt.js';
import { everyDrink } from './drinks.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'pour-without-amount',
    group: 'drinks',
    since: '0.1.0',
    title: 'A drink that does not say how much is poured',
    why: 'Bottles are counted from the pour. Without it nobody knows how many to chill, and two servers pour two different glasses.',
    source: ['quantities 2.3', 'quantities 2.4'],
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
        pour <|"Country red"|> into red-wine-glass at 17 °C is red-wine {
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
        for (const { pour, kind, course } of everyDrink(plan, service)) {
            // Water is poured and poured again; it is counted by the guest.
            if (pour.amount || course < 0 || isDoubtful(plan, pour.origin)) {
                continue;
            }
            const usual = (likeIt(service, pour, kind) ?? kind?.portion?.low)?.written;
            report({
                at: pour.titleOrigin,
                message: `${quoted(pour.title)} does not say how much is poured into each glass, so bottles can’t be counted.`,
                hint: `Write it after the name, as in \`pour "${pour.title}" ${usual ?? '5 fl oz'}\`.`,
                fixes: usual
                    ? [
                          {
                              title: `Pour ${usual} of ${quoted(pour.title)}`,
                              safety: 'unsafe',
                              changes: [{ do: 'append', at: pour.titleOrigin, words: usual }],
                          },
                      ]
                    : [],
            });
        }
    },
});

/** The amount of the drink it takes the place of, else of another drink of its family. */
function likeIt({ pours }: Service, pour: Pour, kind: Kind | undefined): Quantity | undefined {
    const family = kind?.lineage.at(-1);
    const like =
        pours.find((other) => other.pour.instead.includes(pour)) ??
        pours.find((other) => other.pour.amount && family !== undefined && isKindOf(other.kind, family));
    return like?.pour.amount;
}
