import { isDoubtful } from './doubt.js';
import { glassesFor } from './drinks.js';
import { defineRule } from './rule.js';
import { asName, listed, quoted } from './wording.js';

export default defineRule({
    id: 'pour-without-glass',
    group: 'drinks',
    since: '0.1.0',
    title: 'A drink with no glass to pour it into',
    why: 'Each drink poured has a glass of its own at the cover, laid and counted before guests sit.',
    source: ['table-service 4.15'],
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
        pour <|"Birch sap"|> 5 fl oz at 8 °C { contains nothing }
    }
}`,
            },
            {
                title: 'A drink of the house’s own',
                text: `drink birch-sap { at 4 °C to 10 °C }
glass sap-glass { holds 250 ml  for birch-sap }
event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour <|"First tapping"|> 5 fl oz at 8 °C is birch-sap { contains nothing }
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
        pour "Birch sap" 5 fl oz into highball-glass at 8 °C { contains nothing }
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        // What is offered in place of a drink goes into the glass laid for that drink.
        for (const { pour, kind, glass } of service.pours) {
            if (glass || pour.glass || isDoubtful(plan, pour.origin)) {
                continue;
            }
            const suited = kind ? glassesFor(plan, kind, pour.amount).slice(0, 3) : [];
            const named = listed(
                suited.map(({ name }) => quoted(name)),
                'or',
            );
            report({
                at: pour.titleOrigin,
                message: `${quoted(pour.title)} has no glass, and its kind names none.`,
                hint: `Write it after the amount, as in \`into ${suited[0]?.name ?? 'highball-glass'}\`${suited.length > 1 ? `; ${named} are for it` : ''}.`,
                fixes: suited.map(({ name }, index) => ({
                    title: `Pour ${quoted(pour.title)} into ${quoted(name)}`,
                    safety: 'unsafe',
                    preferred: index === 0,
                    changes: [
                        { do: 'append', at: pour.amount?.origin ?? pour.titleOrigin, words: `into ${asName(name)}` },
                    ],
                })),
            });
        }
    },
});
