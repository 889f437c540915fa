import type { Plan } from '../plan/types.js';
import { rewriteLay, SIDE_SAID, type LaySide } from './lay-clauses.js';
import { isWellPlaced, judgeLayClauses, rankOn, type Judged, type Match } from './lay-judgement.js';
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
    id: 'outside-in',
    group: 'cover',
    since: '0.1.0',
    title: 'A cover that does not run from the outside in',
    why: 'Guests take the outermost piece for each course. One piece out of order, and every course after it is eaten with the wrong one.',
    source: [
        'table-service 2.1',
        'table-service 2.11',
        'table-service 2.12',
        'table-service 2.15',
        'table-service 2.16',
    ],
    fix: 'always',
    customs: ['spoons'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'The fish comes first and its fork lies inside',
                text: `${BEFORE}
    lay left <|dinner-fork|>, fish-fork   right fish-knife, dinner-knife
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
        for (const judged of judgeLayClauses(plan, service)) {
            for (const side of ['left', 'right'] as const) {
                const ranked = rankedOn(plan, judged, side);
                const wrong = mostOutOfOrder(ranked);
                if (!wrong) {
                    continue;
                }
                const { outer, inner } = wrong;
                const isByCourse = inner.match.need.dish.course < outer.match.need.dish.course;
                const inOrder = [...ranked].sort((one, other) => one.rank - other.rank);
                const names = new Map(
                    ranked.map(({ match }, index) => [match.named, inOrder[index]!.match.named.name]),
                );
                report({
                    at: outer.match.named.origin,
                    message: `${quoted(outer.match.named.name)} lies outside ${quoted(inner.match.named.name)}; ${
                        isByCourse
                            ? `${quoted(inner.match.need.dish.title)} comes before ${quoted(outer.match.need.dish.title)}`
                            : `spoons lie outside knives (custom \`spoons: ${plan.customs.spoons.value}\`)`
                    }.`,
                    hint: 'Lay what is used first farthest from the plate.',
                    related: [
                        {
                            at: inner.match.need.dish.head,
                            message: `${quoted(inner.match.named.name)} is for this course.`,
                        },
                        {
                            at: outer.match.need.dish.head,
                            message: `${quoted(outer.match.named.name)} is for this course.`,
                        },
                    ],
                    fixes: [
                        {
                            title: `Lay the pieces ${SIDE_SAID[side]} in the order of use`,
                            safety: 'unsafe',
                            preferred: true,
                            changes: [
                                rewriteLay(judged.clause.lay, (each, own) =>
                                    own.map((named) => (each === side ? (names.get(named) ?? named.name) : named.name)),
                                ),
                            ],
                        },
                    ],
                });
            }
        }
    },
});

interface Ranked {
    readonly match: Match;
    readonly rank: number;
}

/** The names of a side that are for a course, outermost first. What lies on the wrong side is a finding of its own. */
function rankedOn(plan: Plan, judged: Judged, side: LaySide): readonly Ranked[] {
    const matches = judged.matches.flat();
    return (judged.clause.lay[side] ?? []).flatMap((named) => {
        const match = matches.find((each) => each.named === named);
        return match && isWellPlaced(plan, match) ? [{ match, rank: rankOn(plan, side, match.need) }] : [];
    });
}

/** The piece with the most pieces inside it that are used before it, and the first of those. */
function mostOutOfOrder(ranked: readonly Ranked[]): { readonly outer: Ranked; readonly inner: Ranked } | undefined {
    const found = ranked.map((outer, index) => ({
        outer,
        earlier: ranked.slice(index + 1).filter(({ rank }) => rank < outer.rank),
    }));
    const worst = found.reduce<(typeof found)[number] | undefined>(
        (most, each) => (each.earlier.length > (most?.earlier.length ?? 0) ? each : most),
        undefined,
    );
    return worst && { outer: worst.outer, inner: worst.earlier[0]! };
}
