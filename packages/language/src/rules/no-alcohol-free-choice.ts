import type { Cupboard } from '../plan/cupboard.js';
import { show } from '../plan/quantity.js';
import type { Plan, Pour } from '../plan/types.js';
import type { PourFacts } from '../service/types.js';
import { isDoubtful } from './doubt.js';
import { alcoholFree, BELOW_BRIM, fillOf, lacksAlcoholFreeChoice, strengthOf, takenFor } from './drinks.js';
import { measuredBelow } from './measured-out.js';
import { defineRule } from './rule.js';
import { asName, quoted } from './wording.js';

export default defineRule({
    id: 'no-alcohol-free-choice',
    group: 'drinks',
    since: '0.1.0',
    title: 'A drink with alcohol and nothing offered in its place',
    why: 'Some guests drive, some are with child, some do not drink, and none should have to say why. Plan a drink free of alcohol for every glass of wine.',
    source: ['quantities 2.5', 'table-service 11.16'],
    fix: 'always',
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
        pour <|"Country red"|> 5 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
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
        const { cupboard } = plan;
        // What the evening already offers is the likeliest choice for its other drinks.
        const offered = service.pours.flatMap(({ pour }) => alcoholFree(pour.instead, cupboard));
        for (const facts of service.pours) {
            const { pour } = facts;
            if (!lacksAlcoholFreeChoice(facts, cupboard) || isDoubtful(plan, pour.origin)) {
                continue;
            }
            const strength = strengthOf(facts);
            const taken = takenFor(facts);
            const alcohol = strength ? `${show(strength, '%', 1)} alcohol` : 'alcohol';
            const amount = amountOf(plan, facts);
            const choices = [...offered.flatMap((other) => again(other, amount)), water(cupboard, amount)];
            report({
                at: pour.titleOrigin,
                message: `${quoted(pour.title)} ${taken ? `is ${taken}, with` : 'has'} ${alcohol}, and no drink without it is offered in its place.`,
                hint: `Offer one with \`instead "…"\`${taken ? ', or say what it is, as in `is soft-drink`' : ''}.`,
                fixes: [...new Map(choices)].slice(0, 3).map(([title, clause]) => ({
                    title: `Offer ${quoted(title)} in its place`,
                    safety: 'unsafe',
                    changes: [{ do: 'add-clause', to: pour.origin, clause }],
                })),
            });
        }
    },
});

/** As much as of the pour, or as much as its glass takes. */
function amountOf(plan: Plan, { pour, kind, glass }: PourFacts): string {
    if (!pour.amount) {
        return '';
    }
    const fill = glass && fillOf(plan, kind, glass, pour.amount);
    return ` ${fill?.isOver ? measuredBelow(fill.custom ? fill.most : fill.most * BELOW_BRIM, pour.amount) : pour.amount.written}`;
}

/** A drink offered elsewhere, with what it contains; none where that is not stated. */
function again({ title, kind, contains }: Pour, amount: string): [title: string, clause: string][] {
    if (!contains) {
        return [];
    }
    const what = contains.what.length > 0 ? contains.what.map(({ name }) => asName(name)).join(', ') : 'nothing';
    return [[title, `instead "${title}"${amount}${kind ? ` is ${asName(kind.name)}` : ''} { contains ${what} }`]];
}

function water({ drinks }: Cupboard, amount: string): [title: string, clause: string] {
    const kind = drinks.has('sparkling-water') ? ' is sparkling-water' : '';
    return ['Sparkling water', `instead "Sparkling water"${amount}${kind} { contains nothing }`];
}
