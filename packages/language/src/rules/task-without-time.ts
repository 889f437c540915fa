import { DERIVED_TASKS } from '../service/preparations/derived-tasks.js';
import { isDoubtful } from './doubt.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (task: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
    }
}

setup {
    ${task}
}
`;

export default defineRule({
    id: 'task-without-time',
    group: 'service',
    since: '0.2.0',
    title: 'A task that does not say how long it takes',
    why: 'It is counted as done in no time, so people are called too late for it.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only those who have done it before know how long it takes.',
    scope: 'file',
    examples: {
        wrong: [{ text: plan('task <|"Tables and chairs"|> by 4 servers') }],
        right: [
            { text: plan('task "Tables and chairs" takes 40 min, by 4 servers') },
            {
                title: 'What is derived has its time',
                text: plan('task "Tables and chairs" takes 40 min\n    task "Cloths" after "Tables and chairs"'),
            },
        ],
    },
    check({ plan, report }) {
        const derived: readonly string[] = Object.values(DERIVED_TASKS).flat();
        for (const { title, takes, between, origin } of plan.tasks) {
            const isDerived = derived.some((each) => each.toLowerCase() === title.text.trim().toLowerCase());
            if (!takes && !between && !isDerived && !isDoubtful(plan, origin)) {
                report({
                    at: title.origin,
                    message: `${quoted(title.text)} does not say how long it takes, so it is counted as done in no time.`,
                    hint: 'Write it, such as `takes 30 min`, or where it is uncertain `takes 30 min, between 20 min and 50 min`.',
                });
            }
        }
    },
});
