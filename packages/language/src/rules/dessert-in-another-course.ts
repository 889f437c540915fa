import type { Kind } from '../plan/cupboard.js';
import { isDessert } from '../service/facts.js';
import { defineRule } from './rule.js';
import { asName, listed, quoted } from './wording.js';

const PLAN = (pie: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24 { 4 vegetarian }
}

menu {
    course main "Main" {
        served on dinner-plate warmed to 60 °C at 62 °C
        lasts 30 min
        contains nothing
        dish "Braised shoulder" is roast for the rest { cook to 63 °C }
        dish "Leek and bean pie" is ${pie} { suits vegetarian  cook to 74 °C }
    }
}
`;

export default defineRule({
    id: 'dessert-in-another-course',
    group: 'cover',
    severity: 'warning',
    since: '0.1.0',
    title: 'A dish of a course before dessert is of a kind of dessert',
    why: 'A savoury pie called `pie` is laid, warmed and counted as the sweet one that the cupboard knows: its guests sit before it with a dessert fork.',
    source: ['common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [{ title: 'A savoury pie', text: PLAN('<|pie|> for vegetarian') }],
        right: [
            { text: PLAN('main for vegetarian') },
            {
                title: 'A kind of the house’s own',
                text: `kind savoury-pie is main { called "savoury pie" }\n\n${PLAN('savoury-pie for vegetarian')}`,
            },
        ],
    },
    check({ plan, service, report }) {
        for (const { dish, course, kind } of service.facts) {
            const courseKind = plan.cupboard.kinds.get(course.kind.name);
            // Pieces that are stated and do not suit it are `piece-suits-dish`.
            if (!kind || !courseKind || !isDessert(kind) || !isBeforeDessert(courseKind) || dish.eaten) {
                continue;
            }
            const pieces = (kind.eaten ?? []).flatMap(([use]) => (use ? [quoted(use.piece.name)] : []));
            const eaten = pieces.length > 0 ? `: it is eaten with ${listed(pieces)}` : '';
            report({
                at: dish.kind.origin,
                message: `${quoted(dish.title)} is ${quoted(kind.name)}, a kind of dessert, and its course is ${quoted(courseKind.name)}${eaten}.`,
                hint: `Write \`is ${asName(courseKind.name)}\`, or declare a kind of your own that is one.`,
                fixes: [
                    {
                        title: `Write \`is ${asName(courseKind.name)}\``,
                        safety: 'unsafe',
                        preferred: true,
                        changes: [{ do: 'replace', at: dish.kind.origin, words: asName(courseKind.name) }],
                    },
                ],
            });
        }
    },
});

/** Courses that a table is not cleared for as for dessert; a sweet intermezzo, or fruit, may be of any kind. */
function isBeforeDessert({ lineage }: Kind): boolean {
    return ['first-course', 'soup', 'fish', 'entree', 'main', 'vegetable', 'salad'].some((name) =>
        lineage.includes(name),
    );
}
