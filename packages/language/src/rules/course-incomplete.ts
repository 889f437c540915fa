import { isWithin, type Origin } from '../plan/origin.js';
import type { DishFacts } from '../service/types.js';
import { show } from '../plan/quantity.js';
import { isDoubtful } from './doubt.js';
import type { Intention } from './fixes.js';
import { defineRule, type Report } from './rule.js';
import { listed, quoted } from './wording.js';

const plan = (served: string, lasts: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
}

menu {
    ${lasts ? 'course dessert "Poached pear"' : '<|course dessert "Poached pear"|>'} {
        ${served}
${lasts}        contains nothing
    }
}
`;

/** Something the plan needs and does not say. */
interface Absent {
    readonly words: string;
    readonly severity: 'warning' | 'info';
    readonly hint: string;
    /** Where there is a usual figure to start from. */
    readonly change?: Intention;
}

export default defineRule({
    id: 'course-incomplete',
    group: 'service',
    since: '0.1.0',
    title: 'A course without its eating time, or a dish without its vessel or temperature',
    why: 'The run sheet, the count of plates and the kitchen’s targets come from these three.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [{ title: 'No eating time', text: plan('served on dessert-plate at 8 °C', '') }],
        right: [
            { text: plan('served on dessert-plate at 8 °C', '        lasts 20 min\n') },
            {
                title: 'The house says how long its guests eat',
                text: `${plan('served on dessert-plate at 8 °C', '').replaceAll(/<\||\|>/g, '')}
house "Saltmarsh Hall" {
    laying { eating-time: 20 min }
}
`,
            },
        ],
    },
    check({ plan, service, report }) {
        for (const course of plan.menu?.courses ?? []) {
            if (isDoubtful(plan, course.origin)) {
                continue;
            }
            const isTimed = course.lasts !== undefined || plan.customs['eating-time'].origin !== undefined;
            const ofCourse: Absent[] = isTimed ? [] : [LASTS(course.origin)];
            const dishes = service.facts
                .filter((facts) => facts.course === course)
                .map((facts) => ({ dish: facts.dish, absent: absentFrom(facts) }));
            if (course.hasDishes) {
                tell(course.title, course.head, ofCourse, report);
                dishes.forEach(({ dish, absent }) => tell(dish.title, dish.head, absent, report));
            } else {
                tell(course.title, course.head, [...ofCourse, ...dishes.flatMap(({ absent }) => absent)], report);
            }
        }
    },
});

function tell(title: string, at: Origin, absent: readonly Absent[], report: (report: Report) => void): void {
    if (absent.length === 0) {
        return;
    }
    const changes = absent.flatMap(({ change }) => change ?? []);
    report({
        at,
        severity: absent.some(({ severity }) => severity === 'warning') ? 'warning' : 'info',
        message: `${quoted(title)} does not say ${listed(
            absent.map(({ words }) => words),
            'or',
        )}.`,
        hint: `Say it, such as ${listed(absent.map(({ hint }) => quoted(hint)))}.`,
        fixes:
            changes.length === absent.length
                ? [
                      {
                          title: `Write ${listed(absent.map(({ hint }) => quoted(hint)))} to start from`,
                          safety: 'show',
                          changes,
                      },
                  ]
                : [],
    });
}

const LASTS = (course: Origin): Absent => ({
    words: 'how long guests eat',
    severity: 'warning',
    hint: 'lasts 20 min',
    change: { do: 'add-clause', to: course, clause: 'lasts 20 min' },
});

function absentFrom({ dish, kind, vesselHow, wanted }: DishFacts): Absent[] {
    // What an unknown kind is served in is not known either; the name is the finding.
    if (!kind) {
        return [];
    }
    const vessel: Absent[] =
        vesselHow === 'none'
            ? [{ words: 'what it is served in or on', severity: 'warning', hint: 'served on dinner-plate' }]
            : [];
    return wanted === undefined ? [...vessel, temperature({ dish, kind })] : vessel;
}

function temperature({ dish, kind }: Pick<DishFacts, 'dish' | 'kind'>): Absent {
    const range = kind?.range;
    const figure = range && show((range.low + range.high) / 2, '°C');
    const served = dish.served.origin;
    const isOwn = served && isWithin(served, dish.origin);
    return {
        words: 'how warm it is in front of the guest',
        severity: 'info',
        hint: `at ${figure ?? '8 °C'}`,
        ...(figure && {
            change: isOwn
                ? { do: 'append', at: served, words: `at ${figure}` }
                : { do: 'add-clause', to: dish.origin, clause: `served at ${figure}` },
        }),
    };
}
