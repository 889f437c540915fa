/** Striking, from the hour at which the last guest has gone. */
import { chanceOf } from './chance.js';
import type { Pool, TaskDraft } from './drafts.js';
import { longestChain, scheduleWork, taskNetwork } from './task-network.js';
import { circleOf, tooManyOf } from './never-begun.js';
import { leavesOf, rosterOf, tasksOf, timedParts } from './times-of-tasks.js';
import type { Strike } from './types.js';

export interface StrikeInput {
    readonly drafts: readonly TaskDraft[];
    readonly pools: readonly Pool[];
    readonly guestsGone: number;
    readonly isGoneStated: boolean;
    /** By when the room must be clear. */
    readonly by?: number;
}

/** Everything is done as soon as the people there are allow. */
export function planStrike({ drafts, pools, guestsGone, isGoneStated, by }: StrikeInput): Strike {
    const released = drafts.map((draft) => ({
        ...draft,
        parts: draft.parts.map((part) => ({ ...part, release: part.release ?? guestsGone })),
    }));
    const scheduled = scheduleWork(taskNetwork(released, pools));
    const parts = timedParts(scheduled, 0);
    const tasks = tasksOf(released, pools, parts);
    return {
        tasks,
        guestsGone,
        isGoneStated,
        over: tasks.reduce((latest, task) => Math.max(latest, task.end), guestsGone),
        by,
        leaves: leavesOf(pools, parts),
        roster: rosterOf(drafts, pools, parts),
        circle: circleOf(drafts),
        tooMany: tooManyOf(drafts, pools),
        chance: chanceOf(longestChain(scheduled, guestsGone), by === undefined ? undefined : by - guestsGone),
    };
}
