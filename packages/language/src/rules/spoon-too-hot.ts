import { degreesLike, isAbove } from '../plan/degrees.js';
import { isFromCupboard } from '../plan/origin.js';
import type { Quantity } from '../plan/quantity.js';
import type { Severity } from '../plan/types.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { touchLimits, type TouchLimits } from '../service/heat/touch-limits.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'spoon-too-hot',
    group: 'safety',
    since: '0.1.0',
    title: 'A warmed piece too hot for the hand or mouth',
    why: 'Metal gives its heat to the skin at once: a steel spoon at 50 °C brings the fingertip to 48 °C, where pain begins, and at 55 °C half a minute burns.',
    source: ['temperature 4.2', 'temperature B4', 'temperature B9', 'temperature W21'],
    fix: 'always',
    safety: 'fixed',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        eaten with soup-spoon warmed to <|60 °C|>, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 64 °C
        eaten with soup-spoon warmed to 42 °C, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const { dish, course, kind } of service.facts) {
            for (const { piece: named, state, to, laid } of (dish.eaten ?? kind?.eaten ?? []).flat()) {
                const piece = plan.cupboard.pieces.get(named.name);
                if (!piece || state !== 'warmed' || !to || isFromCupboard(to.origin)) {
                    continue;
                }
                const limits = touchLimits(piece);
                const judged = judgeTouch(to, limits, laid || course.preset !== undefined);
                if (!judged || !isNew(to.origin)) {
                    continue;
                }
                const pleasant = degreesLike(to, limits.comfortable);
                report({
                    at: to.origin,
                    severity: judged.severity,
                    message: `${quoted(named.name)} of ${quoted(dish.title)} is warmed to ${to.written}; ${judged.why}.`,
                    hint: `Warm it to ${pleasant} at most; children and the elderly burn sooner.`,
                    fixes: [
                        {
                            title: `Warm ${quoted(named.name)} to ${pleasant}`,
                            safety: 'unsafe',
                            changes: [{ do: 'replace', at: to.origin, words: pleasant }],
                        },
                    ],
                });
            }
        }
    },
});

/** What is wrong with a piece so warm; `undefined` where it is comfortable. */
function judgeTouch(
    to: Quantity,
    { material, comfortable, told, never }: TouchLimits,
    isPreset: boolean,
): { readonly severity: Severity; readonly why: string } | undefined {
    const above = (limit: number): string => `${material} above ${degreesLike(to, limit)}`;
    if (isAbove(to, never)) {
        return { severity: 'error', why: `nobody may be handed ${above(never)}` };
    }
    if (isAbove(to, told)) {
        return isPreset
            ? { severity: 'error', why: `${above(told)} is never on the table before guests sit` }
            : { severity: 'warning', why: `${above(told)} hurts the hand that takes it` };
    }
    return isAbove(to, comfortable)
        ? { severity: 'warning', why: `${above(comfortable)} is no longer comfortable` }
        : undefined;
}
