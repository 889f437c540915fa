import type { TimeRange, Way } from './baths.js';

/** When one drink has to be put where it gets its temperature. Times in minutes after guests are seated; before that negative. */
export interface Chilling {
    /** Index in `service.pours`, of the pour that a drink is offered in place of; -1 for the table's water. */
    readonly pour: number;
    readonly title: string;
    readonly way: Way;
    /** `counter`: it is wanted warmer than its store, and stands in the room whatever the custom says. */
    readonly wayHow: 'stated' | 'custom' | 'warmer-than-store';
    /** °C: where it is kept, what it is wanted at, and what chills or tempers it. */
    readonly from: number;
    readonly to: number;
    readonly bath: number;
    /** From the store to what is wanted; absent where the bath never brings it there. */
    readonly takes?: TimeRange;
    /** Its first pour, or the guests' sitting down where no run sheet tells. */
    readonly neededBy: number;
    readonly neededHow: 'first-pour' | 'seated';
    /** Started by then it is surely ready; absent as `takes` is. */
    readonly startBy?: number;
    /** Started by then it is ready at the usual pace. */
    readonly startAtUsualPace?: number;
    /** Whole bottles and their size, ml; absent where nobody counts them. */
    readonly bottles?: readonly { readonly size: number; readonly count: number }[];
    /** Ice that melts for all of them in ice water, g. */
    readonly iceMelted?: number;
}
