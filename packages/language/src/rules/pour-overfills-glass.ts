import type { Piece } from '../plan/cupboard.js';
import { show } from '../plan/quantity.js';
import { BELOW_BRIM, everyDrink, fillOf, glassesFor } from './drinks.js';
import type { Fix } from './fixes.js';
import { measuredBelow } from './measured-out.js';
import { defineRule } from './rule.js';
import { asName, quoted } from './wording.js';

export default defineRule({
    id: 'pour-overfills-glass',
    group: 'drinks',
    since: '0.1.0',
    title: 'A pour that fills its glass past the house’s mark',
    why: 'A pour stops near the widest part of the glass: there the wine has most air, and the guest can lift it without spilling.',
    source: [
        'table-service 4.16',
        'table-service 4.20',
        'table-service 4.22',
        'table-service 4.25',
        'common practice, no source',
    ],
    fix: 'always',
    customs: ['wine-fill', 'sparkling-fill', 'water-fill'],
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `house "Saltmarsh Hall" { laying { alcohol-limit: 3 per guest } }
event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour "Country red" <|12 fl oz|> into red-wine-glass at 17 °C is red-wine {
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
        for (const { pour, kind, glass } of everyDrink(plan, service)) {
            const { amount } = pour;
            const fill = glass && fillOf(plan, kind, glass, amount);
            if (!glass || !amount || !fill?.isOver) {
                continue;
            }
            const { custom, limit, share, most } = fill;
            const mark = custom
                ? `this house pours to ${show(limit, '%')} at most (${quoted(custom)})`
                : 'a drink stays below the brim';
            const widest = widestPart(glass);
            const less = measuredBelow(Math.min(custom ? most : most * BELOW_BRIM, widest ?? Infinity), amount);
            const larger = kind ? glassesFor(plan, kind, amount).slice(0, 1) : [];
            const fixes: Fix[] = [
                {
                    title: `Pour ${less} of ${quoted(pour.title)}`,
                    safety: 'unsafe',
                    preferred: true,
                    changes: [{ do: 'replace', at: amount.origin, words: less }],
                },
                ...larger.map(({ name }): Fix => ({
                    title: `Pour ${quoted(pour.title)} into ${quoted(name)}`,
                    safety: 'unsafe',
                    changes: [
                        pour.glass
                            ? { do: 'replace', at: pour.glass.origin, words: asName(name) }
                            : { do: 'append', at: amount.origin, words: `into ${asName(name)}` },
                    ],
                })),
            ];
            report({
                at: amount.origin,
                message: `${amount.written} of ${quoted(pour.title)} fills a ${quoted(glass.name)} to ${show(share, '%')}; ${mark}.`,
                hint: `Pour ${less}${widest ? ', to about its widest part' : ''}, or take a larger glass.`,
                fixes,
            });
        }
    },
});

/** ml up to the widest part, where the cupboard says. */
function widestPart({ measures }: Piece): number | undefined {
    const { holds, widest } = measures;
    return holds && widest?.size.dimension === 'share' ? holds.high * widest.high : undefined;
}
