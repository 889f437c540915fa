import { degreesLike } from '../plan/degrees.js';
import { fromTo } from '../plan/origin.js';
import type { Plan } from '../plan/types.js';
import { eveningClock } from '../service/clock/evening.js';
import { airOf } from '../service/heat/heat.js';
import { emptyAfter } from '../service/heat/journey.js';
import type { WarmingLoad } from '../service/preparations/types.js';
import { isOutTooLong, warmersWanted } from '../service/preparations/warming.js';
import { warmingInput } from '../service/preparations/warmed-vessels.js';
import { plateHolders } from '../service/stock/equipment.js';
import type { EquipmentUse } from '../service/stock/types.js';
import type { DishFacts, Service } from '../service/types.js';
import { minutesWords } from './at-the-guest.js';
import { isDoubtful } from './doubt.js';
import { whatItHolds, rentGear } from './equipment.js';
import { defineRule, type Report } from './rule.js';
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

const twoCourses = (warmers: number, vessel: string): string => `house "Saltmarsh Hall" {
    own ${warmers} plate-warmer { holds 40 plates }
}

event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 32
}

room "Boathouse" 14 m by 10 m {
    table T1 to T4: round 60 inch, 8 seats
}

team { captain 1  servers 3  runners 2  plating-lines 1 at 12 plates per min }

menu {
    course fish "Hake" is fish {
        served on ${vessel} at 60 °C
        cook to 63 °C
        lasts 15 min
        contains fish
    }
    course main "Braised chicken" is poultry {
        served on dinner-plate warmed to 60 °C at 60 °C
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
    title: 'More plates to warm than the warmers hold until they are wanted',
    why: 'Plates that wait their turn, or have to make room for the next course, go out cold, and a hot dish on a cold plate is lukewarm before the last guest has it.',
    source: ['temperature 13', 'common practice, no source'],
    fix: 'always',
    customs: ['plate-warming', 'warmed-to', 'room-temperature'],
    scope: 'event',
    examples: {
        wrong: [
            { title: 'More than fit for one course', text: plan(1, '<|dinner-plate warmed to 60 °C|>') },
            {
                title: 'Out of the warmer before their course, to make room for the next',
                text: twoCourses(1, '<|fish-plate warmed to 60 °C|>'),
            },
        ],
        right: [
            { text: plan(2, 'dinner-plate warmed to 60 °C') },
            { text: twoCourses(2, 'fish-plate warmed to 60 °C') },
        ],
    },
    check({ plan, service, report }) {
        if (plateHolders(plan).length === 0) {
            return;
        }
        const uses = service.stock.equipment.filter(
            ({ purpose, plates, capacity }) => purpose === 'warming' && plates > capacity,
        );
        for (const use of uses) {
            const found = tooMany(plan, service, use);
            if (found) {
                report(found);
            }
        }
        for (const facts of service.facts) {
            const { course, dish, vessel } = facts;
            const isFirst = facts === service.facts.find((each) => each.course === course && each.vessel === vessel);
            const early = earlyLoads(service, course.index, vessel?.name);
            const told = uses.some((use) => use.course === course.index);
            if (isFirst && !told && early.length > 0 && !isDoubtful(plan, dish.origin)) {
                report(outTooEarly(plan, service, facts, early));
            }
        }
    },
});

/** More than fit at once, for one course. */
function tooMany(plan: Plan, service: Service, use: EquipmentUse): Report | undefined {
    const [dish] = use.dishes;
    const vessel = dish?.served.vessel;
    if (!vessel) {
        return undefined;
    }
    const course = plan.menu?.courses[use.course]?.title ?? dish.title;
    const early = earlyLoads(service, use.course);
    const fixes = rentGear(plan, use, moreOf(plan, service, use.gear));
    const waiting =
        early.length > 0
            ? `${piecesOf(early)} of them come out up to ${longestOut(early)} before they are plated`
            : 'only the last load comes straight to the pass';
    return {
        at: fromTo(vessel.piece.origin, vessel.origin),
        message: `${counted(use.plates, 'plate')} of ${quoted(course)} are to be warmed; ${whatItHolds(use)}.`,
        hint: `${fixes[0]?.title ?? 'Rent another'}, or warm them in ${use.loads} loads: ${use.minutes} min in all, and ${waiting}.`,
        related: holderOf(plan, use.gear),
        fixes,
    };
}

/** Room for a course alone, but not while the next is in the warmers. */
function outTooEarly(plan: Plan, service: Service, facts: DishFacts, early: readonly WarmingLoad[]): Report {
    const { course, dish, vessel: piece } = facts;
    const vessel = dish.served.vessel!;
    const first = early.reduce((before, load) => (load.end < before.end ? load : before));
    const gear = first.gear!.replace(/ \d+$/, '');
    const clock = eveningClock(plan);
    const at = clock ? ` at ${clock.face(Math.floor(first.end))}` : '';
    const taker = service.warming.find((load) => load.gear === first.gear && load.start >= first.end - ROUNDING);
    const next = taker && plan.menu?.courses[taker.course]?.title;
    const out = Math.max(...early.map(({ end, wantedUntil }) => wantedUntil - end));
    const warmed = vessel.to?.value ?? plan.customs['warmed-to'].value;
    const cooled = emptyAfter(warmed, airOf(plan).celsius, out);
    const like = vessel.to ?? dish.served.temperature;
    const fixes = rentGear(plan, { gear, plates: 0, capacity: 0 }, moreOf(plan, service, gear));
    return {
        at: fromTo(vessel.piece.origin, vessel.origin),
        message: `${piecesOf(early)} ${quoted(piece!.name)} of ${quoted(course.title)} come out of the ${quoted(gear)}${at}, up to ${longestOut(early)} before they are plated; one that stands alone is at ${like ? degreesLike(like, cooled) : `${Math.round(cooled)} °C`} by then.`,
        hint: `${next === undefined ? '' : `${quoted(next)} needs their place. `}${fixes[0]?.title ?? 'Rent another'}, or serve the courses further apart.`,
        related: holderOf(plan, gear),
        fixes,
    };
}

/** Differences of less than this are rounding, min. */
const ROUNDING = 0.01;

/** Loads of a course that are out long before they are wanted. @param piece all of the course where absent */
function earlyLoads({ warming }: Service, course: number, piece?: string): WarmingLoad[] {
    return warming.filter(
        (load) => load.course === course && (piece === undefined || load.piece === piece) && isOutTooLong(load),
    );
}

const piecesOf = (loads: readonly WarmingLoad[]): number => loads.reduce((sum, { pieces }) => sum + pieces, 0);

function longestOut(loads: readonly WarmingLoad[]): string {
    return minutesWords(Math.max(...loads.map(({ end, wantedUntil }) => wantedUntil - end)));
}

/** How many more let everything come straight from the warmer. */
function moreOf(plan: Plan, service: Service, name: string): number {
    const holder = plateHolders(plan).find(({ gear }) => gear === name);
    const more = holder && { name, holds: holder.each };
    return more ? Math.max(1, warmersWanted({ input: warmingInput(plan, service), more })) : 1;
}

function holderOf(plan: Plan, name: string): NonNullable<Report['related']> {
    const holder = plateHolders(plan).find(({ gear }) => gear === name);
    return holder ? [{ at: holder.stated.origin, message: `One holds ${counted(holder.each, 'plate')}.` }] : [];
}
