/** A liquid in its vessel, from the pour to its guests, and what would have it arrive as wanted. Plain data in, plain data out. */
import { remember } from '../remember.js';
import { bandOf, POUR_ERROR, type Band } from './band.js';
import { minutesKept, pourNeeded, vesselNeeded, type Ask, type Limits } from './inverse.js';
import { minutesOf, stillRoom, stretches } from './journey.js';
import { coolFor, pourInto, type Liquid, type Vessel } from './liquid.js';
import { approach, thinTau } from './newton.js';
import { calibrate, type Reading } from './reading.js';
import type { Air, AtGuest, Answers, Journey } from './types.js';

export interface LiquidCase {
    readonly side: 'hot' | 'cold';
    readonly liquid: Liquid;
    readonly vessel: Vessel;
    /** Of the vessel before it is filled, °C. */
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

/** Time constant of an empty bowl on its way, min: 5 mm of china, 10 W/m²K on both sides (temperature 13). */
const EMPTY_VESSEL_TAU = thinTau(2400, 0.9, 5, 10);

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
    const fill: Fill = (poured) => (empty) => pourInto(liquid, poured, vessel, empty) + bias;
    const way = (journey: Journey): Way => wayOf(given, journey, now?.scale ?? 1);
    const atGuest = (journey: Journey): AtGuest => {
        const celsius = now && way(journey)(start === undefined ? () => now.start : fill(start), vesselCelsius);
        return {
            journey,
            minutes: minutesOf(journey),
            ...(celsius !== undefined && { temperature: bandAt(given, now!.start, celsius) }),
        };
    };
    return {
        ...(now && { poured: pouredBand(now.start, reading) }),
        ...(journeys && { first: atGuest(journeys.first), last: atGuest(journeys.last) }),
        byMinute: now ? minutesOfTable.map((minutes) => standing(now.start, minutes, now.scale)) : [],
        ...(now &&
            wanted !== undefined && {
                staysFor: minutesKept(side, wanted, (minutes) => standing(now.start, minutes, now.scale)),
            }),
        ...(journeys &&
            wanted !== undefined && {
                answers: answersOf(given, wanted, fill, way(journeys.first), way(journeys.last)),
            }),
    };
}

const minutesOfTable = Array.from({ length: TABLE_MINUTES + 1 }, (_, minute) => minute);

/** What is in a vessel, °C, that was empty and so warm when it was filled. */
type Fill = (poured: number) => (empty: number) => number;

/** °C at the guest, from how the vessel is filled and how warm it is when it sets out. */
type Way = (fill: ReturnType<Fill>, vessel: number) => number;

function wayOf(given: LiquidCase, journey: Journey, scale: number): Way {
    const { liquid, vessel, air, surfaceFactor, covered, pouredAtTable } = given;
    if (pouredAtTable) {
        const empty = journey.standing + journey.carried;
        return (fill, celsius) => fill(approach(celsius, air.celsius, EMPTY_VESSEL_TAU, empty));
    }
    const ways = stretches(journey, air, surfaceFactor, covered);
    return (fill, celsius) =>
        ways.reduce((now, { minutes, room }) => coolFor(now, minutes, liquid, vessel, room, scale), fill(celsius));
}

function answersOf(given: LiquidCase, wanted: number, fill: Fill, first: Way, last: Way): Answers {
    const { side, air, start, vesselCelsius, limits } = given;
    const ask: Ask = {
        side,
        wanted,
        room: air.celsius,
        first: (poured, vessel) => first(fill(poured), vessel),
        last: (poured, vessel) => last(fill(poured), vessel),
    };
    return {
        ...(start !== undefined && { vessel: vesselNeeded(ask, start, limits) }),
        pass: pourNeeded(ask, vesselCelsius, limits),
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
