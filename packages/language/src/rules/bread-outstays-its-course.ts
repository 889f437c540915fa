import type { Course, Plan } from '../plan/types.js';
import { courseName } from './course-order.js';
import { defineRule } from './rule.js';
import { isSortOfKind } from '../plan/suiting.js';

const BEFORE = `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
    course main "Roast duck" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
    }
    course dessert "Burnt honey custard" {
        served on dessert-plate at 6 °C
        lasts 20 min
        contains egg, milk
    }
`;

export default defineRule({
    id: 'bread-outstays-its-course',
    group: 'service',
    since: '0.1.0',
    title: 'Bread that stays past the course it is for',
    why: 'Before the sweet the table is cleared of all that belongs to the meal and crumbed; a bread plate left standing says that somebody forgot it.',
    source: [
        'table-service 5.13',
        'table-service 5.14',
        'table-service 6.20',
        'table-service 11.1',
        'table-service 11.2',
    ],
    fix: 'always',
    customs: ['bread-leaves'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Bread beside the dessert',
                text: `${BEFORE}
    bread from cold-soup until <|dessert|> on bread-plate with butter-spreader { contains gluten }
}
`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
    bread from cold-soup until main on bread-plate with butter-spreader { contains gluten }
}
`,
            },
        ],
    },
    check({ plan, service, report }) {
        const { bread, courses = [] } = plan.menu ?? {};
        const until = bread?.until && courses[service.bread?.until ?? -1];
        const leaves = until && leavesWith(plan, service.bread!.from);
        if (!bread?.until || !until || !leaves || until.index <= leaves.index || leaves.index < service.bread!.from) {
            return;
        }
        const title = `Take the bread off with \`${leaves.title}\``;
        report({
            at: bread.until.origin,
            message: `The bread stays until \`${until.title}\`; in this house it leaves with \`${leaves.title}\` (custom \`bread-leaves: ${plan.customs['bread-leaves'].value}\`).`,
            hint: `${title}.`,
            related: [{ at: leaves.head, message: 'The bread leaves when this course is cleared.' }],
            fixes: [
                {
                    title,
                    safety: 'unsafe',
                    preferred: true,
                    changes: [{ do: 'replace', at: bread.until.origin, words: courseName(courses, leaves) }],
                },
            ],
        });
    },
});

/** The last course beside which the house leaves bread. */
function leavesWith(plan: Plan, from: number): Course | undefined {
    const courses = plan.menu?.courses ?? [];
    const ofKind = (kind: string) => courses.filter((course) => isSortOfKind(plan.cupboard, course.kind.name, kind));
    switch (plan.customs['bread-leaves'].value) {
        case 'with-its-course':
            return courses[from];
        case 'after-salad':
            return later(ofKind('main').at(-1), ofKind('salad').at(-1)) ?? courses.at(-1);
        default: {
            const dessert = ofKind('dessert')[0];
            return dessert ? courses[dessert.index - 1] : courses.at(-1);
        }
    }
}

function later(one: Course | undefined, other: Course | undefined): Course | undefined {
    return one && other ? (one.index > other.index ? one : other) : (one ?? other);
}
