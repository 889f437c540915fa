import { lengthLike } from './room-words.js';
import { defineRule } from './rule.js';
import { counted, listed, quoted } from './wording.js';

const plan = (room: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 16
}

${room} {
    table A to C: round 60 inch, 8 seats
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
    id: 'tables-do-not-fit',
    group: 'service',
    severity: 'error',
    since: '0.2.0',
    title: 'Tables for which the room has no place',
    why: 'Tables that fit on paper meet the chairs of the next ones on the floor. Found on the day, it takes guests from their seats.',
    source: ['quantities §7.2', 'table-service 3.38', 'table-service 3.43'],
    fix: 'never',
    noFix: 'Another room, smaller tables or fewer of them: only the host and the house can choose.',
    customs: ['chair-depth', 'aisle-width', 'wall-gap', 'pass-clear'],
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|room "Boat store" 6 m by 4 m|>') }],
        right: [{ text: plan('room "Boat store" 9 m by 7 m') }],
    },
    check({ plan, service, report }) {
        const grid = service.room?.grid;
        const { room } = plan;
        if (!room?.width || !service.room || grid?.state !== 'full') {
            return;
        }
        const { unplaced, short } = grid;
        const shortage = Number.isFinite(short.by)
            ? ` It is ${lengthLike(short.by, room.width)} short of ${short.along} for all of them with aisles of ${lengthLike(service.room.clearances.aisle, room.aisle ?? room.width)}.`
            : '';
        const some =
            unplaced.length > 4
                ? [...unplaced.slice(0, 3).map(quoted), `${unplaced.length - 3} more`]
                : unplaced.map(quoted);
        report({
            at: room.head,
            message: `${quoted(room.title)} has no place for ${counted(unplaced.length, 'table')}, ${listed(some)}, even with chairs back to back.${shortage}`,
            hint: 'Take fewer tables or smaller ones, or another room.',
        });
    },
});
