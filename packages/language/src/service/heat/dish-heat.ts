/** What the plan states of a dish, as a case for the heat model, and the model's answer. */
import type { Piece } from '../../plan/cupboard.js';
import { isKindOf } from '../../plan/names.js';
import type { Plan, VesselUse } from '../../plan/types.js';
import type { WarmingLoad } from '../preparations/types.js';
import type { DishRun } from '../run/types.js';
import type { DishFacts } from '../types.js';
import { isCreamy, liquidOf } from './contents.js';
import type { Limits } from './inverse.js';
import { emptyAfter, isKeptAhead, journeyOf, minutesOf } from './journey.js';
import { serveLiquid } from './served-liquid.js';
import { afterPublishedDrop, startRangeFor, throughReading, type SolidStart } from './solid.js';
import { touchLimits } from './touch-limits.js';
import type { Air, AtGuest, DishHeat, Journey } from './types.js';
import { surfaceFactor, vesselFacts } from './vessel.js';

/** Wanted colder than this, °C, a dish is frozen whatever its kind says. */
const FROZEN_BELOW = -3;

interface Journeys {
    readonly first: Journey;
    readonly last: Journey;
}

/** @returns `undefined` where the plan states nothing that a temperature or a time at the guest follows from */
export function dishHeat(
    plan: Plan,
    facts: DishFacts,
    air: Air,
    run: DishRun | undefined,
    warming: readonly WarmingLoad[],
): DishHeat | undefined {
    const side = sideOf(facts);
    const { dish, course, wanted } = facts;
    const within = dish.served.within?.time.value;
    if (!side) {
        return undefined;
    }
    const isKept = isKeptAhead(dish);
    const loads = dish.served.vessel?.state === 'warmed' ? warming : [];
    const journeys = run && {
        first: journeyOf(run.first, isKept, loads),
        last: journeyOf(run.last, isKept, loads),
    };
    const base = {
        course: course.index,
        dish: dish.index,
        side,
        ...(wanted !== undefined && { wanted }),
        ...(within !== undefined && { within }),
        covered: dish.carried?.how === 'covered',
        pouredAtTable: dish.served.pouredAtTable !== undefined,
    };
    const computed =
        side === 'frozen'
            ? undefined
            : (liquidHeat(plan, facts, air, journeys) ?? solidHeat(facts, side, air, journeys));
    if (computed) {
        return { ...base, ...computed };
    }
    return within === undefined && side !== 'frozen'
        ? undefined
        : { ...base, model: 'time-limit', ...timed(journeys), byMinute: [], assumed: [] };
}

export function sideOf({ kind, wanted, isHot, isCold }: DishFacts): DishHeat['side'] | undefined {
    const isFrozen = wanted === undefined ? kind?.band === 'frozen' : wanted < FROZEN_BELOW;
    return isFrozen ? 'frozen' : isHot ? 'hot' : isCold ? 'cold' : undefined;
}

type Computed = Omit<DishHeat, 'course' | 'dish' | 'side' | 'wanted' | 'within' | 'covered' | 'pouredAtTable'>;

/** Soups, and whatever else is measured out by volume into something hollow. */
function liquidHeat(plan: Plan, facts: DishFacts, air: Air, journeys: Journeys | undefined): Computed | undefined {
    const { dish, kind, vessel: piece, wanted } = facts;
    const { portion } = dish.served;
    const isLiquid = isKindOf(kind, 'soup') || portion?.dimension === 'volume';
    const isHollow = piece?.family === 'bowl' || piece?.family === 'cup';
    const found = isLiquid && isHollow ? vesselFacts(piece) : undefined;
    const usual = kind?.portion && (kind.portion.low.value + kind.portion.high.value) / 2;
    const liquid = liquidOf(kind, portion ?? (usual === undefined ? undefined : { value: usual }));
    const { leavesPass, heldAt, measured } = dish;
    const start = leavesPass ?? heldAt;
    if (!found || !liquid || !piece || (!start && !measured && wanted === undefined)) {
        return undefined;
    }
    // What has stood in a hot box is as warm as its bowl.
    const empty: NonNullable<DishHeat['vessel']> =
        start && isKeptAhead(dish)
            ? { celsius: start.temperature.value, how: 'kept' }
            : emptyVessel(plan, dish.served.vessel, air);
    const out = journeys?.last.outOfWarmer ?? 0;
    const holds = piece.measures.holds?.high;
    const factor = surfaceFactor(holds && liquid.grams / holds, isCreamy(kind));
    const heat = serveLiquid({
        side: facts.isHot ? 'hot' : 'cold',
        liquid,
        vessel: found.vessel,
        vesselCelsius: empty.celsius,
        ...(start && { start: start.temperature.value }),
        ...(measured && {
            reading: { celsius: measured.temperature.value, minutes: measured.after?.value ?? 0 },
        }),
        ...(wanted !== undefined && { wanted }),
        air,
        surfaceFactor: factor,
        covered: dish.carried?.how === 'covered',
        pouredAtTable: dish.served.pouredAtTable !== undefined,
        isMeasured: found.isMeasured,
        ...(journeys && { journeys }),
        limits: limitsOf(plan, piece, facts.isHot ? 'hot' : 'cold'),
    });
    return {
        model: 'liquid',
        ...(start
            ? { start: { celsius: start.temperature.value, how: leavesPass ? 'leaves-the-pass' : 'held' } }
            : measured && { start: { celsius: measured.temperature.value, how: 'reading' } }),
        vessel: out > 0 ? { ...empty, cooledTo: emptyAfter(empty.celsius, air.celsius, out) } : empty,
        liquid: { grams: liquid.grams, surfaceDiameter: found.vessel.surfaceDiameter },
        ...heat,
        assumed: [
            ...found.assumed,
            ...(portion ? [] : [`a portion of ${Math.round(liquid.grams)} ml, usual for its kind`]),
            ...(empty.how === 'custom' ? ['how warm the vessel is, by the house’s custom'] : []),
            ...(out > 0
                ? [
                      `that a vessel ${out.toFixed(0)} min out of its warmer cools as one that stands alone (temperature 13): a covered stack keeps longer`,
                  ]
                : []),
            ...(empty.how === 'kept'
                ? ['that what it is plated ahead into keeps it and its vessel at what it starts from']
                : []),
            ...(dish.served.pouredAtTable
                ? ['that it loses nothing in the jug it is poured from: measure it there']
                : []),
        ],
    };
}

function emptyVessel(plan: Plan, use: VesselUse | undefined, air: Air): NonNullable<DishHeat['vessel']> {
    if (use?.to) {
        return { celsius: use.to.value, how: 'stated' };
    }
    return use?.state
        ? { celsius: plan.customs[use.state === 'warmed' ? 'warmed-to' : 'chilled-to'].value, how: 'custom' }
        : { celsius: air.celsius, how: 'room' };
}

function limitsOf(plan: Plan, piece: Piece, side: 'hot' | 'cold'): Limits {
    const holding = plan.code.figures[`${side}-holding`];
    return {
        touch: touchLimits(piece).never,
        scald: plan.customs['scald-limit'].value,
        ...(holding && { holding: holding.low }),
    };
}

/** Only what is published or measured; a cold plate has neither unless somebody holds a thermometer to it. */
function solidHeat(
    { dish, wanted }: DishFacts,
    side: 'hot' | 'cold',
    air: Air,
    journeys: Journeys | undefined,
): Computed | undefined {
    const { leavesPass, heldAt, measured } = dish;
    const from = leavesPass ?? heldAt;
    const how: SolidStart = heldAt && !leavesPass ? 'held' : 'leaves-the-pass';
    const start = from && { celsius: from.temperature.value, how };
    const out = journeys?.last.outOfWarmer ?? 0;
    const assumed =
        out > 0
            ? [
                  `that its plate takes no more heat than those of the published drops, ${out.toFixed(0)} min out of its warmer`,
              ]
            : [];
    const common = { byMinute: [], assumed, ...(start && { start }) };
    const answers = side === 'hot' &&
        wanted !== undefined && { answers: { range: { from: how, ...startRangeFor(wanted, how) } } };
    const after = measured?.after?.value;
    if (start && measured && after !== undefined) {
        const reading = { celsius: measured.temperature.value, minutes: after };
        const at = (journey: Journey): AtGuest => {
            const minutes = minutesOf(journey);
            const temperature = throughReading(start.celsius, reading, air.celsius, minutes);
            return { journey, minutes, ...(temperature && { temperature }) };
        };
        return {
            ...common,
            model: 'reading',
            ...answers,
            ...(journeys && { first: at(journeys.first), last: at(journeys.last) }),
        };
    }
    if (side === 'cold' || (!start && !answers)) {
        return undefined;
    }
    const temperature = start && afterPublishedDrop(start.celsius, how, air.celsius);
    const drops = temperature && { published: temperature };
    return { ...common, model: 'published-drop', ...answers, ...drops, ...timed(journeys) };
}

function timed(journeys: Journeys | undefined): { readonly first?: AtGuest; readonly last?: AtGuest } {
    const at = (journey: Journey): AtGuest => ({ journey, minutes: minutesOf(journey) });
    return journeys ? { first: at(journeys.first), last: at(journeys.last) } : {};
}
