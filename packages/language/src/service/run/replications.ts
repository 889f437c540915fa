/** The evening run again and again with other eating and walking times: how sure it is that a course starts in its window. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { remember } from '../remember.js';
import { courseTimes, overAt } from './course-times.js';
import type { Draws } from './draws.js';
import type { Evening } from './evening.js';
import { simulate } from './simulate.js';
import type { Replications, Span } from './types.js';

export interface ReplicationsAsked {
    readonly evening: Evening;
    readonly count: number;
    readonly seed: number;
    /** How early or late a course may start, min. */
    readonly window: number;
}

/** More than these tell no more than the third digit of a chance. */
export const MOST_REPLICATIONS = 1000;

/** Of the times drawn, so many lie below and above what is told as the range. */
const TAIL = 0.05;

/**
 * Times are drawn from the triangle between the least and the most that the plan and the house allow, the planned time the
 * likeliest. The same seed draws the same times. Yields after each evening what share of them has been run, so that whoever
 * asks can do other things in between, or stop.
 */
export function* replicating({
    evening,
    count: asked,
    seed,
    window,
}: ReplicationsAsked): Generator<number, Replications, void> {
    const draw = triangular(seed);
    const draws: Draws = { eating: draw, trip: draw };
    const count = Math.max(0, Math.min(asked, MOST_REPLICATIONS));
    const menu = evening.courses.length;
    const planned = courseTimes(simulate(evening));
    const starts = planned.map((): number[] => []);
    const over: number[] = [];
    for (let replication = 0; replication < count; replication++) {
        const courses = courseTimes(simulate(evening, draws));
        planned.forEach(({ course }, index) => {
            const start = courses.find((each) => each.course === course)?.served.first;
            if (start !== undefined) {
                starts[index]!.push(start);
            }
        });
        over.push(overAt(courses, menu));
        yield (replication + 1) / count;
    }
    const result: Replications = {
        asked,
        count,
        seed,
        window,
        courses: planned.map(({ course, served }, index) => {
            const due = evening.courses[course]?.startsAt ?? served.first;
            const times = starts[index]!;
            const inTime = times.filter((start) => Math.abs(start - due) <= window).length;
            return { course, due, chance: times.length > 0 ? inTime / times.length : 0, starts: rangeOf(times) };
        }),
        over: rangeOf(over),
    };
    workedOut.set(evening, result);
    return result;
}

/** What was worked out evening by evening, so that it is not asked for again in one go. */
const workedOut = new WeakMap<Evening, Replications>();

const inOneGo = remember((asked: ReplicationsAsked): Replications => {
    const steps = replicating(asked);
    let step = steps.next();
    while (!step.done) {
        step = steps.next();
    }
    return step.value;
});

export const replicate = (asked: ReplicationsAsked): Replications => {
    const known = workedOut.get(asked.evening);
    const isSame = known?.asked === asked.count && known.seed === asked.seed && known.window === asked.window;
    return isSame ? known : inOneGo(asked);
};

/** Draws from -1 to 1, 0 the likeliest: the sum of two even draws. */
function triangular(seed: number): () => number {
    const random = xoroshiro128plus(seed);
    return () => uniformFloat64(random) + uniformFloat64(random) - 1;
}

function rangeOf(times: readonly number[]): Span {
    const sorted = times.toSorted((a, b) => a - b);
    const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? 0;
    return { first: at(TAIL), last: at(1 - TAIL) };
}
