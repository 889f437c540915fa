import type { Plan } from '../plan/types.js';
import { atTables, lengthLike } from './room-words.js';
import { fixesThat, type Furnished } from './room-trial.js';
import { defineRule } from './rule.js';
import { deeperTables, widerTables } from './table-changes.js';
import { centreShort, laidTables, type LaidTable } from './table-problems.js';

const plan = (table: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 12
}

room "Boat store" 9 m by 7 m {
    table A to B: ${table}
}

menu {
    course main "Roast duck" is poultry {
        served on dinner-plate warmed to 62 °C at 63 °C
        cook to 74 °C
        lasts 30 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'centre-too-small',
    group: 'trade',
    since: '0.2.0',
    title: 'No room in the middle of the table',
    why: 'Flowers, candles and salt stand where no cover reaches. On a narrow table with guests on both sides nothing is left for them, and dishes passed at table have no place either.',
    source: ['quantities §7.1', 'quantities §7.2', 'table-service 3.2'],
    fix: 'sometimes',
    customs: ['centre', 'water-glass-gap'],
    scope: 'event',
    examples: {
        wrong: [{ title: 'Guests on both sides of 24 inch', text: plan('rectangle 72 inch by <|24 inch|>, 6 seats') }],
        right: [{ text: plan('rectangle 72 inch by 36 inch, 6 seats') }],
    },
    check({ plan, service, report }) {
        const told = new Map<string, LaidTable>();
        for (const laid of laidTables(plan, service)) {
            const known = told.get(laid.table.name);
            if (centreShort(plan, laid) > (known ? centreShort(plan, known) : 0)) {
                told.set(laid.table.name, laid);
            }
        }
        for (const laid of told.values()) {
            const { tables, on } = laid;
            const { size, depth } = tables;
            const wanted = plan.customs.centre.value;
            const left = Math.max(0, on.centre);
            const isWide = (changed: Plan, after: Furnished): boolean =>
                !laidTables(changed, after).some(
                    (each) => each.table.name === laid.table.name && centreShort(changed, each) > 0,
                );
            report({
                at: (depth && depth.value < size.value ? depth : size).origin,
                message: `${atTables(tables)}, the covers leave ${left < 1 ? 'nothing' : lengthLike(left, size)} of the middle free; ${lengthLike(Number(wanted), size)} is wanted for what stands there.`,
                hint: 'Take a deeper table, or say with the custom `centre` how much stands there.',
                fixes: fixesThat(isWide, { plan, service }, [
                    depth ? deeperTables(plan, tables) : widerTables(plan, tables),
                ]),
            });
        }
    },
});
