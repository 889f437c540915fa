import { judgeByCode } from '../plan/degrees.js';
import { codeWith } from './code-figures.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (reheat: string): string => `event "Lantern supper" {
    date 2026-10-17
    zone America/New_York
    seated 19:00
    guests 40
}

menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 60 °C
        ${reheat}
        held at 76 °C
        lasts 30 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'reheat-too-low',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'Cooked food reheated to less, or more slowly, than the food code asks',
    why: 'What was cooked and cooled carries what has grown in it since. It has to be heated through again, and fast, before it may be kept hot.',
    source: ['temperature S10', 'temperature 2.3'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'Not hot enough', text: plan('reheat to <|66 °C|> in 1 h') },
            { title: 'Too slowly', text: plan('reheat to 74 °C in <|3 h|>') },
        ],
        right: [{ text: plan('reheat to 74 °C in 90 min') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        const limit = codeWith(plan, ({ figures }) => figures.reheating);
        const longest = codeWith(plan, ({ figures }) => figures['reheating-time']);
        for (const { dish } of service.facts) {
            const { reheat } = dish;
            if (!reheat || !limit) {
                continue;
            }
            const { words, isBroken } = judgeByCode(reheat.temperature, limit.value, 'least');
            if (isBroken && isNew(reheat.temperature.origin)) {
                report({
                    at: reheat.temperature.origin,
                    message: `${quoted(dish.title)} is reheated to ${reheat.temperature.written}; what is then kept hot has to reach ${words} (${limit.by}).`,
                    hint: 'Food from a sealed commercial pack may need less; a thermometer and the local code decide.',
                    fixes: [rewrite(`Reheat ${quoted(dish.title)} to ${words}`, reheat.temperature.origin, words)],
                });
            }
            if (reheat.time && longest && reheat.time.value > longest.value.high && isNew(reheat.time.origin)) {
                const most = longest.value.size.written;
                report({
                    at: reheat.time.origin,
                    message: `${quoted(dish.title)} takes ${reheat.time.written} to be reheated; it has to be hot within ${most} (${longest.by}).`,
                    hint: 'Reheat it in smaller amounts, on the stove or in the oven and never in the hot box.',
                    fixes: [rewrite(`Reheat ${quoted(dish.title)} within ${most}`, reheat.time.origin, most)],
                });
            }
        }
    },
});

function rewrite(title: string, at: Parameters<ReturnType<typeof firstSight>>[0], words: string): Fix {
    return { title, safety: 'unsafe', changes: [{ do: 'replace', at, words }] };
}
