/** What the rules about clocks that are put forward or back share. */
import type { Plan } from '../plan/types.js';
import { eveningClock, type InChange } from '../service/clock/evening.js';
import { clockFace } from '../service/clock/local-time.js';
import { statedTimes, type StatedTime } from '../service/clock/stated.js';
import type { Fix } from './fixes.js';
import { quoted } from './wording.js';

/** Stated times that fall into a change of the clocks of a sort. */
export function timesInChange<Sort extends InChange['times']>(
    plan: Plan,
    sort: Sort,
): { readonly stated: StatedTime; readonly change: Extract<InChange, { readonly times: Sort }> }[] {
    const clock = eveningClock(plan);
    return statedTimes(plan).flatMap((stated) => {
        const change = clock?.inChange(stated.time, stated.meaning);
        return change?.times === sort
            ? [{ stated, change: change as Extract<InChange, { readonly times: Sort }> }]
            : [];
    });
}

/** Writes another time. @param wall minutes since any midnight */
export function writeTime({ time }: StatedTime, wall: number, preferred = false): Fix {
    const words = clockFace(wall);
    return {
        title: `Write ${quoted(words)}`,
        safety: 'unsafe',
        preferred,
        changes: [{ do: 'replace', at: time.origin, words }],
    };
}
