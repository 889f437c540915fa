/** Where bottles are chilled or tempered, and how fast (temperature DS4 and the defaults below its table). */
import type { Customs, Plan, Pour } from '../../plan/types.js';
import { minutesTo } from '../heat/newton.js';

export type Way = Customs['chilled-in']['value'];

/** Time constant of a 750 ml bottle standing upright, min: usual, and the ends of the published range. */
export interface TimeConstant {
    readonly usual: number;
    readonly low: number;
    readonly high: number;
}

export interface Bath {
    readonly celsius: number;
    readonly tau: TimeConstant;
}

export const TIME_CONSTANTS: Readonly<Record<Way, TimeConstant>> = {
    fridge: { usual: 160, low: 120, high: 220 },
    freezer: { usual: 120, low: 90, high: 180 },
    // Bottles turned now and then. Never stirred it is 50 min, beyond this range.
    'ice-water': { usual: 22, low: 18, high: 30 },
    counter: { usual: 100, low: 80, high: 120 },
};

/** While there is ice in it, °C. */
const ICE_WATER = 0;

/** The bath as the house has it. @param room °C: what stands on the counter comes to */
export function bathOf({ customs }: Pick<Plan, 'customs'>, way: Way, room: number): Bath {
    const celsius = {
        fridge: customs['fridge-temperature'].value,
        freezer: customs['freezer-temperature'].value,
        'ice-water': ICE_WATER,
        counter: room,
    }[way];
    return { celsius, tau: TIME_CONSTANTS[way] };
}

/** How the pour says it is chilled, else as the house does it. */
export function wayOf({ customs }: Pick<Plan, 'customs'>, pour: Pour): Way {
    const stated = pour.chilledIn?.name;
    return stated !== undefined && isWay(stated) ? stated : customs['chilled-in'].value;
}

function isWay(name: string): name is Way {
    return Object.hasOwn(TIME_CONSTANTS, name);
}

/** A time with its range, min. */
export interface TimeRange {
    readonly soonest: number;
    readonly usual: number;
    readonly latest: number;
}

/** Of the usual time at least, so far it can be out (temperature 12): never a single figure. */
const [SOONER, LATER] = [0.7, 1.7];

/** How long a bottle takes to come from `start` to `end`; `undefined` where the bath never brings it there. */
export function chillTime(start: number, end: number, { celsius, tau }: Bath): TimeRange | undefined {
    const usual = minutesTo(start, end, celsius, tau.usual);
    if (usual === undefined) {
        return undefined;
    }
    return {
        soonest: Math.min(usual * SOONER, (usual * tau.low) / tau.usual),
        usual,
        latest: Math.max(usual * LATER, (usual * tau.high) / tau.usual),
    };
}

/** J/K of a full 750 ml bottle: the wine and half a kilogram of glass (temperature 12, DS4 bottle). */
export const BOTTLE_HEAT = 3470;
/** J/g that ice takes up as it melts (temperature 5.2). */
const FUSION = 333.6;

/** Ice that melts for one bottle, g; what the bath itself takes up comes on top. @param size ml */
export function iceMelted(start: number, end: number, size: number): number {
    return (BOTTLE_HEAT * (size / 750) * Math.max(0, start - end)) / FUSION;
}
