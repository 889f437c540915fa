import type { Piece } from '../plan/cupboard.js';
import type { Plan } from '../plan/types.js';
import type { DishFacts } from '../service/types.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { measuredBelow } from './measured-out.js';
import { defineRule } from './rule.js';
import { piecesFor } from '../plan/suiting.js';
import { asName, quoted } from './wording.js';

/** Share of a bowl or coupe that can be carried without a spill. Common practice, no source. */
const CARRIED = 0.9;

export default defineRule({
    id: 'portion-overfills-bowl',
    group: 'service',
    since: '0.1.0',
    title: 'A portion that fills its bowl to the brim',
    why: 'A bowl filled to the brim spills on the way, over the rim, the underliner and the server’s thumb, and hot soup scalds.',
    source: ['table-service 4.20', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C, portion <|400 ml|>
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C, portion 240 ml
        eaten with soup-spoon warmed, brought with the course
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
            const { dish, vessel } = facts;
            const { portion } = dish.served;
            const holds = vessel?.measures.holds?.high;
            if (!vessel || !holds || portion?.dimension !== 'volume' || portion.value <= holds * CARRIED) {
                continue;
            }
            if (!isNew(portion.origin)) {
                continue;
            }
            const less = measuredBelow(holds * CARRIED, portion);
            report({
                at: portion.origin,
                message: `${portion.written} of ${quoted(dish.title)} is too much for a ${quoted(vessel.name)}, which holds ${vessel.measures.holds!.size.written} to the brim.`,
                hint: `Serve ${less} at most, or take a larger bowl.`,
                fixes: [
                    {
                        title: `Serve ${less} of ${quoted(dish.title)}`,
                        safety: 'unsafe',
                        preferred: true,
                        changes: [{ do: 'replace', at: portion.origin, words: less }],
                    },
                    ...largerBowls(plan, facts, portion.value).map((bowl): Fix => ({
                        title: `Serve ${quoted(dish.title)} in ${quoted(bowl.name)}`,
                        safety: 'unsafe',
                        changes: [{ do: 'replace', at: dish.served.vessel!.piece.origin, words: asName(bowl.name) }],
                    })),
                ],
            });
        }
    },
});

/** Bowls for this kind that hold the portion, smallest first, where the dish states its own and stands on the same plate. */
function largerBowls({ cupboard }: Plan, { dish, kind, vessel }: DishFacts, portion: number): readonly Piece[] {
    const stated = dish.served.vessel;
    const holds = ({ measures }: Piece): number => measures.holds?.low ?? 0;
    const under = (piece: Piece): string => piece.on.map(({ name }) => name).join(' ');
    return !stated || !kind || !vessel
        ? []
        : piecesFor(cupboard, kind)
              .filter((piece) => piece.family === vessel.family && under(piece) === under(vessel))
              .filter((piece) => holds(piece) * CARRIED >= portion)
              .toSorted((a, b) => holds(a) - holds(b))
              .slice(0, 1);
}
