import type { Plan } from '../plan/types.js';
import { show } from '../plan/quantity.js';
import { fixesThat, type Furnished } from './room-trial.js';
import { defineRule } from './rule.js';
import { moreAccessible } from './table-changes.js';
import { accessibleShort } from './table-problems.js';
import { counted, quoted } from './wording.js';

const plan = (accessible: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 40
}

room "Long gallery" 18 m by 11 m {
    table T1: round 60 inch, 8 seats, ${accessible}
    table T2 to T5: round 60 inch, 8 seats
}

menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'too-few-accessible-places',
    group: 'guests',
    severity: 'warning',
    since: '0.2.0',
    title: 'Fewer places for guests in wheelchairs than the share that is due',
    why: 'A place that a wheelchair can reach has no chair and a way to it; on the evening itself it can only be made by moving other guests. The local law decides how many there have to be.',
    source: ['quantities §7.3'],
    fix: 'sometimes',
    customs: ['accessible-share', 'accessible-route', 'wheelchair-length', 'wheelchair-under-table'],
    scope: 'event',
    examples: {
        wrong: [{ title: 'One of forty, where two are due', text: plan('<|1|> accessible') }],
        right: [{ text: plan('2 accessible') }],
    },
    check({ plan, service, report }) {
        const short = accessibleShort(plan, service);
        const { room } = plan;
        if (!short || !room) {
            return;
        }
        const { seats, wanted, stated } = short;
        const custom = plan.customs['accessible-share'];
        report({
            at: placeOf(plan),
            message: `${quoted(room.title)} has ${counted(stated, 'accessible place')} among ${counted(seats, 'seat')}; ${show(custom.value, '%', 1)}, rounded up, ${wanted === 1 ? 'is' : 'are'} ${wanted}.`,
            hint: 'Say at which tables they are: `, 1 accessible`. The local law decides how many there have to be.',
            related: custom.origin ? [{ at: custom.origin, message: 'The house says here what share is due.' }] : [],
            fixes: fixesThat(isEnough, { plan, service }, [moreAccessible(plan, wanted - stated)]),
        });
    },
});

const isEnough = (plan: Plan, after: Furnished): boolean => accessibleShort(plan, after) === undefined;

/** The first count of accessible places, else the room. */
function placeOf({ room }: Plan) {
    return room!.tables.find(({ accessible }) => accessible)?.accessible?.origin ?? room!.head;
}
