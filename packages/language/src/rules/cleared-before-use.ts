import { findCourse } from '../plan/names.js';
import type { Menu, Plan, Speech } from '../plan/types.js';
import { lastCourseOf } from '../service/cover.js';
import type { Service } from '../service/types.js';
import { courseName } from './course-order.js';
import { withoutNames } from './lay-clauses.js';
import { judgeLayClauses, laidTooSoon } from './lay-judgement.js';
import { relaid } from './mend-lay.js';
import { defineRule, type Report } from './rule.js';
import { quoted } from './wording.js';

const EVENT = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }`;
const SOUP = `    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }`;
const MAIN = `    course main "Roast duck" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
    }`;

export default defineRule({
    id: 'cleared-before-use',
    group: 'service',
    since: '0.1.0',
    title: 'Something that has left the table before it is needed',
    why: 'Everything of a course leaves with it, used or not. What a later course needs is then missing, and the whole table waits while it is fetched again.',
    source: ['table-service 6.15', 'table-service 6.16', 'table-service 4.31', 'table-service 11.1'],
    fix: 'sometimes',
    customs: ['bread-leaves', 'glasses-leave'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Laid for the soup, needed for the duck',
                text: `${EVENT}
menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
        lay right soup-spoon, <|dinner-knife|>
    }
    course main "Roast duck" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        lay left dinner-fork
    }
}`,
            },
            {
                title: 'Bread that leaves before it comes',
                text: `${EVENT}
menu {
${SOUP}
${MAIN}
    bread from main until <|cold-soup|> on bread-plate with butter-spreader { contains gluten }
}`,
            },
        ],
        right: [
            {
                text: `${EVENT}
menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
        lay right soup-spoon
    }
    course main "Roast duck" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        lay left dinner-fork   right dinner-knife
    }
}`,
            },
            {
                text: `${EVENT}
menu {
${SOUP}
${MAIN}
    bread from cold-soup until main on bread-plate with butter-spreader { contains gluten }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const judged = judgeLayClauses(plan, service);
        for (const { clause, laid, later, need } of laidTooSoon(judged)) {
            const { named } = laid;
            const course = plan.menu?.courses[clause.dishes[0]?.course ?? -1];
            const own = judged.find((each) => each.clause === later);
            if (!course || !own) {
                continue;
            }
            const title = `Lay ${quoted(named.name)} for ${quoted(need.dish.title)}`;
            report({
                at: named.origin,
                message: `${quoted(named.name)} is laid for ${quoted(course.title)} and leaves with it; ${quoted(need.dish.title)} is eaten with it later.`,
                hint: `${title}.`,
                related: [
                    { at: later.lay.origin, message: `Here the cover for ${quoted(need.dish.title)} leaves it out.` },
                ],
                fixes: [
                    {
                        title,
                        safety: 'unsafe',
                        preferred: true,
                        changes: [withoutNames(clause.lay, [named]), relaid(plan, own, [], [need])],
                    },
                ],
            });
        }
        const { menu } = plan;
        const early = menu && breadGone(menu, service);
        if (early) {
            report(early);
        }
        for (const speech of menu?.speeches ?? []) {
            const gone = glassGone(plan, service, speech);
            if (gone) {
                report(gone);
            }
        }
    },
});

/** Bread cleared with a course before the one it comes with. */
function breadGone({ courses, bread }: Menu, service: Service): Report | undefined {
    const from = courses[service.bread?.from ?? -1];
    const until = courses[service.bread?.until ?? -1];
    if (!bread?.from || !from || !until || until.index >= from.index) {
        return undefined;
    }
    const title = `Leave the bread until ${quoted(from.title)}`;
    const words = courseName(courses, from);
    return {
        at: bread.until?.origin ?? bread.from.origin,
        message: `The bread leaves with ${quoted(until.title)}, before it comes with ${quoted(from.title)}.`,
        hint: `${title}.`,
        related: [{ at: from.head, message: 'The bread comes with this course.' }],
        fixes: [
            {
                title,
                safety: 'unsafe',
                preferred: true,
                changes: [
                    bread.until
                        ? { do: 'replace', at: bread.until.origin, words }
                        : { do: 'append', at: bread.from.origin, words: `until ${words}` },
                ],
            },
        ],
    };
}

/** A toast whose glass has left with its course. */
function glassGone(plan: Plan, service: Service, speech: Speech): Report | undefined {
    const course = speech.when && findCourse(plan.menu, speech.when.course.name);
    if (plan.customs['glasses-leave'].value !== 'with-their-course' || !speech.pour || !course) {
        return undefined;
    }
    const glass = service.variations
        .flatMap(({ cover }) => [...cover.glasses, ...cover.broughtGlasses])
        .find(({ pour }) => pour?.title === speech.pour!.text);
    const left = glass && plan.menu!.courses[lastCourseOf(plan, glass)];
    // A toast right after the glass's own course is drunk before the glass leaves.
    const toasted = speech.when.when === 'after' ? course.index : course.index - 1;
    if (!glass || !left || left.index >= toasted) {
        return undefined;
    }
    const { house, customs } = plan;
    const custom = customs['glasses-leave'].origin;
    const title = 'Let the glasses stay until the end of the meal';
    return {
        at: speech.pour.origin,
        message: `The ${quoted(glass.piece.name)} of ${quoted(speech.pour.text)} leaves with ${quoted(left.title)}, before ${speech.title ? quoted(speech.title) : 'the toast'}.`,
        hint: 'Let the glasses stay until the end of the meal, or drink the toast earlier.',
        related: custom ? [{ at: custom, message: 'The house clears each glass with its course.' }] : [],
        fixes: house.origin
            ? [
                  {
                      title,
                      safety: 'unsafe',
                      preferred: true,
                      changes: [
                          {
                              do: 'set-custom',
                              house: house.origin,
                              laying: house.layingOrigin,
                              custom,
                              name: 'glasses-leave',
                              value: 'stay',
                          },
                      ],
                  },
              ]
            : [],
    };
}
