/** The way of a plate from the pour to its guest, as stretches of cooling. */
import type { Dish } from '../../plan/types.js';
import type { WarmingLoad } from '../preparations/types.js';
import { minutesOut } from '../preparations/warming.js';
import type { PlateRun } from '../run/types.js';
import type { Surroundings } from './liquid.js';
import { approach, thinTau } from './newton.js';
import type { Air, Journey } from './types.js';

/** Air moving past a plate that is carried: multiplies the loss from the top, within 1.3 to 2 (temperature 13). */
const MOVING = 1.5;

/** Conduction into a plate, shelf or table, W/m²K (temperature 13). */
const BASE = 4;

/** Time constant of an empty bowl on its way, min: 5 mm of china, 10 W/m²K on both sides (temperature 13). */
const EMPTY_TAU = thinTau(2400, 0.9, 5, 10);

/**
 * An empty vessel, °C, after so many minutes in the room, standing alone: in a stack it cools more slowly. Negative minutes: what it
 * was before.
 */
export function emptyAfter(celsius: number, room: number, minutes: number): number {
    return approach(celsius, room, EMPTY_TAU, minutes);
}

export interface Stretch {
    readonly minutes: number;
    readonly room: Surroundings;
}

/** Where a plate that is plated ahead stands neither hot nor cold; anything else it is put into is taken to keep it. */
const OPEN_PLACES = ['pass-shelf', 'serving-cart', 'tray'];

/** True where a dish is plated ahead into something that keeps it as it is: a hot box, a cold shelf. */
export function isKeptAhead({ platedAhead }: Dish): boolean {
    return platedAhead?.gear !== undefined && !OPEN_PLACES.includes(platedAhead.gear.name);
}

/**
 * Guests begin when they have sat down, at minute 0: what is preset waits for them.
 * @param isKept it does not stand before it leaves the pass, and its vessel is as warm as it
 * @param warming the loads of warmers that its vessel is in
 */
export function journeyOf(
    { table, plated, leftPass, served }: PlateRun,
    isKept: boolean,
    warming: readonly WarmingLoad[],
): Journey {
    const standing = isKept ? 0 : leftPass - plated;
    const outOfWarmer = isKept ? 0 : minutesOut(warming, plated);
    return { table, outOfWarmer, standing, carried: served - leftPass, waiting: Math.max(0, -served) };
}

export function minutesOf({ standing, carried, waiting }: Journey): number {
    return standing + carried + waiting;
}

/** Standing in the room, open. */
export function stillRoom(air: Air, surfaceFactor: number): Surroundings {
    return { ...air, surfaceFactor, base: BASE, moving: 1, covered: false };
}

/** It stands open on the pass, and is covered, where it is, from there to the guest. */
export function stretches(
    { standing, carried, waiting }: Journey,
    air: Air,
    surfaceFactor: number,
    covered: boolean,
): Stretch[] {
    const still = stillRoom(air, surfaceFactor);
    return [
        { minutes: standing, room: still },
        { minutes: carried, room: { ...still, moving: MOVING, covered } },
        { minutes: waiting, room: still },
    ];
}
