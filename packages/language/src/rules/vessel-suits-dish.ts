import { suits } from '../plan/names.js';
import type { Plan } from '../plan/types.js';
import type { DishFacts } from '../service/types.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { pieceLineage } from './suiting.js';
import { asName, listed, quoted } from './wording.js';

const BEFORE = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {
    course cold-soup "Chilled cucumber soup" {`;

export default defineRule({
    id: 'vessel-suits-dish',
    group: 'cover',
    since: '0.1.0',
    title: 'Soup on a flat plate',
    why: 'What is measured by volume runs over a flat rim on the way to the table, onto the cloth or the guest.',
    source: ['table-service 7.21', 'table-service 3.57', 'common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `${BEFORE}
        served on <|dinner-plate|> chilled at 6 °C
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const stated = facts.dish.served.vessel;
            if (!stated || !isTooFlat(plan, facts) || !isNew(stated.piece.origin)) {
                continue;
            }
            const { dish, kind } = facts;
            const vessels = kind!.vessels.flatMap(({ how, names }) => names.map(({ name }) => ({ how, name })));
            const deep = vessels.filter(({ name }) => plan.cupboard.pieces.has(name));
            const [first] = deep;
            report({
                at: stated.piece.origin,
                message: `${quoted(stated.piece.name)} is flat, and ${quoted(dish.title)} is ${quoted(kind!.name)}, which is served in ${listed(
                    vessels.map(({ name }) => quoted(name)),
                    'or',
                )}.`,
                hint: first ? `Serve it in ${quoted(first.name)}.` : 'Serve it in something that holds it.',
                fixes: first
                    ? [
                          {
                              title: `Serve ${quoted(dish.title)} in ${quoted(first.name)}`,
                              safety: 'unsafe',
                              preferred: true,
                              changes: [
                                  {
                                      do: 'replace',
                                      at: stated.origin,
                                      words: `${first.how} ${asName(first.name)}${stated.state ? ` ${stated.state}${stated.to ? ` to ${stated.to.written}` : ''}` : ''}`,
                                  },
                              ],
                          },
                      ]
                    : [],
            });
        }
    },
});

/** A plate that holds nothing, under a dish that is measured by volume and whose kind is served in something. */
function isTooFlat({ cupboard }: Plan, { kind, vessel }: DishFacts): boolean {
    return (
        kind !== undefined &&
        vessel?.family === 'plate' &&
        vessel.measures.holds === undefined &&
        kind.portion?.high.dimension === 'volume' &&
        kind.vessels.length > 0 &&
        kind.vessels.every(({ how }) => how === 'in') &&
        !pieceLineage(cupboard, vessel.name).some((piece) => suits(piece, kind, cupboard))
    );
}
