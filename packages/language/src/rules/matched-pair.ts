import type { Cupboard, Kind, PieceUse } from '../plan/cupboard.js';
import { isFromCupboard } from '../plan/origin.js';
import { defineRule } from './rule.js';
import { mismatchedPair, pairsWith, statedPairs, suitsKind, type MismatchedPair } from '../plan/suiting.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'matched-pair',
    group: 'cover',
    since: '0.1.0',
    title: 'A fork and a knife that do not belong together',
    why: 'Fish pieces and meat pieces differ in shape and work in pairs. A guest takes up whatever lies in pairs, so a mixed pair is used for the wrong course.',
    source: ['table-service 2.28', 'table-service 7.29', 'table-service 7.34'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A fish fork beside a steak knife',
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course fish "Baked hake" {
        served on fish-plate warmed to 60 °C at 62 °C
        eaten with fish-fork and <|steak-knife|>
        lasts 20 min
        contains fish
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

menu {
    course fish "Baked hake" {
        served on fish-plate warmed to 60 °C at 62 °C
        eaten with fish-fork and fish-knife
        lasts 20 min
        contains fish
    }
}
`,
            },
        ],
    },
    check({ plan, report }) {
        const { cupboard } = plan;
        const reported = new Set<PieceUse>();
        for (const dish of (plan.menu?.courses ?? []).flatMap((course) => course.dishes)) {
            const kind = cupboard.kinds.get(dish.kind.name);
            const eaten = dish.eaten ?? kind?.eaten;
            const pair = kind && eaten && mismatchedPair(cupboard, eaten, kind);
            if (!pair) {
                continue;
            }
            const [wrong, kept] = wrongAndKept(pair);
            if (reported.has(wrong) || isFromCupboard(wrong.origin)) {
                continue;
            }
            reported.add(wrong);
            const partner = partnerOf(cupboard, kind, kept.piece.name, wrong.piece.name);
            report({
                at: wrong.piece.origin,
                message: `${quoted(wrong.piece.name)} does not pair with ${quoted(kept.piece.name)}: ${quoted(dish.title)} gets a mixed pair.`,
                hint: partner && `Lay ${quoted(partner)} beside ${quoted(kept.piece.name)}.`,
                related: [
                    { at: kept.piece.origin, message: `${quoted(kept.piece.name)} is the other piece of the pair.` },
                ],
                fixes: partner
                    ? [
                          {
                              title: `Lay ${quoted(partner)} beside ${quoted(kept.piece.name)}`,
                              safety: 'unsafe',
                              preferred: true,
                              changes: [{ do: 'replace', at: wrong.piece.origin, words: partner }],
                          },
                      ]
                    : [],
            });
        }
    },
});

/** The one that does not suit the dish is wrong; where both do, the knife: the fork is what every guest uses. */
function wrongAndKept(pair: MismatchedPair): readonly [PieceUse, PieceUse] {
    return pair.forkSuits ? [pair.knife, pair.fork] : [pair.fork, pair.knife];
}

/** A piece of the wrong one's family that pairs with the kept one and suits the dish: the kind's own first. */
function partnerOf(cupboard: Cupboard, kind: Kind, kept: string, wrong: string): string | undefined {
    const family = cupboard.pieces.get(wrong)?.family;
    const candidates = [
        ...(kind.eaten ?? []).flat().map((use) => use.piece.name),
        ...statedPairs(cupboard, kept),
        ...cupboard.pieces.keys(),
    ];
    const partners = candidates.filter(
        (name) =>
            name !== wrong && cupboard.pieces.get(name)?.family === family && pairsWith(cupboard, kept, name) === true,
    );
    return partners.find((name) => suitsKind(cupboard, name, kind)) ?? partners[0];
}
