import type { Course, Dish } from '../plan/types.js';
import { writeUse } from './eaten-with.js';
import { firstSight } from './first-sight.js';
import { laidNames, layClauses } from './lay-clauses.js';
import { defineRule, type RuleInput } from './rule.js';
import { listed, quoted } from './wording.js';

export default defineRule({
    id: 'warmed-yet-preset',
    group: 'service',
    since: '0.1.0',
    title: 'Something warmed or chilled stands on the table before guests sit',
    why: 'A spoon or bowl warmed in the kitchen is at room temperature within minutes of being laid. Whatever is warmed or chilled comes with its course.',
    source: ['table-service 9.2', 'temperature 13', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A warmed spoon laid with the cover',
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        eaten with <|soup-spoon warmed laid|>
        lasts 15 min
        contains milk
    }
}`,
            },
            {
                title: 'A hot course preset',
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        eaten with soup-spoon warmed, brought with the course
        <|preset 10 min before seating|>
        lasts 15 min
        contains milk
    }
}`,
            },
            {
                title: 'A warmed spoon in an explicit cover',
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        eaten with soup-spoon warmed
        lay right <|soup-spoon|>
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
        served in soup-bowl warmed on underliner at 64 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check(input) {
        reportLaidUses(input);
        reportLayClauses(input);
        reportPresetCourses(input);
    },
});

/** `soup-spoon warmed laid`. */
function reportLaidUses({ service, report }: RuleInput): void {
    const isNew = firstSight();
    for (const use of service.facts.flatMap(({ dish }) => dish.eaten?.flat() ?? [])) {
        const { piece, state, to, origin } = use;
        if (!use.laid || !state || !isNew(origin)) {
            continue;
        }
        report({
            at: origin,
            message: `${quoted(piece.name)} is ${state}${to ? ` to ${to.written}` : ''} and yet laid before guests sit; it will be at room temperature when they use it.`,
            hint: 'Bring it with its course.',
            fixes: [
                {
                    title: `Bring ${quoted(piece.name)} with the course`,
                    safety: 'safe',
                    changes: [
                        {
                            do: 'replace',
                            at: origin,
                            words: writeUse({ ...use, name: piece.name, laid: false, brought: true }),
                        },
                    ],
                },
            ],
        });
    }
}

/** A `lay` clause that names a piece which each of its dishes wants warmed or chilled. */
function reportLayClauses({ plan, report }: RuleInput): void {
    for (const { lay, dishes } of layClauses(plan)) {
        for (const { named, side } of laidNames(lay)) {
            const uses = dishes
                .flatMap((dish) => dish.eaten?.flat() ?? [])
                .filter((use) => use.piece.name === named.name);
            const [first] = uses;
            // The saucer comes with its cup, so what lies on it is not preset.
            if (side === 'saucer' || !first?.state || uses.some((use) => use.state === undefined || use.laid)) {
                continue;
            }
            const isAlone = lay[side]?.length === 1;
            report({
                at: named.origin,
                message: `${quoted(named.name)} is laid here before guests sit, and its dish wants it ${first.state}.`,
                hint: 'Leave it out of the cover; it comes with its course.',
                related: [{ at: first.origin, message: `It is ${first.state} here.` }],
                fixes: [
                    {
                        title: `Leave ${quoted(named.name)} out of the cover`,
                        safety: 'safe',
                        changes: [
                            isAlone
                                ? { do: 'replace', at: named.origin, words: 'nothing' }
                                : { do: 'remove', at: named.origin },
                        ],
                    },
                ],
            });
        }
    }
}

/** A course that stands on the table before guests sit, with something hot, warmed or chilled to it. */
function reportPresetCourses({ plan, service, report }: RuleInput): void {
    for (const course of plan.menu?.courses ?? []) {
        const facts = service.facts.filter(({ dish }) => dish.course === course.index);
        const things = new Set(facts.flatMap(({ dish, isHot }) => warmThings(course, dish, isHot)));
        if (!course.preset || things.size === 0) {
            continue;
        }
        report({
            at: course.preset.origin,
            message: `${quoted(course.title)} is preset before guests sit; ${listed([...things])} will be at room temperature by then.`,
            hint: 'Serve this course once guests are seated.',
            fixes: [
                {
                    title: `Serve ${quoted(course.title)} once guests are seated`,
                    safety: 'unsafe',
                    changes: [{ do: 'remove', at: course.preset.origin }],
                },
            ],
        });
    }
}

function warmThings(course: Course, dish: Dish, isHot: boolean): string[] {
    const { vessel } = dish.served;
    return [
        ...(isHot ? [dish.title === course.title ? 'the hot dish' : quoted(dish.title)] : []),
        // A chilled plate under a cold dish stays cold with it.
        ...(vessel?.state === 'warmed' ? [`the warmed ${quoted(vessel.piece.name)}`] : []),
        ...(dish.eaten?.flat() ?? []).flatMap(({ state, laid, piece }) =>
            state && !laid ? [`the ${state} ${quoted(piece.name)}`] : [],
        ),
    ];
}
