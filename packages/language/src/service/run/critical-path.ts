/** How early and how late each activity of a network can be, were there people enough: what may slip, and what holds up the end. */
import { durationOf, inOrder, precedence, type Network } from './network.js';

export interface CriticalPath {
    /** When all is done at the earliest. */
    readonly finish: number;
    /** Of each activity, in the order of the network; not a number for what waits in a circle. */
    readonly earliestStart: Float64Array;
    readonly latestStart: Float64Array;
    /** How long it can slip without moving the end: total float. */
    readonly slack: Float64Array;
    /** Activities without slack, in order of time. */
    readonly critical: readonly number[];
}

/** Less slack than this share of the whole is what binary fractions leave. */
const NOISE = 1e-9;

/** Forward and backward pass (quantities §9, CPM: the duration is the longest path, the float is latest less earliest start). */
export function criticalPath(network: Network): CriticalPath {
    const { activities } = network;
    const { order } = inOrder(network);
    const durations = activities.map(durationOf);
    const earliestStart = new Float64Array(activities.length).fill(NaN);
    for (const index of order) {
        const { after = [], release } = activities[index]!;
        let start = release ?? (after.length > 0 ? -Infinity : 0);
        for (const link of after) {
            const { activity, from, lag } = precedence(link);
            start = Math.max(start, earliestStart[activity]! + (from === 'end' ? durations[activity]! : 0) + lag);
        }
        earliestStart[index] = start;
    }
    const finish = order.reduce((latest, index) => Math.max(latest, earliestStart[index]! + durations[index]!), 0);
    const latestStart = new Float64Array(activities.length).fill(NaN);
    for (const index of order) {
        latestStart[index] = finish - durations[index]!;
    }
    for (const index of order.toReversed()) {
        for (const link of activities[index]!.after ?? []) {
            const { activity, from, lag } = precedence(link);
            const latest = latestStart[index]! - lag - (from === 'end' ? durations[activity]! : 0);
            latestStart[activity] = Math.min(latestStart[activity]!, latest);
        }
    }
    const slack = latestStart.map((latest, index) => tidy(latest - earliestStart[index]!, finish));
    const critical = order
        .filter((index) => slack[index] === 0)
        .toSorted((a, b) => earliestStart[a]! - earliestStart[b]! || a - b);
    return { finish, earliestStart, latestStart, slack, critical };
}

function tidy(slack: number, whole: number): number {
    return Math.abs(slack) <= NOISE * Math.max(1, Math.abs(whole)) ? 0 : slack;
}
