/** Setting up, backwards from the hour at which the room must stand. */
import { chanceOf, timeToSpare } from './chance.js';
import type { Pool, TaskDraft } from './drafts.js';
import { circleOf, tooManyOf } from './never-begun.js';
import { callsOf, rosterOf, tasksOf, timedParts, type TimedPart } from './times-of-tasks.js';
import {
    backwards,
    longestChain,
    only,
    scheduleWork,
    taskNetwork,
    type Chain,
    type TaskNetwork,
} from './task-network.js';
import type { SetUp, Timed } from './types.js';

export interface SetUpInput {
    readonly drafts: readonly TaskDraft[];
    readonly pools: readonly Pool[];
    /** When the room must stand. */
    readonly doors: number;
    /** min; 0 for none. */
    readonly lineUp: number;
    readonly briefing: number;
    /** The crew's meal; where it begins, if that is stated. */
    readonly meal?: { readonly minutes: number; readonly at?: number };
    /** min that people need from coming in to beginning. */
    readonly callAhead: number;
    /** min before the doors. */
    readonly getIn?: number;
    /** 0–1, with which it is to be ready. */
    readonly readyChance: number;
}

/**
 * Everything is done as late as the people there are allow: the work is scheduled from its end. A meal whose hour is stated is
 * kept free: what does not fit between it and the briefing is done before it.
 */
export function planSetUp(input: SetUpInput): SetUp {
    const { drafts, pools, doors, getIn } = input;
    const hasPeople = pools.some((pool) => pool.isOfTheFloor && pool.count > 0);
    const lineUp = hasPeople ? endingAt(doors, input.lineUp) : undefined;
    const briefing = hasPeople ? endingAt(lineUp?.start ?? doors, input.briefing) : undefined;
    const ready = briefing?.start ?? lineUp?.start ?? doors;
    const staffMeal = mealOf(input, ready);
    const isFittedIn = staffMeal !== undefined && input.meal?.at === undefined;
    // A meal without an hour comes right before the briefing; one that collides with it is a finding, and holds nothing up.
    const over = isFittedIn ? staffMeal.start : ready;
    const pause = !isFittedIn && staffMeal && staffMeal.end <= over ? staffMeal : undefined;
    const { parts, chain, isSplit } = layOut(backwards(taskNetwork(drafts, pools)), over, input.readyChance, pause);
    const tasks = tasksOf(drafts, pools, parts);
    const begins = tasks.length > 0 ? Math.min(...tasks.map((task) => task.start)) : undefined;
    const people = [
        ...parts,
        ...everybody(pools, staffMeal),
        ...everybody(pools, briefing),
        ...everybody(pools, lineUp),
    ];
    const letIn = getIn === undefined ? undefined : doors - getIn;
    const available =
        begins === undefined ? undefined : (isSplit ? pause!.start : over) - Math.max(begins, letIn ?? begins);
    return {
        tasks,
        staffMeal,
        briefing,
        lineUp,
        over,
        begins,
        calls: callsOf(pools, people).map((call) => ahead(call, input.callAhead)),
        roster: rosterOf(drafts, pools, parts),
        chance: chanceOf(chain, available),
        getIn,
        circle: circleOf(drafts),
        tooMany: tooManyOf(drafts, pools),
    };
}

/**
 * Gives every part its time.
 * @param network seen from its end
 * @param over when all of it is to be done
 * @returns with it the longest chain of what is done first
 */
function layOut(
    network: TaskNetwork,
    over: number,
    readyChance: number,
    pause: Timed | undefined,
): { readonly parts: readonly TimedPart[]; readonly chain: Chain; readonly isSplit: boolean } {
    const whole = scheduleWork(network);
    const chain = longestChain(whole);
    // Where tasks may take longer than expected, everything is begun so much earlier.
    const end = over - timeToSpare(readyChance, chain.variance);
    const window = pause ? end - pause.end : Infinity;
    const all = network.activities.map((_, index) => index);
    const early = all.filter((index) => !(whole.times.end[index]! <= window));
    if (!pause || early.length === 0) {
        return { parts: timedParts(whole, end, true), chain, isSplit: false };
    }
    const late = all.filter((index) => whole.times.end[index]! <= window);
    const resumed = Math.max(0, end - pause.start);
    const before = scheduleWork(only(network, early, resumed));
    const first = longestChain(before, resumed);
    return {
        parts: [
            ...timedParts(scheduleWork(only(network, late), window), end, true),
            ...timedParts(before, end - timeToSpare(readyChance, first.variance), true),
        ],
        chain: first,
        isSplit: true,
    };
}

function endingAt(end: number, minutes: number): Timed | undefined {
    return minutes > 0 ? { start: end - minutes, end } : undefined;
}

function mealOf({ meal }: SetUpInput, ready: number): Timed | undefined {
    if (!meal || meal.minutes <= 0) {
        return undefined;
    }
    const start = meal.at ?? ready - meal.minutes;
    return { start, end: start + meal.minutes };
}

/** Everybody who serves at the same thing. */
function everybody(pools: readonly Pool[], timed: Timed | undefined): TimedPart[] {
    return timed
        ? pools.flatMap(({ count, isOfTheFloor }, pool) =>
              isOfTheFloor
                  ? [{ task: -1, ...timed, slack: 0, pool, units: Array.from({ length: count }, (_, unit) => unit) }]
                  : [],
          )
        : [];
}

function ahead<T extends { readonly at: number; readonly each: readonly number[] }>(call: T, minutes: number): T {
    return { ...call, at: call.at - minutes, each: call.each.map((at) => at - minutes) };
}
