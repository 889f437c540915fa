/** How fast people work and guests eat, as the house says or by default. Times in min, lengths in mm. */
import { customSpecs, type CustomName } from '../../plan/customs.js';
import type { Customs } from '../../plan/types.js';

/** The customs that the simulation computes with, by what they are called here. */
const PACE = {
    /** mm in a minute. */
    walking: 'walking',
    platesATrip: 'plates-a-trip',
    coversATrip: 'covers-a-trip',
    handingOver: 'handing-over',
    settingDown: 'setting-down',
    clearingCover: 'clearing-cover',
    crumbingCover: 'crumbing-cover',
    relayingPiece: 'relaying-piece',
    pouringGlass: 'pouring-glass',
    tasting: 'tasting',
    offeringBread: 'offering-bread',
    seatingTime: 'seating-time',
    coffeeTime: 'coffee-time',
    /** Share of the way's time. */
    tripSpread: 'trip-spread',
} as const satisfies Record<string, CustomName>;

export type Pace = Readonly<Record<keyof typeof PACE, number>>;

export function paceOf(customs: Customs): Pace {
    return Object.fromEntries(
        Object.entries(PACE).map(([name, custom]) => [name, figureOf(customs, custom)]),
    ) as unknown as Pace;
}

/**
 * The figure of a custom, within what it accepts: what lies outside is a finding of its own, and nobody carries no plates or
 * walks no way. Plates and covers are whole.
 */
export function figureOf(customs: Customs, name: CustomName): number {
    const figure = customSpecs.find((spec) => spec.name === name)?.figure;
    const value = Number(customs[name].value);
    const inRange = figure ? Math.min(figure.high, Math.max(figure.low, value)) : value;
    return name === 'plates-a-trip' || name === 'covers-a-trip' ? Math.max(1, Math.floor(inRange)) : inRange;
}

/** What a sheet must say was assumed: customs without a published source that the house does not state. */
export function isAssumed(name: CustomName, customs: Customs): boolean {
    const spec = customSpecs.find((each) => each.name === name);
    const { value, origin } = customs[name];
    const sources = [
        ...(spec?.figure && typeof value === 'number' ? spec.figure.sources : []),
        ...(spec?.choices ?? []).filter((choice) => choice.value === value).flatMap((choice) => choice.sources),
    ];
    return origin === undefined && sources.every((source) => source === 'common practice, no source');
}
