import type { Piece } from '../plan/cupboard.js';
import { show } from '../plan/quantity.js';
import { firstInHouse } from '../service/facts.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { pieceLineage } from '../plan/suiting.js';
import { asName, listed, quoted } from './wording.js';

const BEFORE = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {
    course cold-soup "Chilled cucumber soup" {`;

export default defineRule({
    id: 'underliner-too-small',
    group: 'cover',
    since: '0.1.0',
    title: 'An underliner that leaves no rim around its bowl',
    why: 'The rim is where the spoon rests between bites and where the server’s thumb goes. A plate hidden by its bowl gives room to neither.',
    source: ['table-service 7.36', 'table-service 3.56', 'common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Soup bowls on bread plates',
                text: `${BEFORE}
        served in soup-bowl chilled on <|bread-plate|> at 6 °C
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
        served in soup-bowl chilled on underliner at 6 °C
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const { cupboard, house } = plan;
        const isNew = firstSight();
        for (const { dish, vessel } of service.facts) {
            const stated = dish.served.under;
            const under = stated && cupboard.pieces.get(stated.piece.name);
            if (!vessel || !under || !isNew(stated.piece.origin)) {
                continue;
            }
            const fitting = pieceLineage(cupboard, vessel.name).find(({ on }) => on.length > 0)?.on ?? [];
            const plates = fitting.flatMap(({ name }) => cupboard.pieces.get(name) ?? []);
            const isFitting = pieceLineage(cupboard, under.name).some((piece) => plates.includes(piece));
            // The cupboard says what fits; another plate will do if it is no smaller than the smallest of those, or than the bowl.
            const least = Math.min(...plates.map(middle), ...(plates.length === 0 ? [middle(vessel)] : []));
            if (isFitting || !(middle(under) < least)) {
                continue;
            }
            const names = plates.map(({ name }) => name);
            const better = firstInHouse(names, cupboard, house);
            report({
                at: stated.piece.origin,
                message: `${quoted(under.name)} is ${acrossSaid(under)}, too small under ${quoted(vessel.name)} of ${quoted(dish.title)}, which is ${acrossSaid(vessel)}.`,
                hint:
                    names.length > 0
                        ? `Stand it on ${listed(names.map(quoted), 'or')}.`
                        : 'Stand it on a larger plate.',
                fixes: better
                    ? [
                          {
                              title: `Stand ${quoted(vessel.name)} on ${quoted(better.name)}`,
                              safety: 'unsafe',
                              preferred: true,
                              changes: [{ do: 'replace', at: stated.piece.origin, words: asName(better.name) }],
                          },
                      ]
                    : [],
            });
        }
    },
});

/** Half-way between the smallest and the largest of its kind, mm; not a number where no size is known. */
function middle({ measures: { across } }: Piece): number {
    return across ? (across.low + across.high) / 2 : Number.NaN;
}

function acrossSaid({ measures: { across } }: Piece): string {
    if (!across) {
        return 'of unknown size';
    }
    const low = show(across.low, 'mm');
    const high = show(across.high, 'mm');
    return `${low === high ? low : `${low.replace(' mm', '')} to ${high}`} across`;
}
