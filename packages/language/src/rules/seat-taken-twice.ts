import { fromTo, type Origin } from '../plan/origin.js';
import type { Plan, Seat } from '../plan/types.js';
import { sayNeed } from '../service/guests.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (rows: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 16 {
${rows}
    }
}

room "Long gallery" 18 m by 11 m {
    table T1 to T2: round 60 inch, 8 seats
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
    id: 'seat-taken-twice',
    group: 'guests',
    since: '0.1.0',
    title: 'One seat for two guests',
    why: 'A server carries the special plate to a seat, not to a face. Two guests on one seat means that one of them gets the other’s dish.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('        1 vegetarian at T1 seat 5\n        1 without egg at <|T1 seat 5|>') }],
        right: [{ text: plan('        1 vegetarian at T1 seat 5\n        1 without egg at T1 seat 6') }],
    },
    check({ plan, report }) {
        const rows = plan.event?.guests?.rows ?? [];
        // A row and a named guest at one seat are the same guest.
        const sorts: readonly (readonly Seated[])[] = [
            rows.map((row) => ({
                seat: row.seat,
                count: row.count.count,
                who: quoted([row.count.count, row.needs.map(sayNeed).join(', ')].join(' ').trim()),
            })),
            plan.seating.map((guest) => ({ seat: guest.seat, count: 1, who: quoted(guest.name.text) })),
        ];
        const taken = new Set(sorts.flat().flatMap(({ seat }) => keyOf(seat) ?? []));
        for (const seated of sorts) {
            const first = new Map<string, Seated>();
            for (const each of seated) {
                const key = keyOf(each.seat);
                if (key === undefined) {
                    continue;
                }
                const before = first.get(key);
                const { table, seat } = each.seat!;
                if (before) {
                    report({
                        at: placeOf(each.seat!),
                        message: `Seat ${seat!.count} of ${quoted(table.name)} is taken twice: by ${before.who} and by ${each.who}.`,
                        hint: 'Give each guest a seat of their own.',
                        related: [{ at: placeOf(before.seat!), message: 'It is taken here first.' }],
                        fixes: moveTo(plan, each.seat!, taken),
                    });
                } else if (each.count > 1) {
                    report({
                        at: placeOf(each.seat!),
                        message: `${each.count} guests have seat ${seat!.count} of ${quoted(table.name)}, which seats one.`,
                        hint: 'Write a row for each of them with a seat of their own, or the table alone.',
                    });
                }
                first.set(key, before ?? each);
            }
        }
    },
});

interface Seated {
    readonly seat?: Seat;
    readonly count: number;
    readonly who: string;
}

function keyOf(seat: Seat | undefined): string | undefined {
    return seat?.seat && `${seat.table.name}/${seat.seat.count}`;
}

/** From the table's name to the seat's number. */
function placeOf({ table, seat }: Seat): Origin {
    return fromTo(table.origin, seat?.origin ?? table.origin);
}

/** The nearest free seat of the same table, where the room says how many it has. */
function moveTo(plan: Plan, { table, seat }: Seat, taken: ReadonlySet<string>): Fix[] {
    const seats = plan.room?.tables.find((tables) => tables.names.includes(table.name))?.seats?.count ?? 0;
    const free = Array.from({ length: seats }, (_, index) => index + 1)
        .filter((number) => !taken.has(`${table.name}/${number}`))
        .sort((a, b) => Math.abs(a - seat!.count) - Math.abs(b - seat!.count) || b - a);
    return free.slice(0, 1).map((number) => ({
        title: `Move this guest to seat ${number}`,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'replace', at: seat!.origin, words: String(number) }],
    }));
}
