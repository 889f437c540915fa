import type { Plan } from '../plan/types.js';
import { countAgainstLimit } from '../service/cover-limit.js';
import type { CoverPiece, Variation } from '../service/types.js';
import { bringWithCourse, eachOnce, sameOrigin } from './bring-with-course.js';
import { defineRule } from './rule.js';
import { listed, quoted } from './wording.js';

const EVENT = `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}
`;

export default defineRule({
    id: 'three-per-side',
    group: 'cover',
    since: '0.1.0',
    title: 'More pieces on one side of the plate than the house lays',
    why: 'Guests read the cover from the outside in; past the limit they lose their place and the covers grow too wide for the table.',
    source: ['table-service 1.1', 'table-service 1.4', 'table-service 1.7', 'table-service 1.13', 'table-service 1.8'],
    fix: 'always',
    customs: ['limit', 'limit-counts', 'oyster-fork-counts', 'overflow'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Soup, fish, main and salad: four pieces lie right of the plate',
                text: `${EVENT}
menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
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
    course salad "Bitter leaves" {
        served on salad-plate at 10 °C
        eaten with salad-fork and <|salad-knife|>
        lasts 15 min
        contains mustard
    }
}
`,
            },
        ],
        right: [
            {
                title: 'The salad knife comes with its course',
                text: `${EVENT}
menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
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
    course salad "Bitter leaves" {
        served on salad-plate at 10 °C
        eaten with salad-fork and salad-knife brought with the course
        lasts 15 min
        contains mustard
    }
}
`,
            },
        ],
    },
    check({ plan, service, report }) {
        const limit = plan.customs.limit.value;
        const tallies = service.variations.map((variation) => ({
            variation,
            counts: countAgainstLimit(plan.customs, countable(variation)),
        }));
        // The same counts for every variation; each is one finding, whoever it concerns.
        for (const place of tallies[0]?.counts.keys() ?? []) {
            const over = tallies
                .map(({ variation, counts }) => ({ variation, ...counts[place]! }))
                .filter((count) => count.over.length > 0);
            if (over.length === 0) {
                continue;
            }
            const worst = over.reduce((most, each) => (each.count > most.count ? each : most));
            const excess = excessOf(over);
            const title = `Bring ${listed([...new Set(excess.map(({ piece }) => quoted(piece.piece.name)))])} with ${coursesOf(plan, excess)}`;
            const [first, ...others] = excess;
            report({
                at: first!.piece.origin,
                message: `${over.length === tallies.length ? 'The cover' : whose(worst.variation)} has ${worst.count} ${worst.what}; this house lays at most ${limit} ${LIMIT_FOR[plan.customs['limit-counts'].value]}.`,
                hint: `${title}, or change the custom \`limit: ${limit}\`.`,
                related: [
                    ...others
                        .filter(({ piece }) => !sameOrigin(piece.origin, first!.piece.origin))
                        .map(({ piece }) => ({
                            at: piece.origin,
                            message: `${quoted(piece.piece.name)} is past the limit too.`,
                        })),
                    ...(plan.customs.limit.origin
                        ? [{ at: plan.customs.limit.origin, message: 'The house sets its limit here.' }]
                        : []),
                ],
                fixes: [
                    {
                        title,
                        safety: 'unsafe',
                        preferred: true,
                        changes: eachOnce(
                            over.flatMap(({ variation }) =>
                                bringWithCourse(
                                    variation.cover,
                                    excess.filter((each) => each.variation === variation).map(({ piece }) => piece),
                                ),
                            ),
                        ),
                    },
                ],
            });
        }
    },
});

const LIMIT_FOR = {
    pieces: 'per side',
    'forks-and-knives': 'of each',
    'forks-left': 'there',
    'all-pieces': 'in all',
} as const;

/** What lies beside the plate to be used. A piece of a `lay` clause that no course uses is `laid-never-used`'s finding. */
function countable({ cover, dishes }: Variation): readonly CoverPiece[] {
    return (
        [...cover.left, ...cover.right]
            .filter((piece) => piece.dish !== undefined || piece.purpose !== 'eating')
            // Coffee is no course: its spoon stays where the custom puts it, and another piece is brought.
            .map((piece) =>
                piece.purpose === 'eating'
                    ? piece
                    : { ...piece, course: Math.min(piece.course, dishes.length) - dishes.length - 1 },
            )
    );
}

interface Excess {
    readonly variation: Variation;
    readonly piece: CoverPiece;
}

/** The pieces past the limit for any guest, those used last (table-service 1.1, 1.2); each clause once for each dish. */
function excessOf(
    over: readonly { readonly variation: Variation; readonly over: readonly CoverPiece[] }[],
): readonly Excess[] {
    const excess: Excess[] = [];
    for (const { variation, over: pieces } of over) {
        for (const piece of pieces) {
            const isKnown = excess.some(
                (each) =>
                    sameOrigin(each.piece.origin, piece.origin) &&
                    each.piece.piece === piece.piece &&
                    each.piece.dish === piece.dish,
            );
            if (!isKnown) {
                excess.push({ variation, piece });
            }
        }
    }
    return excess.sort((one, other) => one.piece.course - other.piece.course);
}

function coursesOf(plan: Plan, excess: readonly Excess[]): string {
    const courses = new Set(excess.map(({ piece }) => plan.menu?.courses[piece.course]));
    const [only] = courses;
    return courses.size > 1 || !only ? 'their courses' : `the ${only.kind.name} course`;
}

function whose({ label }: Variation): string {
    return `The cover for ${quoted(label)}`;
}
