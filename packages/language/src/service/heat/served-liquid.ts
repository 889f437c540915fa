/** A liquid in its vessel, from the pour to its guests, and what would have it arrive as wanted. Plain data in, plain data out. */
import { remember } from '../remember.js';
import { bandOf, POUR_ERROR, type Band } from './band.js';
import { minutesKept, pourNeeded, vesselNeeded, type Ask, type Limits } from './inverse.js';
import { emptyAfter, minutesOf, stillRoom, stretches } from './journey.js';
import { coolFor, pourFor, pourInto, type Liquid, type Vessel } from './liquid.js';
import { calibrate, type Reading } from './reading.js';
import type { Air, AtGuest, Answers, Journey } from './types.js';

export interface LiquidCase {
    readonly side: 'hot' | 'cold';
    readonly liquid: Liquid;
    readonly vessel: Vessel;
    /** Of the vessel as it is warmed or chilled, °C. */
    readonly vesselCelsius: number;
    /** Of the liquid as it is poured, °C; absent where the plan states none. */
    readonly start?: number;
    readonly reading?: Reading;
    readonly wanted?: number;
    readonly air: Air;
    readonly surfaceFactor: number;
    readonly covered: boolean;
    /** The vessel goes to the guest empty and is filled there. */
    readonly pouredAtTable: boolean;
    /** The width of the liquid is measured. */
    readonly isMeasured: boolean;
    readonly journeys?: { readonly first: Journey; readonly last: Journey };
    readonly limits: Limits;
}

export interface LiquidHeat {
    readonly poured?: Band;
    readonly first?: AtGuest;
    readonly last?: AtGuest;
    readonly byMinute: readonly number[];
    readonly staysFor?: number;
    readonly answers?: Answers;
}

/** The reference table goes to this minute. */
const TABLE_MINUTES = 12;

/** Many dishes of many courses are kept, so that one that is changed leaves the others as they are. */
export const serveLiquid: (given: LiquidCase) => LiquidHeat = remember(serve, 64);

function serve(given: LiquidCase): LiquidHeat {
    const { liquid, vessel, vesselCelsius, air, surfaceFactor, start, reading, journeys, side, wanted } = given;
    const still = stillRoom(air, surfaceFactor);
    const standing = (from: number, minutes: number, scale: number): number =>
        coolFor(from, minutes, liquid, vessel, still, scale);
    const computed = start === undefined ? undefined : pourInto(liquid, start, vessel, vesselCelsius);
    const now = reading
        ? calibrate(computed, reading, standing)
        : computed === undefined
          ? undefined
          : { start: computed, scale: 1 };
    // What a reading shows beside the computed pour holds for any other pour too.
    const bias = now && computed !== undefined ? now.start - computed : 0;
    const plate = (journey: Journey): Plate => {
        const inVessel = now && filledAt(given, emptyFor(given, journey), now.start, bias);
        const celsius = inVessel === undefined ? undefined : along(given, journey, now!.scale)(inVessel);
        return { journey, inVessel, celsius };
    };
    const plates = journeys && { first: plate(journeys.first), last: plate(journeys.last) };
    const minuteLater = (from: number): number => standing(from, 1, now!.scale);
    // Into a vessel as cold as the last guest's, but not carried before.
    const poured = now && filledAt(given, journeys?.last.outOfWarmer ?? 0, now.start, bias);
    return {
        ...(poured !== undefined && { poured: pouredBand(poured, reading) }),
        ...(plates && { first: atGuest(given, plates.first), last: atGuest(given, plates.last) }),
        byMinute: poured !== undefined && !journeys ? everyMinute(poured, minuteLater) : [],
        ...(poured !== undefined &&
            wanted !== undefined && { staysFor: minutesKept(side, wanted, poured, minuteLater) }),
        ...(wanted !== undefined && { answers: answersOf(given, wanted, now?.scale ?? 1, bias, plates) }),
    };
}

/** One guest's, just filled and on arrival, °C; both absent where nothing is stated of the start. */
interface Plate {
    readonly journey: Journey;
    readonly inVessel: number | undefined;
    readonly celsius: number | undefined;
}

function atGuest(given: LiquidCase, { journey, inVessel, celsius }: Plate): AtGuest {
    const isKnown = inVessel !== undefined && celsius !== undefined;
    return {
        journey,
        minutes: minutesOf(journey),
        ...(isKnown && { temperature: bandAt(given, inVessel, celsius) }),
    };
}

function everyMinute(start: number, minuteLater: (celsius: number) => number): number[] {
    const table = [start];
    while (table.length <= TABLE_MINUTES) {
        table.push(minuteLater(table.at(-1)!));
    }
    return table;
}

/** From just after the pour to the guest; backwards where asked. What is poured at table is there at once. */
function along(
    { liquid, vessel, air, surfaceFactor, covered, pouredAtTable }: LiquidCase,
    journey: Journey,
    scale: number,
    direction: 1 | -1 = 1,
): (celsius: number) => number {
    const way = pouredAtTable ? [] : stretches(journey, air, surfaceFactor, covered);
    const inOrder = direction === 1 ? way : way.toReversed();
    return (celsius) =>
        inOrder.reduce(
            (now, { minutes, room }) => coolFor(now, direction * minutes, liquid, vessel, room, scale),
            celsius,
        );
}

/**
 * In the vessel when it is filled by one that has stood empty for so long: out of its warmer, or on its way to a table where it is
 * poured.
 */
function filledAt(given: LiquidCase, empty: number, straight: number, bias: number): number {
    const { start, liquid, vessel, vesselCelsius, air } = given;
    if (empty === 0 || start === undefined) {
        return straight;
    }
    return pourInto(liquid, start, vessel, emptyAfter(vesselCelsius, air.celsius, empty)) + bias;
}

function emptyFor(
    { pouredAtTable }: Pick<LiquidCase, 'pouredAtTable'>,
    { outOfWarmer, standing, carried }: Journey,
): number {
    return outOfWarmer + (pouredAtTable ? standing + carried : 0);
}

/** The way where no run sheet tells it: what holds just after the pour holds at least. */
const AT_ONCE: Plate = {
    journey: { table: '', outOfWarmer: 0, standing: 0, carried: 0, waiting: 0 },
    inVessel: undefined,
    celsius: undefined,
};

function answersOf(
    given: LiquidCase,
    wanted: number,
    scale: number,
    bias: number,
    plates: { readonly first: Plate; readonly last: Plate } = { first: AT_ONCE, last: AT_ONCE },
): Answers {
    const { side, liquid, vessel, air, vesselCelsius, limits, covered } = given;
    const [first, last] = [plates.first.journey, plates.last.journey];
    const inVessel = along(given, last, scale, -1)(wanted);
    const ask: Ask = {
        side,
        liquid,
        vessel,
        inVessel: inVessel - bias,
        atFirst: along(given, first, scale)(inVessel),
        emptyFor: emptyFor(given, last),
        room: air.celsius,
    };
    const pass = pourNeeded(ask, vesselCelsius, limits);
    const needed = given.start === undefined ? undefined : vesselNeeded(ask, given.start, limits);
    // No warmth at the warmer makes up for a long time out of it.
    const byVessel = needed && 'refused' in needed && last.outOfWarmer > 0 ? undefined : needed;
    const isStuck = side === 'hot' && byVessel && 'refused' in byVessel && vesselCelsius < limits.touch;
    const isShort = side === 'hot' && !covered && last.carried > 0 && (plates.last.celsius ?? wanted) < wanted;
    const isScalding = side === 'hot' && (plates.first.celsius ?? limits.scald) > limits.scald;
    const emptyAtFirst = emptyAfter(vesselCelsius, air.celsius, emptyFor(given, first));
    return {
        ...(byVessel && { vessel: byVessel }),
        pass,
        ...(isStuck && { together: { vessel: limits.touch, pass: pourNeeded(ask, limits.touch, limits) } }),
        ...(isShort && { covered: along({ ...given, covered: true }, last, scale)(plates.last.inVessel!) }),
        ...(isScalding && {
            hottest: pourFor(along(given, first, scale, -1)(limits.scald) - bias, liquid, vessel, emptyAtFirst),
        }),
    };
}

function pouredBand(celsius: number, reading: Reading | undefined): Band {
    return reading
        ? bandOf(celsius, celsius, { geometry: true, readingAfter: reading.minutes })
        : {
              low: celsius - POUR_ERROR,
              celsius,
              high: celsius + POUR_ERROR,
              because: `${POUR_ERROR} °C for what the vessel takes up (temperature 12)`,
          };
}

/** The band, cut where physics ends it: nothing hot is hotter than it was poured or colder than the room. */
function bandAt({ isMeasured, reading, start, air, side }: LiquidCase, inVessel: number, celsius: number): Band {
    const band = bandOf(inVessel, celsius, {
        geometry: isMeasured,
        poured: start !== undefined,
        ...(reading && { readingAfter: reading.minutes }),
    });
    const poured = Math[side === 'hot' ? 'max' : 'min'](start ?? inVessel, inVessel);
    const [least, most] = side === 'hot' ? [air.celsius, poured] : [poured, air.celsius];
    return {
        ...band,
        low: Math.min(celsius, Math.max(band.low, least)),
        high: Math.max(celsius, Math.min(band.high, most)),
    };
}
