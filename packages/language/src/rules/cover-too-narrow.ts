import type { Plan } from '../plan/types.js';
import { leastLength } from '../service/room/seats.js';
import type { TableToPlace } from '../service/room/types.js';
import { lengthLike, nameOfTables } from './room-words.js';
import { fixesThat } from './room-trial.js';
import { defineRule } from './rule.js';
import { fewerSeats, fewerSeatsAndMoreTables, widerTables } from './table-changes.js';
import { crowdedTables } from './table-problems.js';
import { counted, quoted } from './wording.js';

const plan = (tables: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
}

room "Boat store" 12 m by 9 m {
    table ${tables}
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
    id: 'cover-too-narrow',
    group: 'cover',
    since: '0.2.0',
    title: 'Less table for each guest than a cover takes',
    why: 'Elbows meet, glasses are mixed up, and a server can’t reach in between two guests. Below 20 inch every source speaks of crowding.',
    source: [
        'table-service 3.6',
        'table-service 3.7',
        'table-service 3.9',
        'quantities §7.1',
        'quantities R11',
        'quantities R12',
    ],
    fix: 'sometimes',
    customs: ['cover-width', 'close-cover-width', 'least-cover-width', 'cover-depth'],
    scope: 'event',
    examples: {
        wrong: [
            { title: 'Ten at 60 inch: 18.85 inch each', text: plan('T1 to T3: round 60 inch, <|10|> seats') },
            {
                title: 'Ten at 72 inch: 22.62 inch each',
                text: plan('T1 to T3: round 72 inch, <|10|> seats'),
            },
        ],
        right: [{ title: 'Eight at 60 inch: 23.56 inch each', text: plan('T1 to T3: round 60 inch, 8 seats') }],
    },
    check({ plan, service, report }) {
        const { customs } = plan;
        for (const { tables, table, pitch, isCrowded } of crowdedTables(plan, service)) {
            const { size, seats, names } = tables;
            const like = (millimetres: number): string => lengthLike(millimetres, size);
            const least = customs[isCrowded ? 'least-cover-width' : 'close-cover-width'];
            const guests = counted(table.seats.length, 'guest');
            const changes = [
                widerTables(plan, tables),
                fewerSeats(plan, tables),
                fewerSeatsAndMoreTables(plan, tables),
            ];
            report({
                at: seats?.origin ?? tables.origin,
                severity: isCrowded ? 'error' : 'warning',
                message: `The ${guests} at ${names.length > 1 ? 'each of ' : ''}${quoted(nameOfTables(tables))} have ${like(pitch)} of table each; less than ${like(least.value)} ${isCrowded ? 'crowds them' : 'is close'}.`,
                hint: `Aim at ${like(customs['cover-width'].value)} for each: ${longEnough(plan, table, like) ?? 'seat fewer at the table, or take a wider one'}.`,
                related: least.origin ? [{ at: least.origin, message: 'The house says here how much it wants.' }] : [],
                fixes: fixesThat(
                    (changed, after) => !crowdedTables(changed, after).some((each) => each.table.name === table.name),
                    { plan, service },
                    changes,
                ),
            });
        }
    },
});

/** How long a table with guests at both ends has to be. */
function longEnough({ customs }: Plan, table: TableToPlace, like: (length: number) => string): string | undefined {
    const hasEnds = table.seats.some(({ degrees }) => degrees % 180 === 0);
    const guests = table.seats.length;
    return table.shape === 'rectangle' && hasEnds && guests > 2
        ? `${guests} guests, one at each end, take ${like(leastLength(guests, customs['cover-width'].value, customs['cover-depth'].value))} of length`
        : undefined;
}
