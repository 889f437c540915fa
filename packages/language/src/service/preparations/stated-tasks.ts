/** The plan's own tasks among those that are derived. */
import { show } from '../../plan/quantity.js';
import type { Task } from '../../plan/types.js';
import { expectedTime, varianceOfTime, type ThreePoints } from '../run/three-point.js';
import type { Link, Part, Pool, TaskDraft } from './drafts.js';

/** A task of the plan without its places in the text. Times in min. */
export interface StatedTask {
    /** Index in the plan's tasks. */
    readonly index: number;
    readonly title: string;
    readonly takes?: number;
    readonly between?: { readonly least: number; readonly most: number };
    readonly after: readonly string[];
    readonly by?: { readonly count: number; readonly role: string };
}

export function statedTasks(tasks: readonly Task[], when: Task['when']): StatedTask[] {
    return tasks.flatMap((task, index) =>
        task.when === when
            ? [
                  {
                      index,
                      title: task.title.text,
                      takes: task.takes?.value,
                      between: task.between && { least: task.between.least.value, most: task.between.most.value },
                      after: task.after.map((earlier) => earlier.text),
                      by: task.by && { count: task.by.count.count, role: roleName(task.by.role.name) },
                  },
              ]
            : [],
    );
}

/** `servers` and `server` are the same. */
export function roleName(name: string): string {
    return name.replace(/s$/, '');
}

/**
 * Derived tasks, and those of the plan: one with the title of a derived task is that task. What it says of its time, its people
 * and what it comes after holds; the rest stays as derived.
 * @param pools gains the roles that only tasks name: people from outside the team, as many as one task takes
 */
export function withStated(derived: readonly TaskDraft[], stated: readonly StatedTask[], pools: Pool[]): TaskDraft[] {
    const drafts = [...derived];
    const places = new Map(derived.map(({ title }, index) => [key(title), index]));
    for (const task of stated) {
        const place = places.get(key(task.title));
        const before = place === undefined ? undefined : drafts[place];
        const draft = draftOf(task, before, pools);
        if (place === undefined) {
            places.set(key(task.title), drafts.push(draft) - 1);
        } else {
            drafts[place] = draft;
        }
    }
    return drafts.map((draft) => {
        const task = stated.find(({ index }) => index === draft.stated);
        const links = (task?.after ?? []).flatMap((title): Link[] => {
            const earlier = places.get(key(title));
            return earlier === undefined ? [] : [{ task: earlier, how: 'whole' }];
        });
        return { ...draft, after: [...draft.after, ...links] };
    });
}

/** Titles are compared as people read them. */
const key = (title: string): string => title.trim().toLowerCase();

function draftOf(task: StatedTask, derived: TaskDraft | undefined, pools: Pool[]): TaskDraft {
    const { index, title, takes, between, by } = task;
    const derivedWork = derived?.parts.reduce((sum, part) => sum + part.minutes * part.units, 0) ?? 0;
    if (takes === undefined && !between && derived && !by) {
        return { ...derived, title, stated: index };
    }
    const likely = takes ?? (between ? (between.least + between.most) / 2 : derivedWork / Math.max(1, by?.count ?? 1));
    const points = between && { ...between, likely };
    const minutes = points ? expectedTime(points) : likely;
    const part: Part = {
        minutes,
        pool: by && poolOf(by, pools),
        units: by?.count ?? 1,
        variance: points && varianceOfTime(points),
    };
    const because =
        takes === undefined && !points ? (derived?.because ?? 'no time is stated') : sayTime(minutes, points);
    return { title, stated: index, because, parts: [part], after: derived?.after ?? [] };
}

/** `40 min`, or `42 min expected, 30 min to 60 min`. */
function sayTime(minutes: number, points: ThreePoints | undefined): string {
    return points
        ? `${show(minutes, 'min', 1)} expected, ${show(points.least, 'min', 1)} to ${show(points.most, 'min', 1)}`
        : show(minutes, 'min', 1);
}

function poolOf({ role, count }: NonNullable<StatedTask['by']>, pools: Pool[]): number {
    const place = pools.findIndex((pool) => pool.role === role);
    if (place < 0) {
        return pools.push({ role, count, isOfTheFloor: false, isFromOutside: true }) - 1;
    }
    const pool = pools[place]!;
    if (pool.isFromOutside && pool.count < count) {
        pools[place] = { ...pool, count };
    }
    return place;
}
