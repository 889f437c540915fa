import { fromTo } from '../plan/origin.js';
import { plateHolders } from '../service/stock/equipment.js';
import { whatItHolds, rentGear } from './equipment.js';
import { defineRule } from './rule.js';
import { counted, quoted } from './wording.js';

const plan = (warmers: number, vessel: string): string => `house "Saltmarsh Hall" {
    own ${warmers} plate-warmer { holds 30 plates }
}

event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 50
}

menu {
    course main "Braised chicken" is poultry {
        served on ${vessel} at 64 °C
        cook to 74 °C
        lasts 30 min
        contains celery
    }
}
`;

export default defineRule({
    id: 'warmer-too-small',
    group: 'service',
    since: '0.2.0',
    title: 'More plates to warm for one course than the warmers hold',
    why: 'Plates that wait their turn go out cold, and a hot dish on a cold plate is lukewarm before the last guest has it.',
    source: ['common practice, no source'],
    fix: 'always',
    customs: ['plate-warming'],
    scope: 'event',
    examples: {
        wrong: [{ text: plan(1, '<|dinner-plate warmed to 60 °C|>') }],
        right: [{ text: plan(2, 'dinner-plate warmed to 60 °C') }],
    },
    check({ plan, service, report }) {
        if (plateHolders(plan).length === 0) {
            return;
        }
        for (const use of service.stock.equipment) {
            const [dish] = use.dishes;
            const vessel = dish?.served.vessel;
            if (use.purpose !== 'warming' || use.plates <= use.capacity || !vessel) {
                continue;
            }
            const course = plan.menu?.courses[use.course]?.title ?? dish.title;
            const holder = plateHolders(plan).find(({ gear }) => gear === use.gear);
            const fixes = rentGear(plan, use);
            report({
                at: fromTo(vessel.piece.origin, vessel.origin),
                message: `${counted(use.plates, 'plate')} of ${quoted(course)} are to be warmed; ${whatItHolds(use)}.`,
                hint: `${fixes[0]?.title ?? 'Rent another'}, or warm them in ${use.loads} loads: ${use.minutes} min in all, and only the last load comes straight to the pass.`,
                related: holder
                    ? [{ at: holder.stated.origin, message: `One holds ${counted(holder.each, 'plate')}.` }]
                    : [],
                fixes,
            });
        }
    },
});
