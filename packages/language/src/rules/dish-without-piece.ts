import type { Cupboard, Kind } from '../plan/cupboard.js';
import type { DishFacts, Variation } from '../service/types.js';
import { isDoubtful } from './doubt.js';
import { writeEaten } from './eaten-with.js';
import { defineRule } from './rule.js';
import { piecesFor } from '../plan/suiting.js';
import { listed, quoted } from './wording.js';

export default defineRule({
    id: 'dish-without-piece',
    group: 'cover',
    since: '0.1.0',
    title: 'A dish with nothing to eat it with',
    why: 'What nobody names is neither pulled from the store nor laid, and the guest sits before a plate without a fork.',
    source: ['table-service §7b', 'table-service 2.28'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A kind of the house’s own that does not say what it is eaten with',
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

kind tartlet { on salad-plate  cold }

menu {
    <|course tartlet "Leek tartlet"|> {
        served on salad-plate chilled at 8 °C
        lasts 15 min
        contains gluten, egg, milk
    }
}
`,
            },
        ],
        right: [
            {
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

kind tartlet { eaten with salad-fork  on salad-plate  cold }

menu {
    course tartlet "Leek tartlet" {
        served on salad-plate chilled at 8 °C
        lasts 15 min
        contains gluten, egg, milk
    }
}
`,
            },
        ],
    },
    check({ plan, service, report }) {
        for (const facts of service.facts) {
            const { dish, kind } = facts;
            if (
                !kind ||
                dish.eaten ||
                kind.eaten ||
                isDoubtful(plan, dish.origin) ||
                service.variations.some((variation) => hasPieceFor(variation, facts))
            ) {
                continue;
            }
            const pieces = likelyPieces(plan.cupboard, kind, facts);
            report({
                at: dish.head,
                message: `${quoted(dish.title)} has nothing to eat it with: neither the dish nor its kind ${quoted(kind.name)} names a piece.`,
                hint:
                    pieces.length > 0
                        ? `Say what it is eaten with, such as ${listed(pieces.map(quoted))}.`
                        : 'Say what it is eaten with.',
                fixes:
                    pieces.length > 0
                        ? [
                              {
                                  title: `Eat ${quoted(dish.title)} with ${listed(pieces.map(quoted))}`,
                                  safety: 'unsafe',
                                  preferred: true,
                                  changes: [
                                      {
                                          do: 'add-clause',
                                          to: dish.origin,
                                          clause: writeEaten(pieces.map((name) => [name])),
                                      },
                                  ],
                              },
                          ]
                        : [],
            });
        }
    },
});

/** By custom (dessert pieces) or by a `lay` clause. */
function hasPieceFor(variation: Variation, { dish }: DishFacts): boolean {
    const { left, right, above, brought } = variation.cover;
    return [left, right, above, brought].some((pieces) => pieces.some((piece) => piece.dish === dish));
}

/** The piece that is for the kind; else fork and knife for a plate, a spoon for what is served in something. */
function likelyPieces(cupboard: Cupboard, kind: Kind, { dish, vessel }: DishFacts): readonly string[] {
    const suited = piecesFor(cupboard, kind).slice(0, 1);
    if (suited.length > 0) {
        return suited.map((piece) => piece.name);
    }
    const usual =
        dish.served.vessel?.how === 'in' || (vessel && vessel.family !== 'plate')
            ? ['dessert-spoon']
            : ['dinner-fork', 'dinner-knife'];
    return usual.every((name) => cupboard.pieces.has(name)) ? usual : [];
}
