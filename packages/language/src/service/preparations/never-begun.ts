/** Tasks that no schedule can begin. */
import { inOrder } from '../run/network.js';
import type { Pool, TaskDraft } from './drafts.js';
import type { Circle, TooMany } from './types.js';

/** Tasks that wait for each other; one circle, where there are several. */
export function circleOf(drafts: readonly TaskDraft[]): Circle | undefined {
    const activities = drafts.map(({ after }) => ({ duration: 0, after: after.map(({ task }) => task) }));
    const { circle } = inOrder({ activities, pools: [] });
    return circle?.map((index) => ({ title: drafts[index]!.title, stated: drafts[index]!.stated }));
}

export function tooManyOf(drafts: readonly TaskDraft[], pools: readonly Pool[]): TooMany[] {
    return drafts.flatMap(({ stated, parts }) => {
        const part = parts.find(({ pool, units }) => pool !== undefined && units > pools[pool]!.count);
        if (stated === undefined || part?.pool === undefined) {
            return [];
        }
        const { role, count } = pools[part.pool]!;
        return [{ stated, role, takes: part.units, there: count }];
    });
}
