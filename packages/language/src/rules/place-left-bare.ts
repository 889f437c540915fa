import { findCourse } from '../plan/names.js';
import type { Course, Plan, Speech } from '../plan/types.js';
import { isDessert } from '../service/facts.js';
import type { Service } from '../service/types.js';
import { courseName } from './course-order.js';
import type { Fix } from './fixes.js';
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
    course dessert "Burnt honey custard" {
        served on dessert-plate at 6 °C
        lasts 20 min
        contains egg, milk
    }
`;

export default defineRule({
    id: 'place-left-bare',
    group: 'service',
    since: '0.1.0',
    title: 'A speech before an empty place',
    why: 'Until the table is cleared for dessert one plate leaves as the next comes. A guest who sits before a bare cloth takes the meal to be over.',
    source: ['table-service 5.19', 'table-service 5.20', 'table-service 10.16'],
    fix: 'sometimes',
    customs: ['service-plate'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A speech between fish and main course',
                text: `${BEFORE}
    speech "The harbour master" after <|fish|> lasts 10 min
}`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
    speech "The harbour master" after main lasts 10 min
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        for (const speech of plan.menu?.speeches ?? []) {
            const course = speech.when && findCourse(plan.menu, speech.when.course.name);
            const last = lastBeforeDessert(plan, service);
            if (!speech.when || !course || !last || !isBareAt(service, speech, course)) {
                continue;
            }
            // Once the last course before dessert is cleared, a bare place is what guests expect.
            const cleared = speech.when.when === 'after' ? course.index : course.index - 1;
            if (cleared >= last.index) {
                continue;
            }
            const fix = moveLater(plan, speech, last);
            report({
                at: speech.when.course.origin,
                message: `No plate stands before the guests during ${speech.title ? quoted(speech.title) : `the ${speech.sort}`}: one course is cleared and the next has not come.`,
                hint: fix
                    ? `${fix.title}, when the table is cleared for dessert.`
                    : 'Let it begin while a course is on the table, or when the last one is cleared.',
                related: [{ at: course.head, message: `It is ${speech.when.when} this course.` }],
                fixes: fix ? [fix] : [],
            });
        }
    },
});

/** The course whose clearing may leave the place bare. */
function lastBeforeDessert({ menu, cupboard }: Plan, service: Service): Course | undefined {
    const courses = menu?.courses ?? [];
    const dessert = courses.find((course) => isDessert(cupboard.kinds.get(course.kind.name)));
    return service.variations.length === 0 || dessert?.index === 0
        ? undefined
        : courses[(dessert?.index ?? courses.length) - 1];
}

function isBareAt({ variations }: Service, speech: Speech, course: Course): boolean {
    return variations.some(({ steps }) =>
        steps.some(
            (step) =>
                step.bare &&
                step.sort === speech.sort &&
                step.course === course.index &&
                (speech.title === undefined || step.title === speech.title),
        ),
    );
}

function moveLater({ menu }: Plan, speech: Speech, last: Course): Fix | undefined {
    const { courses } = menu!;
    const target = speech.when!.when === 'after' ? last : courses[last.index + 1];
    return (
        target && {
            title: `Move it to ${speech.when!.when} ${quoted(target.title)}`,
            safety: 'unsafe',
            preferred: true,
            changes: [{ do: 'replace', at: speech.when!.course.origin, words: courseName(courses, target) }],
        }
    );
}
