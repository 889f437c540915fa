import type { Plan } from '../plan/types.js';
import { isOysterFork } from '../service/cover-limit.js';
import { isDessert } from '../service/facts.js';
import { firstSight } from './first-sight.js';
import { SIDE_SAID } from './lay-clauses.js';
import { isWellPlaced, judgeLayClauses, sideOf, type Match } from './lay-judgement.js';
import { movePieces } from './mend-lay.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const BEFORE = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {
    course fish "Baked hake" {
        served on fish-plate warmed to 60 °C at 62 °C
        lasts 20 min
        contains fish
    }
    course main "Roast duck" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
    }
`;

export default defineRule({
    id: 'piece-on-wrong-side',
    group: 'cover',
    since: '0.1.0',
    title: 'A piece on the side where guests do not look for it',
    why: 'Forks are taken with the left hand, knives and spoons with the right; on the other side a piece is overlooked, or the arms cross over the plate.',
    source: ['table-service 2.2', 'table-service 2.5', 'table-service 2.8', 'table-service 2.10'],
    fix: 'always',
    customs: ['oyster-fork', 'fork-without-knife'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A fish fork among the knives',
                text: `${BEFORE}
    lay left dinner-fork   right <|fish-fork|>, fish-knife, dinner-knife
}`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
    lay left fish-fork, dinner-fork   right fish-knife, dinner-knife
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const judged of judgeLayClauses(plan, service)) {
            for (const match of judged.matches.flat()) {
                const { named, side, need } = match;
                // The saucer and the plate under a coupe carry the piece of what stands on them (table-service 7.44).
                if (
                    side === 'saucer' ||
                    isWellPlaced(plan, match) ||
                    isDessertOf(plan, match) ||
                    !isNew(named.origin)
                ) {
                    continue;
                }
                const fix = movePieces(plan, service, judged, [named], [need]);
                report({
                    at: named.origin,
                    message: `${quoted(named.name)} lies ${SIDE_SAID[side]}; ${reasonFor(plan, match)}.`,
                    hint: `${fix.title}.`,
                    fixes: [fix],
                });
            }
        }
    },
});

/** Dessert pieces have a place of their own: `dessert-pieces-place`. */
function isDessertOf(plan: Plan, { need }: Match): boolean {
    return isDessert(plan.cupboard.kinds.get(need.dish.kind.name));
}

function reasonFor({ customs }: Plan, { need: { piece } }: Match): string {
    const place = SIDE_SAID[sideOf(piece)];
    if (isOysterFork(piece.piece)) {
        return `this house lays it ${place} (custom \`oyster-fork: ${customs['oyster-fork'].value}\`)`;
    }
    if (piece.piece.family === 'fork' && piece.side === 'right') {
        return `a fork without a knife lies ${place} (custom \`fork-without-knife: ${customs['fork-without-knife'].value}\`)`;
    }
    const families = { fork: 'forks', knife: 'knives', spoon: 'spoons' } as const;
    const family = families[piece.piece.family as keyof typeof families] ?? 'such pieces';
    return `${family} lie ${place}`;
}
