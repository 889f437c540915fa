import { degreesLike, isAbove } from '../plan/degrees.js';
import { isFromCupboard } from '../plan/origin.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { touchLimits } from '../service/heat/touch-limits.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'vessel-too-warm',
    group: 'safety',
    since: '0.1.0',
    title: 'A plate or bowl warmed too hot to stand before a guest',
    why: 'A guest moves a plate by its rim with a bare hand. Above 50 °C china wants a cloth and a word to the guest; above 65 °C it can burn within ten seconds.',
    source: ['temperature 4.2', 'temperature B4', 'temperature B12'],
    fix: 'always',
    safety: 'floor',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to <|80 °C|> at 63 °C
        lasts 30 min
        contains nothing
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const { dish } of service.facts) {
            for (const vessel of [dish.served.vessel, dish.served.under]) {
                const piece = vessel && plan.cupboard.pieces.get(vessel.piece.name);
                if (!piece || vessel.state !== 'warmed' || !vessel.to || isFromCupboard(vessel.to.origin)) {
                    continue;
                }
                const { to } = vessel;
                const { material, never } = touchLimits(piece);
                if (isAbove(to, never) && isNew(to.origin)) {
                    const limit = degreesLike(to, never);
                    report({
                        at: to.origin,
                        message: `The ${quoted(vessel.piece.name)} of ${quoted(dish.title)} is warmed to ${to.written}; ${material} above ${limit} never stands before a guest.`,
                        hint: `Warm it to ${limit} at most, carry it with a cloth and tell the guest that it is hot.`,
                        fixes: [
                            {
                                title: `Warm the ${quoted(vessel.piece.name)} to ${limit}`,
                                safety: 'unsafe',
                                changes: [{ do: 'replace', at: to.origin, words: limit }],
                            },
                        ],
                    });
                }
            }
        }
    },
});
