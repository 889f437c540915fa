import { DISPLAY_UNIT, show, toComputing, UNITS, type Quantity } from '../plan/quantity.js';
import type { Room } from '../plan/types.js';
import { EARTHLY_AIR, ROOM_AIR } from '../service/heat/air.js';
import { withoutHands } from '../service/run/team-of-plan.js';
import type { DishFacts } from '../service/types.js';
import { isDoubtful } from './doubt.js';
import { everyDrink, isBeyondStrength, mostStrength } from './drinks.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { defineRule, type Report } from './rule.js';
import { quoted } from './wording.js';

const plan = (lasts: string, portion: string, strength: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C, portion ${portion}
        lasts ${lasts}
        contains milk
        pour "Marsh white" 80 ml into white-wine-glass at 9 °C, is white-wine {
            contains sulphites
            strength ${strength}
            instead "White grape juice" 80 ml, is juice { contains nothing }
        }
    }
}
`;

export default defineRule({
    id: 'figure-out-of-reach',
    group: 'service',
    since: '0.1.0',
    title: 'A figure that can only be a slip',
    why: 'A figure with a digit too many, or in minutes where hours are written, still adds up, and what is ordered, cooked and timed by it is wrong by as much.',
    source: ['quantities 3.1', 'quantities 2.4', 'common practice, no source'],
    fix: 'sometimes',
    noFix: 'Where no digit and no unit explains the figure, only the writer knows what was meant.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'A course of hours', text: plan('<|15 h|>', '220 ml', '12 %') },
            { title: 'A digit lost', text: plan('15 min', '<|22 ml|>', '12 %') },
            { title: 'A point lost', text: plan('15 min', '220 ml', '<|125 %|>') },
            { title: 'No wine', text: plan('15 min', '220 ml', '<|40 %|>') },
            {
                title: 'Degrees of another scale',
                text: `${plan('15 min', '220 ml', '12 %')}\nroom "Boathouse" 14 m by 12 m { at <|72 °C|> }\n`,
            },
            {
                title: 'Nobody to plate',
                text: `${plan('15 min', '220 ml', '12 %')}\nteam { servers 2   plating-lines <|0|> }\n`,
            },
        ],
        right: [{ text: plan('15 min', '220 ml', '12.5 %') }],
    },
    check({ plan, service, report }) {
        for (const course of plan.menu?.courses ?? []) {
            if (course.lasts && !isDoubtful(plan, course.lasts.origin)) {
                judgeLasts(course.title, course.lasts.time, report);
            }
        }
        const isNew = firstSight();
        for (const facts of service.facts) {
            const { portion } = facts.dish.served;
            if (portion && isNew(portion.origin) && !isDoubtful(plan, portion.origin)) {
                judgePortion(facts, portion, report);
            }
        }
        for (const { pour, kind } of everyDrink(plan, service)) {
            const strength = pour.strength;
            if (strength && isBeyondStrength(strength, kind) && !isDoubtful(plan, strength.origin)) {
                const most = mostStrength(kind) * 100;
                const usual = kind?.strength?.value;
                report({
                    at: strength.origin,
                    severity: strength.value > 1 ? 'error' : undefined,
                    message: `${quoted(pour.title)} would have ${strength.written} of alcohol; no ${most < 100 ? 'wine' : 'drink'} has more than ${most} %.`,
                    hint: 'Write what the label says.',
                    fixes: usual ? tenfold(strength, usual / 2, usual * 2) : [],
                });
            }
        }
        if (plan.room?.temperature && !isDoubtful(plan, plan.room.temperature.origin)) {
            judgeAir(plan.room, plan.room.temperature, report);
        }
        const nobody = withoutHands(plan, 'plating');
        if (nobody) {
            report({
                at: nobody.count.origin,
                severity: 'error',
                message: `${quoted(nobody.role.name)} is 0, and nobody else plates: what is called, carried and cleared when can't be told.`,
                hint: 'Say how many there are, or leave them out where nothing waits to be plated.',
            });
        }
    },
});

/** The longest course of the longest banquet, and the shortest mouthful, min. Common practice, no source. */
const [LONGEST, SHORTEST] = [4 * 60, 1];

function judgeLasts(title: string, time: Quantity, report: (report: Report) => void): void {
    if (time.value > LONGEST || time.value < SHORTEST) {
        report({
            at: time.origin,
            message: `${quoted(title)} would last ${time.written}; a course takes ${time.value > LONGEST ? '4 h at the very most' : 'a minute at least'}.`,
            hint: 'Say how long guests are at table with it, such as `lasts 20 min`.',
            fixes: inUnit(time, 'min', 10, 90),
        });
    }
}

/** How warm a room mostly is where guests sit, °C. Common practice, no source. */
const [COOL, WARM] = [12, 32];

function judgeAir({ title }: Room, air: Quantity, report: (report: Report) => void): void {
    const { coldest, warmest } = ROOM_AIR;
    if (isBetween(air.value, coldest, warmest)) {
        return;
    }
    const inScale = (celsius: number): string => show(celsius, air.unit ?? DISPLAY_UNIT.temperature);
    report({
        at: air.origin,
        severity: isBetween(air.value, EARTHLY_AIR.coldest, EARTHLY_AIR.warmest) ? undefined : 'error',
        message: `The air of ${quoted(title)} would be at ${air.written}; guests sit in a room of ${inScale(coldest)} to ${inScale(warmest)}.`,
        hint: 'Look at the figure and its scale again: how warm each plate and glass arrives is computed with it.',
        fixes: [
            ...inUnit(air, '°F', COOL, WARM),
            ...inUnit(air, '°C', COOL, WARM),
            ...(air.unit === '°C' ? tenfold(air, COOL, WARM) : []),
        ],
    });
}

/** Tasting portions are a third of a course, and a generous one is half as much again: beyond these it is a slip. */
const [FAR_BELOW, FAR_ABOVE] = [1 / 5, 2];

function judgePortion({ dish, kind, vessel }: DishFacts, portion: Quantity, report: (report: Report) => void): void {
    const usual = kind?.portion;
    if (usual?.low.dimension !== portion.dimension) {
        return;
    }
    const [low, high] = [usual.low.value, usual.high.value];
    const isBelow = portion.value < low * FAR_BELOW;
    // What runs over its bowl is found by the bowl.
    const runsOver = portion.dimension === 'volume' && portion.value > (vessel?.measures.holds?.high ?? Infinity);
    if (isBelow || (portion.value > high * FAR_ABOVE && !runsOver)) {
        report({
            at: portion.origin,
            message: `${portion.written} of ${quoted(dish.title)} is far ${isBelow ? 'below' : 'above'} the ${usual.low.written} to ${usual.high.written} of ${quoted(kind!.name)}.`,
            hint: 'Look at the figure and its unit again.',
            fixes: tenfold(portion, low, high),
        });
    }
}

/** A digit or a decimal point too many or too few, where that brings the figure between the two. */
function tenfold(quantity: Quantity, low: number, high: number): Fix[] {
    const [factor] = [10, 1 / 10, 1 / 100].filter((each) => isBetween(quantity.value * each, low, high));
    const figure = Number.parseFloat(quantity.written);
    return factor && quantity.unit
        ? [write(quantity, `${Number((figure * factor).toPrecision(12))} ${quantity.unit}`)]
        : [];
}

/** The same figure in a unit in which it makes sense. */
function inUnit(quantity: Quantity, unit: 'min' | '°C' | '°F', low: number, high: number): Fix[] {
    const figure = Number.parseFloat(quantity.written);
    return quantity.unit !== unit &&
        UNITS[unit].dimension === quantity.dimension &&
        isBetween(toComputing(figure, unit), low, high)
        ? [write(quantity, `${figure} ${unit}`)]
        : [];
}

function isBetween(value: number, low: number, high: number): boolean {
    return value >= low && value <= high;
}

function write({ origin }: Quantity, words: string): Fix {
    return {
        title: `Write ${quoted(words)}`,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'replace', at: origin, words }],
    };
}
