import type { SimulatedEvening } from './simulate.js';
import type { Run, SpeechRun } from './types.js';

/** When the toasts and speeches of a simulated evening are held. */
export function speechTimes({ evening, service, times }: SimulatedEvening): SpeechRun[] {
    return evening.speeches.map(({ speech, at }, index) => {
        const { activity, glasses } = service.speeches[index]!;
        return {
            speech,
            at,
            start: times.start[activity]!,
            end: times.end[activity]!,
            poured: glasses.length > 0 ? Math.max(...glasses.map((each) => times.end[each]!)) : undefined,
        };
    });
}

/** Plates on the move, min after guests are seated. */
export interface Work {
    readonly course: number;
    readonly work: 'serving' | 'clearing';
    readonly from: number;
    readonly to: number;
}

/** What is served or cleared between two times, the earliest first. */
export function whatGoesOn(run: Run, from: number, to: number): Work[] {
    const all = run.courses.flatMap(({ course, dishes, leftPass, served, finished, cleared }): Work[] => [
        { course, work: 'serving', from: leftPass.first, to: served.last },
        // Cups stay: nobody is in anybody's way when guests leave.
        ...(dishes.length > 0 ? [{ course, work: 'clearing', from: finished.first, to: cleared.last } as const] : []),
    ]);
    return all.filter((work) => work.from < to && from < work.to).toSorted((a, b) => a.from - b.from);
}

/** The whole minute nearest to `at`, and not before `from`, from which on nothing is served or cleared for so long; the earlier of two. */
export function freeTimeFor(run: Run, at: number, minutes: number, from = 0): number {
    const start = Math.max(Math.round(at), Math.ceil(from));
    for (let apart = 0; ; apart++) {
        for (const time of [start - apart, start + apart]) {
            if (time >= from && whatGoesOn(run, time, time + minutes).length === 0) {
                return time;
            }
        }
    }
}
