import type { Plan } from '../plan/types.js';
import { atTables } from './room-words.js';
import { fixesThat, type Furnished } from './room-trial.js';
import { defineRule } from './rule.js';
import { fewerSeats, fewerSeatsAndMoreTables, otherCustom, widerTables } from './table-changes.js';
import { laidTables, offTableTold, type LaidTable } from './table-problems.js';
import { quoted } from './wording.js';

const plan = (table: string, laying = ''): string => `${laying}event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 6
}

room "Boat store" 6 m by 5 m {
    table K: ${table}
}

menu {
    course fish "Baked hake" {
        served on fish-plate warmed to 60 °C at 62 °C
        cook to 63 °C
        lasts 20 min
        contains fish
    }
    course main "Roast duck" is poultry {
        served on dinner-plate warmed to 62 °C at 63 °C
        cook to 74 °C
        lasts 30 min
        contains nothing
    }
    course salad "Bitter leaves" {
        served on salad-plate chilled at 8 °C
        lasts 12 min
        contains mustard
    }
}
`;

const LEFT = 'house "Saltmarsh Hall" { laying { napkin: left   piece-gap: 0.5 inch } }\n\n';

export default defineRule({
    id: 'cover-off-table',
    group: 'cover',
    since: '0.2.0',
    title: 'A piece that would hang over the edge of the table',
    why: 'What reaches over the edge is swept off by the first chair. At the ends of a long table and at small round ones a cover has less room than in the middle of a side.',
    source: ['table-service 3.1', 'table-service 5.2', 'common practice, no source'],
    fix: 'sometimes',
    customs: ['piece-gap', 'napkin', 'glass-shape'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Three forks and the napkin left of them at the end of a table',
                text: plan('rectangle 72 inch by 36 inch, <|6|> seats', LEFT),
            },
        ],
        right: [{ text: plan('rectangle 84 inch by 36 inch, 6 seats', LEFT) }],
    },
    check({ plan, service, report }) {
        const told = new Map<string, LaidTable>();
        for (const laid of laidTables(plan, service)) {
            const [worst] = offTableTold(laid);
            const known = told.get(laid.table.name);
            if (worst && worst.by > (known ? offTableTold(known)[0]!.by : 0)) {
                told.set(laid.table.name, laid);
            }
        }
        for (const laid of told.values()) {
            const { tables, on } = laid;
            const [worst, ...others] = offTableTold(laid);
            const name = on.pieces.find((piece) => piece.id === worst!.piece)!.name;
            const isOn = (changed: Plan, after: Furnished): boolean =>
                !laidTables(changed, after).some(
                    (each) => each.table.name === laid.table.name && offTableTold(each).length > 0,
                );
            report({
                at: tables.seats?.origin ?? tables.origin,
                message: `${atTables(tables)}, ${quoted(name)} of seat ${worst!.seat} reaches ${Math.round(worst!.by)} mm over the edge of the table${others.length > 0 ? `, and ${others.length} more ${others.length === 1 ? 'piece does' : 'pieces do'}` : ''}.`,
                hint: 'Take a longer or wider table, seat fewer at it, or lay less before guests sit.',
                fixes: fixesThat(isOn, { plan, service }, [
                    otherCustom(plan, 'napkin', 'on-plate'),
                    widerTables(plan, tables),
                    fewerSeats(plan, tables),
                    fewerSeatsAndMoreTables(plan, tables),
                ]),
            });
        }
    },
});
