/** What the dish room can do in an hour, from the house's `washing`. */
import type { House } from '../../plan/types.js';
import type { WashJob } from './dish-room-schedule.js';
import type { DishRoom, Turnaround } from './types.js';

/** Loading and unloading of one rack, s (quantities 5, the NSF method). */
const HANDLING = 30;
/** Where the house does not say: min for a hot rack to dry (quantities 5), pieces polished in a minute (common practice, no source). */
const USUAL = { drying: 5, polish: 6 } as const;

/** Racks that a machine takes in an hour. @param cycle s, > 0 (quantities 5) */
export function racksPerHour(cycle: number): number {
    return 3600 / (cycle + HANDLING);
}

/**
 * The rate the house states, else the one that follows from its `cycle`; `undefined` where it says neither.
 */
export function dishRoomOf({ washing }: House): DishRoom | undefined {
    const rates = washing.flatMap((line) => (line.sort === 'rate' && line.rate.amount > 0 ? [line] : []));
    const figures = washing.flatMap((line) => (line.sort === 'figure' && line.size.dimension === 'time' ? [line] : []));
    const figure = (name: string): number | undefined => figures.find(({ what }) => what.name === name)?.size.value;
    const machine = rates.find(({ polish, rate }) => !polish && /^racks?$/.test(rate.what))?.rate;
    const cycle = figure('cycle');
    const perHour = machine
        ? (machine.amount * 60) / machine.perMinutes
        : cycle !== undefined && cycle > 0
          ? racksPerHour(cycle * 60)
          : undefined;
    if (perHour === undefined) {
        return undefined;
    }
    const polishing = rates.find(({ polish }) => polish)?.rate;
    const drying = figure('drying');
    return {
        racksPerHour: perHour,
        polishPerMinute: polishing ? polishing.amount / polishing.perMinutes : USUAL.polish,
        drying: drying ?? USUAL.drying,
        assumed: [...(polishing ? [] : ['polish']), ...(drying === undefined ? ['drying'] : [])],
    };
}

/** A wash as work of the dish room: what is wanted must be dry, and warm, by then. None where nobody knows when. */
export function jobOf({ times, work, rest }: Turnaround): WashJob[] {
    return times ? [{ release: times.cleared, due: times.wanted - rest, work }] : [];
}
