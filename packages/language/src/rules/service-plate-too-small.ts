import type { Piece } from '../plan/cupboard.js';
import type { Plan } from '../plan/types.js';
import { show } from '../plan/quantity.js';
import type { DishFacts } from '../service/types.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const BEFORE = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
plate service-plate { across 230 mm }
menu {
    course appetizer "Smoked beet and curd" {`;

export default defineRule({
    id: 'service-plate-too-small',
    group: 'cover',
    since: '0.1.0',
    title: 'A service plate that its dish covers',
    why: 'The service plate frames what stands on it. Under a plate of its own size it can’t be seen, and the two clatter and slide.',
    source: ['table-service 3.22', 'table-service 3.60', 'table-service 5.15'],
    fix: 'sometimes',
    customs: ['service-plate'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'An appetizer on a dinner plate, on a small service plate',
                text: `${BEFORE}
        served on <|dinner-plate|> chilled at 8 °C
        lasts 20 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
        served on salad-plate chilled at 8 °C
        lasts 20 min
        contains milk
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const { cover, dishes, steps } of service.variations) {
            const beneath = cover.servicePlate;
            const room = beneath?.measures.across;
            if (!beneath || !room) {
                continue;
            }
            const framed = steps.filter(
                ({ sort, standing }) => sort === 'eat' && standing.some((item) => item.sort === 'service-plate'),
            );
            for (const facts of framed.flatMap(
                ({ course }) => service.facts.find(({ dish }) => dish === dishes[course]) ?? [],
            )) {
                const set = facts.underliner ?? facts.vessel;
                const across = set?.measures.across;
                const at =
                    facts.dish.served.under?.piece.origin ?? facts.dish.served.vessel?.piece.origin ?? facts.dish.head;
                // Both are ranges: only what is too large in every case is wrong.
                if (!set || set.name === beneath.name || !across || across.low < room.high || !isNew(at)) {
                    continue;
                }
                const smaller = smallerPlate(plan, facts, room.high);
                const stated = facts.dish.served.vessel;
                report({
                    at,
                    message: `${quoted(set.name)} is ${show(across.low, 'mm')} across and hides the ${quoted(beneath.name)} under it, which is ${show(room.high, 'mm')}.`,
                    hint: smaller
                        ? `Serve it on ${quoted(smaller.name)}, or lay a larger service plate.`
                        : 'Lay a larger service plate, or none under this course.',
                    fixes:
                        smaller && stated && set === facts.vessel
                            ? [
                                  {
                                      title: `Serve ${quoted(facts.dish.title)} on ${quoted(smaller.name)}`,
                                      safety: 'unsafe',
                                      preferred: true,
                                      changes: [{ do: 'replace', at: stated.piece.origin, words: smaller.name }],
                                  },
                              ]
                            : [],
                });
            }
        }
    },
});

/** Of the plates its kind is served on, the first that leaves the service plate's rim to be seen. */
function smallerPlate({ cupboard }: Plan, { kind }: DishFacts, room: number): Piece | undefined {
    return (kind?.vessels ?? [])
        .flatMap(({ names }) => names.flatMap(({ name }) => cupboard.pieces.get(name) ?? []))
        .find(({ measures }) => measures.across !== undefined && measures.across.low < room);
}
