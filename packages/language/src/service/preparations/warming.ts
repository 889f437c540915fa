/** When plates and bowls go into the warmer, backwards from when they are wanted, as far as it holds them. */
import { longestFirst, schedule } from '../run/engine.js';
import type { Activity } from '../run/network.js';
import type { WarmingLoad } from './types.js';

export interface WarmingInput {
    /** What is warmed for each course. Times in minutes after guests are seated. */
    readonly wanted: readonly {
        readonly course: number;
        readonly piece: string;
        readonly pieces: number;
        readonly to?: number;
        /** The first and the last of them are plated. */
        readonly from: number;
        readonly until: number;
    }[];
    /** Each piece of gear of the house that warms, and what it holds. */
    readonly gear: readonly { readonly name: string; readonly holds: number }[];
    /** min for one load to warm through. */
    readonly minutes: number;
}

/**
 * One load a piece of gear, seen from the end: the last course's plates leave their gear when the last of them is plated, and go in
 * when that and the time to warm them say. A load of an earlier course that finds its gear taken has to be out before.
 */
export function planWarming({ wanted, gear, minutes }: WarmingInput): WarmingLoad[] {
    if (wanted.length === 0) {
        return [];
    }
    const end = Math.max(...wanted.map(({ until }) => until));
    const largest = Math.max(0, ...gear.map(({ holds }) => holds));
    const loads = wanted.flatMap((each) => {
        const count = largest > 0 ? Math.ceil(each.pieces / largest) : 1;
        return Array.from({ length: count }, (_, index) => {
            // As even as can be, the larger ones first.
            const pieces = Math.ceil((each.pieces - index) / count);
            const part = (each.until - each.from) / count;
            return { ...each, pieces, from: each.from + index * part, until: each.from + (index + 1) * part };
        });
    });
    const activities = loads.map(({ from, until }): Activity => ({
        duration: until - from + minutes,
        release: end - until,
        pool: largest > 0 ? 0 : undefined,
    }));
    const network = { activities, pools: [gear.length] };
    const times = schedule(network, longestFirst(network));
    return loads
        .map(({ course, piece, pieces, to, until }, index): WarmingLoad => {
            const unit = gear[times.unit[index]!];
            const same = gear.filter(({ name }) => name === unit?.name);
            return {
                course,
                piece,
                pieces,
                to,
                gear: unit && (same.length > 1 ? `${unit.name} ${same.indexOf(unit) + 1}` : unit.name),
                start: end - times.end[index]!,
                end: end - times.start[index]!,
                wantedUntil: until,
            };
        })
        .toSorted((a, b) => a.start - b.start || a.course - b.course);
}
