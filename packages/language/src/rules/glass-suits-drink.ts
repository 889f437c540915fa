import { suitsDrink } from '../plan/suiting.js';
import { everyDrink, glassesFor } from './drinks.js';
import { defineRule } from './rule.js';
import { asName, listed, quoted } from './wording.js';

export default defineRule({
    id: 'glass-suits-drink',
    group: 'drinks',
    since: '0.1.0',
    title: 'A drink poured into a glass that does not suit it',
    why: 'Each wine poured has a glass of its own at the cover, and guests tell from the glass what is coming. A flute keeps the bubbles that a bowl lets go.',
    source: ['table-service 4.15', 'common practice, no source'],
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
        pour "Country red" 4 fl oz into <|sparkling-flute|> at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 4 fl oz into red-wine-glass { contains nothing }
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
        pour "Country red" 4 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 4 fl oz into red-wine-glass { contains nothing }
        }
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const { cupboard } = plan;
        // What is offered in a drink's place may come in the glass of that: only a glass of its own is judged.
        for (const { pour, kind } of everyDrink(plan, service)) {
            const { glass } = pour;
            const piece = glass && cupboard.pieces.get(glass.name);
            // Without a kind of its own the drink takes the one its glass is for.
            if (!piece || !kind || !pour.kind || suitsDrink(cupboard, piece, kind) !== false) {
                continue;
            }
            const suited = glassesFor(plan, kind, pour.amount).slice(0, 3);
            const named = listed(
                suited.map(({ name }) => quoted(name)),
                'or',
            );
            report({
                at: glass.origin,
                message: `${quoted(pour.title)} is ${quoted(kind.name)}, and a ${quoted(piece.name)} is not for it.`,
                hint: suited.length > 0 ? `Pour it into ${named}.` : 'Pour it into a glass that is for it.',
                fixes: suited.map(({ name }, index) => ({
                    title: `Pour ${quoted(pour.title)} into ${quoted(name)}`,
                    safety: 'unsafe',
                    preferred: index === 0,
                    changes: [{ do: 'replace', at: glass.origin, words: asName(name) }],
                })),
            });
        }
    },
});
