/** What the drawn evening consists of before it has a place on the page. Times are minutes after guests are seated. */
import type { Origin } from '../../../plan/origin.js';

/** How a bar is filled, which tells the sort of work without colour. */
export type Fill = 'bring' | 'clear' | 'pour' | 'lay' | 'eat' | 'talk' | 'course' | 'call' | 'task' | 'critical';

export interface Bar {
    readonly start: number;
    readonly end: number;
    readonly look: Fill;
    /** The whole of it in words, for who points at it or can't see it. */
    readonly says: string;
    /** Index in the menu; -1 before the first, the number of courses for coffee. */
    readonly course: number;
    /** The words of the plan that it comes from. */
    readonly origin?: Origin;
}

/** Words under the bars of a lane, from the start of the first bar they speak of. */
export interface Caption {
    readonly start: number;
    /** Cut where there is no room for them. */
    readonly words: string;
    /** What stands behind them, however much of them is cut. */
    readonly times?: string;
}

export interface Lane {
    /** `server 3`, `T4`. */
    readonly name: string;
    /** A line under the name. */
    readonly note?: string;
    readonly origin?: Origin;
    readonly bars: readonly Bar[];
    /** By start. */
    readonly captions: readonly Caption[];
}

export interface LaneGroup {
    readonly title: string;
    /** What is said of the bottleneck, on the lanes of those who are it. */
    readonly bottleneck?: string;
    /** The lanes have no names at the left: what stands under their bars names them. */
    readonly isNamedBelow?: boolean;
    readonly lanes: readonly Lane[];
}
