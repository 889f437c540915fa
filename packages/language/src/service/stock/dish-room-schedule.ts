/** One dish room and what it is to wash between courses, as plain figures. */

/** Pieces that come when their course is cleared and are to be back for another; minutes. */
export interface WashJob {
    readonly release: number;
    readonly due: number;
    /** Washing and polishing, > 0. */
    readonly work: number;
}

/**
 * When each is finished if the dish room always goes on with what is wanted first, changing over between racks (earliest due date,
 * preemptive: it is late with one only where every order is).
 * @returns minutes, in the order of the jobs
 */
export function finishTimes(jobs: readonly WashJob[]): number[] {
    const left = jobs.map((job) => job.work);
    const finished = jobs.map(() => NaN);
    let now = Math.min(...jobs.map((job) => job.release));
    while (finished.some(Number.isNaN)) {
        const open = jobs.flatMap((job, index) => (Number.isNaN(finished[index]) ? [{ ...job, index }] : []));
        const [next] = open.filter((job) => job.release <= now).toSorted((a, b) => a.due - b.due || a.index - b.index);
        const comes = Math.min(...open.filter((job) => job.release > now).map((job) => job.release));
        if (!next) {
            now = comes;
            continue;
        }
        // Asked of the ends, not of what is left: a remainder of rounding would never be worked off.
        const done = now + left[next.index]!;
        if (done <= comes) {
            finished[next.index] = done;
            now = done;
        } else {
            left[next.index]! -= comes - now;
            now = comes;
        }
    }
    return finished;
}

/** A span of time and the jobs that must be done inside it. */
export interface Window {
    readonly minutes: number;
    /** Indices of the jobs. */
    readonly jobs: readonly number[];
}

/**
 * Every span from a release to a due time with the jobs that fall inside: all can be done in time exactly where no span holds more
 * work than minutes.
 */
export function windowsOf(jobs: readonly WashJob[]): Window[] {
    const releases = [...new Set(jobs.map((job) => job.release))];
    const dues = [...new Set(jobs.map((job) => job.due))];
    return releases.flatMap((release) =>
        dues.flatMap((due): Window[] => {
            const inside = jobs.flatMap((job, index) => (job.release >= release && job.due <= due ? [index] : []));
            return inside.length > 0 ? [{ minutes: due - release, jobs: inside }] : [];
        }),
    );
}
