import type { Plan, Task } from '../plan/types.js';
import type { Circle } from '../service/preparations/types.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { listed, quoted } from './wording.js';

const plan = (tasks: string): string => `event "Harbour supper" {
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
    ${tasks}
}
`;

export default defineRule({
    id: 'tasks-in-a-circle',
    group: 'service',
    severity: 'error',
    since: '0.2.0',
    title: 'Tasks that wait for each other',
    why: 'Each waits for the other to be done, so that none is ever begun, nor anything that comes after them.',
    source: ['quantities 9', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Two that wait for each other',
                text: plan(`task "Tables" takes 30 min, after <|"Chairs"|>
    task "Chairs" takes 20 min, after "Tables"`),
            },
            {
                title: 'One that waits for itself',
                text: plan(`task "Flowers" takes 30 min, after <|"Flowers"|>`),
            },
        ],
        right: [
            {
                text: plan(`task "Tables" takes 30 min
    task "Chairs" takes 20 min, after "Tables"`),
            },
        ],
    },
    check({ plan, service, report }) {
        const preparations = plan.tasks.length > 0 ? service.preparations : undefined;
        for (const circle of [preparations?.setUp.circle, preparations?.strike.circle]) {
            // The first that the text states: what is derived can't be told to wait for less.
            const links = circle ? statedLinks(plan, circle) : [];
            const [first, ...others] = links;
            if (!circle || !first) {
                continue;
            }
            const way = [...circle, circle[0]!].map(({ title }) => quoted(title));
            report({
                at: first.at,
                message:
                    circle.length === 1
                        ? `${way[0]} comes after itself, so that it is never begun.`
                        : `${listed(way.slice(0, -1))} wait for each other, so that none is ever begun: ${told(way.toReversed())}.`,
                hint:
                    circle.length === 1
                        ? 'Say what it really comes after, or nothing.'
                        : 'Let one of them begin without the other.',
                related: others.map(({ task, earlier, at }) => ({
                    at,
                    message: `${quoted(task.title.text)} comes after ${quoted(earlier)} here.`,
                })),
                fixes: links.map(({ task, earlier }) => without(task, earlier)),
            });
        }
    },
});

/** `a` comes after `b`, which comes after `c`. */
function told([first, ...others]: readonly string[]): string {
    return `${first} comes after ${others.join(', which comes after ')}`;
}

interface Link {
    readonly task: Task;
    readonly earlier: string;
    readonly at: Task['after'][number]['origin'];
}

/** What the text says of the circle, in the order of the text. */
function statedLinks(plan: Plan, circle: Circle): Link[] {
    return circle
        .flatMap(({ stated }, index): Link[] => {
            const task = stated === undefined ? undefined : plan.tasks[stated];
            const before = circle.at(index - 1)!.title;
            const named = task?.after.find(({ text }) => text.trim().toLowerCase() === before.trim().toLowerCase());
            return task && named ? [{ task, earlier: before, at: named.origin }] : [];
        })
        .toSorted((a, b) => a.at.start - b.at.start);
}

function without(task: Task, earlier: string): Fix {
    const named = task.after.filter(({ text }) => text.trim().toLowerCase() !== earlier.trim().toLowerCase());
    const words = `after ${named.map(({ text }) => `"${text}"`).join(' and ')}`;
    return {
        title: `Do not let ${quoted(task.title.text)} wait for ${quoted(earlier)}`,
        safety: 'unsafe',
        changes: [
            named.length > 0
                ? { do: 'replace', at: task.afterOrigin!, words }
                : { do: 'remove', at: task.afterOrigin! },
        ],
    };
}
