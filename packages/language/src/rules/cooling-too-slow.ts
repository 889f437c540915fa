import { degreesLike } from '../plan/degrees.js';
import type { Dish } from '../plan/types.js';
import {
    coolingLimits,
    judgeCooling,
    type CoolingFault,
    type CoolingLimits,
    type Stage,
} from '../service/heat/cooling.js';
import { hoursWords } from './at-the-guest.js';
import { codeWith } from './code-figures.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (cooled: string): string => `event "Garden lunch" {
    date 2027-07-03
    zone America/Halifax
    seated 12:30
    guests 40
}

menu {
    course cold-soup "Leek and buttermilk" {
        served in soup-bowl chilled on underliner at 6 °C
        ${cooled}
        lasts 15 min
        contains milk
    }
}
`;

export default defineRule({
    id: 'cooling-too-slow',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'Cooked food cooled down more slowly than the food code allows',
    why: 'Spores that cooking leaves alive grow fastest between 57 and 21 °C, and no reheating takes their poison away. So the warm part has to be passed in two hours.',
    source: ['temperature S4', 'temperature W14', 'temperature W15'],
    fix: 'sometimes',
    noFix: 'Where it is not cooled cold enough, how long that takes is the kitchen’s to say.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'Too long in the warm', text: plan('cooled to 21 °C in <|3 h|>, to 5 °C in 2 h') },
            { title: 'Too long in all', text: plan('cooled to 21 °C in 2 h, to 5 °C in <|5 h|>') },
            { title: 'One time for the whole way', text: plan('cooled to 5 °C in <|5 h|>') },
            { title: 'Not cold', text: plan('cooled to 21 °C in 1 h, to <|10 °C|> in 2 h') },
        ],
        right: [{ text: plan('cooled to 21 °C in 90 min, to 5 °C in 3 h') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        const source = codeWith(plan, (code) => coolingLimits(code));
        if (!source) {
            return;
        }
        for (const { dish } of service.facts) {
            const steps = dish.cooled?.steps ?? [];
            const stages = steps.map(({ temperature, time }) => ({ celsius: temperature.value, minutes: time.value }));
            const found = judgeCooling(stages, source.value);
            const step = found && steps[found.stage];
            const at = found?.fault === 'never-cold' ? step?.temperature.origin : step?.time.origin;
            if (!found || !step || !at || !isNew(at)) {
                continue;
            }
            report({
                at,
                message: `${quoted(dish.title)} ${says(found, step, source.value)} (${source.by}).`,
                hint: 'Shallow pans, an ice bath or a blast chiller; a thermometer and the local code decide.',
                fixes: mend(dish, found.fault, source.value, stages),
            });
        }
    },
});

type Step = NonNullable<Dish['cooled']>['steps'][number];

/** `is at 21 °C only after 3 h; …`. */
function says(
    { fault, minutes }: { readonly fault: CoolingFault; readonly minutes: number },
    { temperature }: Step,
    { first, last }: CoolingLimits,
): string {
    const cool = degreesLike(temperature, first.celsius);
    const cold = degreesLike(temperature, last.celsius);
    switch (fault) {
        case 'first-late':
            return `is at ${temperature.written} only after ${hoursWords(minutes)}; cooked food has to be at ${cool} within ${hoursWords(first.minutes)}`;
        case 'first-unknown':
            return `is cooled to ${temperature.written} in ${hoursWords(minutes)}, and nothing says that it is at ${cool} within ${hoursWords(first.minutes)}`;
        case 'last-late':
            return `is at ${temperature.written} only after ${hoursWords(minutes)} in all; cooked food has to be at ${cold} within ${hoursWords(last.minutes)}`;
        case 'never-cold':
            return `is cooled to ${temperature.written} and no further; cooked food has to be at ${cold} within ${hoursWords(last.minutes)}`;
    }
}

/** The times that keep the limits, as what the kitchen has to reach. */
function mend(dish: Dish, fault: CoolingFault, { first, last }: CoolingLimits, stages: readonly Stage[]): Fix[] {
    const cooled = dish.cooled!;
    const [step] = cooled.steps;
    if (fault === 'never-cold' || !step) {
        return [];
    }
    const coldest = Math.min(last.celsius, ...stages.map(({ celsius }) => celsius));
    const cool = `${degreesLike(step.temperature, first.celsius)} in ${hoursWords(first.minutes)}`;
    const cold = `to ${degreesLike(step.temperature, coldest)} in ${hoursWords(last.minutes - first.minutes)}`;
    const words = `cooled to ${cool}, ${cold}`;
    return [
        {
            title: `Cool ${quoted(dish.title)} to ${cool}, and ${cold}`,
            safety: 'unsafe',
            changes: [{ do: 'replace', at: cooled.origin, words }],
        },
    ];
}
