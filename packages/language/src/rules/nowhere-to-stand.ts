import type { Origin } from '../plan/origin.js';
import type { Plan } from '../plan/types.js';
import { eveningClock } from '../service/clock/evening.js';
import { plateHolders } from '../service/stock/equipment.js';
import type { EquipmentUse } from '../service/stock/types.js';
import { rentGear, whatItHolds } from './equipment.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { asName, counted, quoted } from './wording.js';

const plan = (own: string, course: string): string => `house "Saltmarsh Hall" {
    own ${own}
}

event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 50
}

menu {
    course appetizer "Beets and curd" {
        served on salad-plate at 8 °C
        lasts 20 min
        contains milk
        ${course}
    }
}
`;

export default defineRule({
    id: 'nowhere-to-stand',
    group: 'service',
    since: '0.2.0',
    title: 'More plates waiting than there is room for',
    why: 'Plates without a shelf end up on trolleys in the way, on stoves and on one another. What is plated ahead has to stand somewhere and keep its temperature there.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A preset course without shelves enough',
                text: plan('1 pass-shelf { holds 30 plates }', '<|preset 5 min before seating|>'),
            },
            {
                title: 'More than the cold shelf takes',
                text: plan('1 pass-shelf { holds 40 plates }', '<|plated ahead into pass-shelf|>'),
            },
        ],
        right: [{ text: plan('2 pass-shelf { holds 30 plates }', 'preset 5 min before seating') }],
    },
    check({ plan, service, report }) {
        if (plateHolders(plan).length === 0) {
            return;
        }
        for (const use of service.stock.equipment) {
            const at = use.purpose === 'warming' || use.plates <= use.capacity ? undefined : placeOf(plan, use);
            if (!at) {
                continue;
            }
            const holder = plateHolders(plan).find(({ gear }) => gear === use.gear);
            report({
                at,
                message: `${whatWaits(plan, use)}; ${whatItHolds(use)}: ${use.plates - use.capacity} too few.`,
                hint: hintFor(use),
                related: holder
                    ? [{ at: holder.stated.origin, message: `One holds ${counted(holder.each, 'plate')}.` }]
                    : [],
                fixes: [...rentGear(plan, use), ...otherGear(plan, use)],
            });
        }
    },
});

/** The clause that has the plates wait: preset, plated ahead, or the course itself. */
function placeOf(plan: Plan, { purpose, course, dishes }: EquipmentUse): Origin | undefined {
    const of = plan.menu?.courses[course];
    const [dish] = dishes;
    switch (purpose) {
        case 'preset':
            return of?.preset?.origin ?? of?.head;
        case 'plated ahead':
            return dish?.platedAhead?.origin ?? dish?.head;
        default:
            return of?.head;
    }
}

function whatWaits(plan: Plan, { purpose, plates, course, at }: EquipmentUse): string {
    const title = quoted(plan.menu?.courses[course]?.title ?? '');
    const count = counted(plates, 'plate');
    switch (purpose) {
        case 'preset':
            return `${count} of ${title} stand ready before they are set on the tables`;
        case 'plated ahead':
            return `${count} of ${title} are plated before their call`;
        default: {
            const time = at === undefined ? undefined : eveningClock(plan)?.face(at);
            return `${count} of ${title} stand at the pass${time ? ` at ${time}` : ''}, plated and not yet carried`;
        }
    }
}

function hintFor({ purpose, loads }: EquipmentUse): string {
    switch (purpose) {
        case 'preset':
            return `Rent more, or plate and set them in ${loads} rounds.`;
        case 'plated ahead':
            return 'Rent more, or plate the rest when the course is called.';
        default:
            return 'Rent more, put a runner on, or let the line plate no faster than plates are carried.';
    }
}

/** Other gear in the house that holds all plates of a dish plated ahead. */
function otherGear(plan: Plan, { purpose, plates, dishes, gear }: EquipmentUse): Fix[] {
    const stated = dishes.length === 1 ? dishes[0]?.platedAhead?.gear : undefined;
    const other = plateHolders(plan).find(
        (each) => each.gear !== gear && each.gear !== 'plate-warmer' && each.each * each.count >= plates,
    );
    return purpose === 'plated ahead' && stated && other
        ? [
              {
                  title: `Plate it ahead into ${quoted(other.gear)}`,
                  safety: 'show',
                  changes: [{ do: 'replace', at: stated.origin, words: asName(other.gear) }],
              },
          ]
        : [];
}
