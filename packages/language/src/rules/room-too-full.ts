import { show } from '../plan/quantity.js';
import { defineRule } from './rule.js';
import { floorShort } from './table-problems.js';
import { counted, quoted } from './wording.js';

const plan = (guests: string, tables = 'A to H'): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests ${guests}
}

room "Boat store" 9 m by 7.2 m {
    table ${tables}: rectangle 72 inch by 36 inch, 6 seats
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
    id: 'room-too-full',
    group: 'service',
    since: '0.2.0',
    title: 'More guests than the floor of the room is for',
    why: 'The figure comes from how people get out of a room in a fire. The local code, the room’s own certificate and the authority that applies them decide how many may be in it.',
    source: ['quantities §7.3', 'quantities R18', 'quantities R19'],
    fix: 'never',
    noFix: 'Another room or fewer guests is for the host to choose.',
    customs: ['floor-per-guest'],
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|48|>') }],
        right: [{ text: plan('36', 'A to F') }],
    },
    check({ plan, service, report }) {
        const need = floorShort(plan, service);
        const { room, event } = plan;
        if (!need || !room || !event?.guests) {
            return;
        }
        const { floor, each, guests, most } = need;
        const isMetric = room.width?.unit === 'm' || room.width?.unit === 'cm' || room.width?.unit === 'mm';
        const area = (value: number): string => show(value, isMetric ? 'sq m' : 'sq ft', 1);
        const custom = plan.customs['floor-per-guest'];
        report({
            at: event.guests.expected.origin,
            message: `${quoted(room.title)} has ${area(floor)} of floor, for ${counted(most, 'guest')} at ${area(each)} each; ${guests} are expected.`,
            hint: 'Take a larger room or expect fewer guests; the local code and the room’s own limit decide.',
            related: [
                { at: room.head, message: 'The room and its measures are here.' },
                ...(custom.origin
                    ? [{ at: custom.origin, message: 'The house says here how much floor a guest needs.' }]
                    : []),
            ],
        });
    },
});
