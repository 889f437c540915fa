/**
 * Solid food on plates. No model: crusts, sauces and garnish cool as no single temperature does (temperature 13, ignored).
 * What is published is how much plates lost between the pass and the guest (temperature P4, P5), whatever the way took.
 */
import type { Band } from './band.js';
import { approach, tauFrom } from './newton.js';

interface Drop {
    readonly least: number;
    readonly most: number;
}

/** From a steam table onto the plate, and from there to the guest, K; four lunches in long-term care. */
const TO_THE_PLATE: Drop = { least: 11, most: 19 };
const TO_THE_GUEST: Drop = { least: 3, most: 11 };

export type SolidStart = 'leaves-the-pass' | 'held';

function dropFrom(how: SolidStart): Drop {
    return how === 'leaves-the-pass'
        ? TO_THE_GUEST
        : { least: TO_THE_PLATE.least + TO_THE_GUEST.least, most: TO_THE_PLATE.most + TO_THE_GUEST.most };
}

/** At the guest, as published drops have it. @param room °C: nothing falls below it */
export function afterPublishedDrop(start: number, how: SolidStart, room: number): Band {
    const { least, most } = dropFrom(how);
    return {
        low: Math.max(room, start - most),
        high: Math.max(room, start - least),
        because: `published drops of ${least} to ${most} °C ${how === 'held' ? 'from where it is held' : 'from the pass'} to the guest (temperature ${how === 'held' ? 'P4, P5' : 'P5'})`,
    };
}

/** What it has to start from to be as wanted at the guest: with the least published drop, and with the most. */
export function startRangeFor(wanted: number, how: SolidStart): { readonly low: number; readonly high: number } {
    const { least, most } = dropFrom(how);
    return { low: wanted + least, high: wanted + most };
}

/** Share of what it changes after the reading that the figure may be out; no published figure. */
const SHARE_AFTER_READING = 0.35;
const LEAST_ERROR = 3;

/**
 * At the guest, from a start and one thermometer reading, with one time constant through both (temperature W9, W10).
 * @param minutes from the start to the guest
 * @returns `undefined` where the reading does not lie between start and room
 */
export function throughReading(
    start: number,
    reading: { readonly celsius: number; readonly minutes: number },
    room: number,
    minutes: number,
): Band | undefined {
    const share = (reading.celsius - room) / (start - room);
    if (!(share > 0 && share < 1) || reading.minutes <= 0) {
        return undefined;
    }
    const celsius = approach(start, room, tauFrom(start, reading.celsius, room, reading.minutes), minutes);
    const half = Math.max(LEAST_ERROR, SHARE_AFTER_READING * Math.abs(reading.celsius - celsius));
    return {
        low: celsius - half,
        celsius,
        high: celsius + half,
        because:
            'one time constant through the start and a thermometer reading (temperature W9, W10); the band is common practice, no source',
    };
}
