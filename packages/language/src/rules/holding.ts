import type { Figure } from '../plan/cupboard.js';
import { judgeByCode } from '../plan/degrees.js';
import type { Dish, Plan } from '../plan/types.js';
import type { DishFacts } from '../service/types.js';
import { firstSight } from './first-sight.js';
import type { RuleInput } from './rule.js';
import { quoted } from './wording.js';

type Side = 'hot' | 'cold';

const SIDES = {
    hot: { figure: 'hot-holding', offControl: ['off-control-time'], bound: 'least', than: 'or hotter' },
    cold: {
        figure: 'cold-holding',
        offControl: ['off-control-cold-time', 'off-control-time'],
        bound: 'most',
        than: 'or colder',
    },
} as const;

/** Reports each dish whose `held at` lies between the code's cold and hot limits, where nothing is held. */
export function reportHolding({ plan, service, report }: RuleInput, side: Side): void {
    const { bound, than } = SIDES[side];
    const limit = limitOf(plan, side);
    const isNew = firstSight();
    for (const facts of service.facts) {
        const { title, heldAt } = facts.dish;
        if (!heldAt || !limit || sideOf(plan, facts) !== side) {
            continue;
        }
        const { temperature } = heldAt;
        const { words, isBroken } = judgeByCode(temperature, limit.figure, bound);
        if (!isBroken || !isNew(temperature.origin)) {
            continue;
        }
        const byTime = hoursAllowed(plan, side, heldAt);
        report({
            at: temperature.origin,
            ...(byTime && { severity: 'warning' }),
            message: `${quoted(title)} is held at ${temperature.written}; ${side} food is held at ${words} ${than} (${limit.by}).`,
            hint: byTime
                ? `Only where the local code allows time as the control: mark it, and throw it away after ${byTime}.`
                : 'The local code decides, and a thermometer shows whether it is kept.',
            fixes: [
                {
                    title: `Hold ${quoted(title)} at ${words}`,
                    safety: 'unsafe',
                    changes: [{ do: 'replace', at: temperature.origin, words }],
                },
            ],
        });
    }
}

/** The code's time off control, such as `4 h`, where the dish states a time within it; cold food also by how warm it may get. */
function hoursAllowed({ code }: Plan, side: Side, heldAt: NonNullable<Dish['heldAt']>): string | undefined {
    const [time] = SIDES[side].offControl.flatMap((name) => code.figures[name] ?? []);
    const warmest = side === 'cold' ? code.figures['off-control-cold-most'] : undefined;
    const isTooWarm = warmest !== undefined && judgeByCode(heldAt.temperature, warmest, 'most').isBroken;
    return time && heldAt.time && heldAt.time.value <= time.low && !isTooWarm ? time.size.written : undefined;
}

interface Limit {
    readonly figure: Figure;
    /** Whose limit it is, such as `US model Food Code`. */
    readonly by: string;
}

/** The limit in force; where the code gives none, the mildest of all codes that do, which no code would go below. */
function limitOf({ code, cupboard, event, house }: Plan, side: Side): Limit | undefined {
    const { figure: name, bound } = SIDES[side];
    const called = code.called ?? quoted(code.name);
    const own = code.figures[name];
    if (own) {
        return { figure: own, by: (event?.code ?? house.code) ? called : `${called}, as no local code is named` };
    }
    const [mildest] = [...cupboard.codes.values()]
        .flatMap((each) => each.figures[name] ?? [])
        .toSorted((a, b) => (bound === 'least' ? a.low - b.low : b.high - a.high));
    return mildest && { figure: mildest, by: `${called} gives no figure; this is the mildest of the others` };
}

/** Whether what is held lies between the limits as a hot or as a cold dish; a soup held cold, to be heated later, is neither. */
function sideOf(plan: Plan, { dish, isHot, isCold }: DishFacts): Side | undefined {
    const held = dish.heldAt?.temperature;
    const hot = limitOf(plan, 'hot');
    const cold = limitOf(plan, 'cold');
    if (
        !held ||
        (hot && !judgeByCode(held, hot.figure, 'least').isBroken) ||
        (cold && !judgeByCode(held, cold.figure, 'most').isBroken)
    ) {
        return undefined;
    }
    if (isHot !== isCold) {
        return isHot ? 'hot' : 'cold';
    }
    const middle = ((hot?.figure.low ?? held.value) + (cold?.figure.high ?? held.value)) / 2;
    return held.value < middle ? 'cold' : 'hot';
}
