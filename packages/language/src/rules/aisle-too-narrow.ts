import { fromTo } from '../plan/origin.js';
import type { Plan, Tables } from '../plan/types.js';
import type { NarrowPlace } from '../service/room/types.js';
import type { Service } from '../service/types.js';
import { lengthLike } from './room-words.js';
import { fixesThat, type Furnished } from './room-trial.js';
import { defineRule, type Report } from './rule.js';
import { movedTables } from './table-changes.js';
import { narrowPlacesOf } from './table-problems.js';
import { quoted } from './wording.js';

const plan = (tables: string, room = 'room "Boat store" 12 m by 9 m'): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 16
}

${room} {
    ${tables}
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
    id: 'aisle-too-narrow',
    group: 'service',
    since: '0.2.0',
    title: 'Too little room to walk between the tables',
    why: 'A server with plates passes behind guests who move their chairs. Where two chairs meet, a table can be served from one side only, and nobody gets out in a hurry.',
    source: ['quantities §7.2', 'quantities §7.3', 'table-service 3.38', 'table-service 3.43'],
    fix: 'sometimes',
    customs: ['chair-depth', 'aisle-width', 'wall-gap', 'pass-clear', 'accessible-route'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Two tables placed too near each other',
                text: plan(
                    'table A: round 60 inch, 8 seats, at 4 m by 5 m\n    table B: round 60 inch, 8 seats, at <|6.5 m by 5 m|>',
                ),
            },
            {
                title: 'A grid that fits only with narrow aisles',
                text: plan('table A to B: round 60 inch, 8 seats', '<|room "Boat store" 6.6 m by 4 m|>'),
            },
        ],
        right: [
            {
                text: plan(
                    'table A: round 60 inch, 8 seats, at 4 m by 5 m\n    table B: round 60 inch, 8 seats, at 7.2 m by 5 m',
                ),
            },
        ],
    },
    check({ plan, service, report }) {
        const told = new Set<string>();
        for (const narrow of narrowPlacesOf(service)) {
            const place = plan.room!.tables.findLast(({ names, at }) => at && isOf(narrow, names));
            if (!place || told.has(place.first.name)) {
                continue;
            }
            told.add(place.first.name);
            report(sayNarrow(plan, service, place, narrow));
        }
        const squeezed = saySqueezed(plan, service);
        if (squeezed) {
            report(squeezed);
        }
    },
});

function isOf({ table, other }: NarrowPlace, names: readonly string[]): boolean {
    return names.includes(table) || ('table' in other && names.includes(other.table));
}

function sayNarrow(plan: Plan, service: Service, tables: Tables, narrow: NarrowPlace): Report {
    const { other, left, wanted } = narrow;
    const at = tables.at!;
    const like = (millimetres: number): string => lengthLike(millimetres, at.x);
    const name = tables.first.name;
    const toward =
        'fixture' in other ? `the ${other.fixture}` : quoted(other.table === name ? narrow.table : other.table);
    const gap =
        left <= 0
            ? `The chairs of ${quoted(name)} meet ${'fixture' in other ? toward : `those of ${toward}`}`
            : `${like(left)} is left between ${quoted(name)} with its chairs and ${toward}`;
    const isWide = (_: Plan, after: Furnished): boolean =>
        !narrowPlacesOf(after).some((each) => isOf(each, tables.names));
    return {
        at: fromTo(at.x.origin, at.y.origin),
        message: `${gap}; ${like(wanted)} is wanted.`,
        hint: 'Move the table, or leave out its place so that it is set out with the others.',
        fixes: fixesThat(isWide, { plan, service }, [movedTables(plan, tables, wanted - left)]),
    };
}

/** Tables without a place that fit into the room only with less than the house keeps free. */
function saySqueezed({ room }: Plan, { room: layout }: Service): Report | undefined {
    const grid = layout?.grid;
    const like = room?.aisle ?? room?.width;
    if (!room || !like || !layout || grid?.state !== 'squeezed') {
        return undefined;
    }
    const { short, aisle } = grid;
    return {
        at: room.aisle?.origin ?? room.head,
        message: `The tables of ${quoted(room.title)} fit only with aisles of ${lengthLike(aisle, like)} between chair backs; ${lengthLike(layout.clearances.aisle, like)} is wanted, and the room is ${lengthLike(short.by, like)} short of ${short.along}.`,
        hint: 'Take fewer tables or smaller ones, or another room.',
    };
}
