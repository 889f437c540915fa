import type { Band, Kind } from '../plan/cupboard.js';
import { degreesLike, isAbove, isBelow, rangeLike, scaleOf } from '../plan/degrees.js';
import { fromComputing, type Quantity } from '../plan/quantity.js';
import type { Fix } from './fixes.js';
import type { Report } from './rule.js';
import { quoted } from './wording.js';

/** From … to, °C, in front of the guest. */
export interface ServingRange {
    readonly low: number;
    readonly high: number;
}

/** For a kind that states only its band. Common practice, no source; a kind's own range comes first. */
const BANDS: Readonly<Record<Band, ServingRange>> = {
    hot: { low: 50, high: 75 },
    warm: { low: 30, high: 60 },
    cool: { low: 8, high: 20 },
    cold: { low: 0, high: 12 },
    frozen: { low: -18, high: -4 },
};

/** Whatever holds water is no hotter than this, °C, at sea level. */
const BOILING = 100;

export function servingRange(kind: Kind | undefined): ServingRange | undefined {
    return kind?.range ?? (kind?.band && BANDS[kind.band]);
}

export interface ServedThing {
    readonly title: string;
    readonly temperature: Quantity | undefined;
    readonly range: ServingRange | undefined;
    readonly kind: Kind | undefined;
    /** `served` for a dish, `poured` for a drink. */
    readonly how: 'served' | 'poured';
    /** Ways to mend it that only its place knows; they come first. Asked for only where something is wrong. */
    readonly fixes?: () => readonly Fix[];
}

/** A finding for what is wanted colder or warmer than its kind is good at; `undefined` where it is right or nobody says. */
export function outOfRange({ title, temperature, range, kind, how, fixes }: ServedThing): Report | undefined {
    if (!temperature || !range || !kind || isAbove(temperature, BOILING)) {
        return undefined;
    }
    const isCold = isBelow(temperature, range.low);
    if (!isCold && !isAbove(temperature, range.high)) {
        return undefined;
    }
    const bound = isCold ? range.low : range.high;
    const nearest = degreesLike(temperature, bound);
    const isMisnamed = isOtherwise(temperature.value, bound);
    return {
        at: temperature.origin,
        message: `${quoted(title)} is ${how} at ${temperature.written}, too ${isCold ? 'cold' : 'warm'}: ${quoted(kind.name)} is wanted at ${rangeLike(temperature, range.low, range.high)}.`,
        hint: isMisnamed
            ? 'If that is how it is served, say what kind of dish it is.'
            : `Have it at ${nearest} in front of the guest.`,
        fixes: [
            ...inOtherScale(temperature, range),
            ...(fixes?.() ?? []),
            ...(isMisnamed ? [] : [rewritten(temperature, nearest, `Have ${quoted(title)} at ${nearest}`)]),
        ],
    };
}

/** Cold where its kind is hot, or the other way round: the dish is another than its kind says, and no other figure mends it. */
function isOtherwise(celsius: number, bound: number): boolean {
    const [cold, hot] = [15, 40];
    return Math.min(celsius, bound) <= cold && Math.max(celsius, bound) >= hot;
}

/** A finding for a temperature that nothing on a plate can have. */
export function aboveBoiling(title: string, what: string, temperature: Quantity | undefined): Report | undefined {
    if (!temperature || !isAbove(temperature, BOILING)) {
        return undefined;
    }
    const limit = degreesLike(temperature, BOILING);
    const misread = inOtherScale(temperature, { low: 0, high: BOILING });
    return {
        at: temperature.origin,
        severity: 'error',
        message: `${quoted(title)} can't ${what} at ${temperature.written}: water boils at ${limit}.`,
        hint: 'Write the temperature that a thermometer would show.',
        fixes: misread.length > 0 ? misread : [rewritten(temperature, limit, `Write ${limit}`)],
    };
}

/** A figure that is right in the other scale was most likely written with the wrong one: 140 °C for 140 °F. */
function inOtherScale(temperature: Quantity, range: ServingRange): Fix[] {
    const figure = fromComputing(temperature.value, scaleOf(temperature));
    const [other, celsius] = scaleOf(temperature) === '°C' ? ['°F', (figure - 32) / 1.8] : ['°C', figure];
    const words = `${figure} ${other}`;
    return celsius >= range.low && celsius <= range.high
        ? [{ ...rewritten(temperature, words, `Read it as ${words}`), preferred: true }]
        : [];
}

function rewritten({ origin }: Quantity, words: string, title: string): Fix {
    return { title, safety: 'unsafe', changes: [{ do: 'replace', at: origin, words }] };
}
