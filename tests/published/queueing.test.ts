/**
 * Queues against quantities.md §14.3 and the trap S12, through the scheduler that every plan is run with: guests arrive and
 * are served at random (exponential times of a seeded generator), whoever came first is served first. A published figure
 * must lie within the 99 % confidence limits of batch means, and these may be at most 15 % of it away, or they would tell nothing.
 *
 * Not expressed here:
 * | id  | why                                                                                        |
 * | --- | ------------------------------------------------------------------------------------------ |
 * | K10 | only divides Lq by the rate of arrival; Little's law is proved below for any input          |
 * | K11 | Erlang B turns away who finds nobody free; in a service nobody is, and the scheduler can't   |
 * | Erlang C as a formula | the plan has no closed form of a queue; K7 and K9 measure it instead       |
 */
import fc from 'fast-check';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { schedule, type Schedule } from '../../packages/language/src/service/run/engine.js';

interface Queue {
    /** Arrivals and services of one server in a unit of time. */
    readonly arrivals: number;
    readonly services: number;
    readonly servers?: number;
    readonly seed: number;
}

const BATCHES = 20;
/** Student's t for 19 degrees of freedom, two-sided 99 % (from memory of the table). */
const T_99 = 2.861;
const CUSTOMERS = 240_000;
/** Left out: the queue starts empty, which no published figure means. */
const WARM_UP = 20_000;

interface Estimate {
    readonly mean: number;
    /** Half the width of the confidence interval. */
    readonly within: number;
}

function estimate(values: Float64Array): Estimate {
    const size = Math.floor((values.length - WARM_UP) / BATCHES);
    const means = Array.from({ length: BATCHES }, (_, batch) => {
        const part = values.subarray(WARM_UP + batch * size, WARM_UP + (batch + 1) * size);
        return part.reduce((sum, value) => sum + value, 0) / size;
    });
    const mean = means.reduce((sum, each) => sum + each, 0) / BATCHES;
    const variance = means.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (BATCHES - 1);
    return { mean, within: T_99 * Math.sqrt(variance / BATCHES) };
}

/** What each customer finds and goes through: a customer's mean is the mean over time, as arrivals at random see it. */
function observe({ arrivals, services, servers = 1, seed }: Queue) {
    const random = xoroshiro128plus(seed);
    const exponential = (rate: number): number => -Math.log(1 - uniformFloat64(random)) / rate;
    let now = 0;
    const activities = Array.from({ length: CUSTOMERS }, () => {
        now += exponential(arrivals);
        return { release: now, duration: exponential(services), pool: 0 };
    });
    const times = schedule({ activities, pools: [servers] });
    const found = foundInSystem(times);
    const perCustomer = (of: (customer: number) => number): Estimate =>
        estimate(Float64Array.from({ length: CUSTOMERS }, (_, customer) => of(customer)));
    return {
        W: perCustomer((each) => times.end[each]! - times.ready[each]!),
        Wq: perCustomer((each) => times.start[each]! - times.ready[each]!),
        L: perCustomer((each) => found[each]!),
        Lq: perCustomer((each) => Math.max(0, found[each]! - servers)),
        P0: perCustomer((each) => (found[each] === 0 ? 1 : 0)),
        mustWait: perCustomer((each) => (found[each]! >= servers ? 1 : 0)),
        atLeast: (count: number) => perCustomer((each) => (found[each]! >= count ? 1 : 0)),
    };
}

/** How many are there when each comes. */
function foundInSystem({ ready, end }: Schedule): Float64Array {
    const leaving = end.toSorted();
    let gone = 0;
    return ready.map((arrival, customer) => {
        while (gone < leaving.length && leaving[gone]! <= arrival) {
            gone += 1;
        }
        return customer - gone;
    });
}

function expectAround({ mean, within }: Estimate, published: number): void {
    expect(within, 'the limits must be narrow enough to tell').toBeLessThan(0.15 * published);
    expect(mean).toBeGreaterThan(published - within);
    expect(mean).toBeLessThan(published + within);
}

describe('M/M/1', () => {
    it('K1 (BRON 23.3): 24 and 30 an hour: L 4, W 1/6 h, P0 0.2', () => {
        const { L, W, P0 } = observe({ arrivals: 24, services: 30, seed: 1 });
        expectAround(L, 4);
        expectAround(W, 1 / 6);
        expectAround(P0, 0.2);
    });
    it('K2 (BRON 23.14): 30 an hour, 1.5 min each: Lq 2.25, Wq 4.5 min, P0 0.25', () => {
        const { Lq, Wq, P0 } = observe({ arrivals: 0.5, services: 1 / 1.5, seed: 2 });
        expectAround(Lq, 2.25);
        expectAround(Wq, 4.5);
        expectAround(P0, 0.25);
    });
    it('K3 (BRON 23.16) with S12 (trap): one a minute, 45 s each; P0 is 0.25, and the 0.178 printed as p0 is six or more', () => {
        const { Lq, Wq, W, P0, atLeast } = observe({ arrivals: 1, services: 60 / 45, seed: 3 });
        expectAround(Lq, 2.25);
        expectAround(Wq, 2.25);
        expectAround(W, 3);
        expectAround(P0, 0.25);
        expectAround(atLeast(6), 0.178);
        expect(Math.abs(P0.mean - 0.178)).toBeGreaterThan(10 * P0.within);
    });
    it('K5 (CH5): 15 and 17.5 an hour: L 6, W 24 min, Wq 0.3429 h', () => {
        const { L, W, Wq } = observe({ arrivals: 15, services: 17.5, seed: 5 });
        expectAround(L, 6);
        expectAround(W, 24 / 60);
        expectAround(Wq, 0.3429);
    });
    it('K6: 49 and 55 an hour: busy 0.8909, P0 0.1091, Lq 7.2758, Wq 0.1485 h', () => {
        const { mustWait, P0, Lq, Wq } = observe({ arrivals: 49, services: 55, seed: 6 });
        expectAround(mustWait, 0.8909);
        expectAround(P0, 0.1091);
        expectAround(Lq, 7.2758);
        expectAround(Wq, 0.1485);
    });
    it('K8 (HILL): 2 and 3 an hour: P0 1/3, L 2, Lq 4/3, W 1 h, Wq 2/3 h', () => {
        const { P0, L, Lq, W, Wq } = observe({ arrivals: 2, services: 3, seed: 8 });
        expectAround(P0, 1 / 3);
        expectAround(L, 2);
        expectAround(Lq, 4 / 3);
        expectAround(W, 1);
        expectAround(Wq, 2 / 3);
    });
});

describe('M/M/c', () => {
    it('K4 (BRON 24.6): three servers, 300 a year, 182.5 each: P0 0.1775, Lq 0.352, L 1.996, Wq 0.001175, W 0.006654 years', () => {
        const { P0, Lq, L, Wq, W } = observe({ arrivals: 300, services: 182.5, servers: 3, seed: 4 });
        expectAround(P0, 0.1775);
        expectAround(Lq, 0.352);
        expectAround(L, 1.996);
        expectAround(Wq, 0.001175);
        expectAround(W, 0.006654);
    });
    it('K7 (MM10): ten servers with six kept busy: 0.1013 must wait', () => {
        const { mustWait } = observe({ arrivals: 6, services: 1, servers: 10, seed: 7 });
        expectAround(mustWait, 0.1013);
    });
    it('K9 (HILL): two servers, 2 and 3 an hour: P0 1/2, C 1/6, L 3/4, Lq 1/12, W 3/8 h, Wq 1/24 h', () => {
        const { P0, mustWait, L, Lq, W, Wq } = observe({ arrivals: 2, services: 3, servers: 2, seed: 9 });
        expectAround(P0, 1 / 2);
        expectAround(mustWait, 1 / 6);
        expectAround(L, 3 / 4);
        expectAround(Lq, 1 / 12);
        expectAround(W, 3 / 8);
        expectAround(Wq, 1 / 24);
    });
});

describe("Little's law (quantities 9)", () => {
    it('the mean number there is the rate of arrival times the mean stay, whatever comes in whatever order', () => {
        const customer = fc.record({
            release: fc.double({ min: 0, max: 50, noNaN: true }),
            duration: fc.double({ min: 0, max: 10, noNaN: true }),
            pool: fc.nat(1),
        });
        fc.assert(
            fc.property(
                fc.array(customer, { minLength: 1, maxLength: 60 }),
                fc.integer({ min: 1, max: 4 }),
                fc.array(fc.nat(5), { minLength: 60, maxLength: 60 }),
                (activities, servers, order) => {
                    const { ready, end } = schedule({ activities, pools: [servers, 1] }, order);
                    const stays = end.reduce((sum, leaves, each) => sum + leaves - ready[each]!, 0);
                    expect(personTime(ready, end)).toBeCloseTo(stays, 6);
                },
            ),
        );
    });
});

/** The number there, added up over time from one coming or going to the next. */
function personTime(ready: Float64Array, end: Float64Array): number {
    const changes = [
        ...Array.from(ready, (time) => ({ time, by: 1 })),
        ...Array.from(end, (time) => ({ time, by: -1 })),
    ].toSorted((a, b) => a.time - b.time);
    let there = 0;
    let sum = 0;
    changes.forEach(({ time, by }, index) => {
        there += by;
        sum += there * ((changes[index + 1]?.time ?? time) - time);
    });
    return sum;
}
