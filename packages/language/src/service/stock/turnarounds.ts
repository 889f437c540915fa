/** Pieces of one course washed in time for a later one: how many, and whether they are back. */
import type { PieceFamily } from '../../plan/cupboard.js';
import { findCourse } from '../../plan/names.js';
import type { Plan, Wash } from '../../plan/types.js';
import type { Run } from '../run/types.js';
import type { Variation } from '../types.js';
import { racksOf } from './racks.js';
import type { DishRoom, PieceCount, PieceUse, Turnaround } from './types.js';

/** A wash before the run sheet and the dish room are asked. */
export type WashCount = Pick<Turnaround, 'piece' | 'after' | 'for' | 'count' | 'saves' | 'stated'>;

/** What is left of each course's pieces as washes take them. */
export class WashableStock {
    private readonly cleared: Map<string, number>;
    private readonly wanted = new Map<string, { count: number; overset: number }>();

    constructor(counts: readonly PieceCount[], variations: readonly Variation[]) {
        this.cleared = clearedWith(variations);
        for (const { piece, by } of counts) {
            for (const use of by.filter(isWashable)) {
                const key = keyOf(piece, use.course);
                const known = this.wanted.get(key) ?? { count: 0, overset: 0 };
                this.wanted.set(key, { count: known.count + use.count, overset: known.overset + use.overset });
            }
        }
    }

    /** Pieces of `after` that `for` wants; none where the one does not come before the other. */
    between(piece: string, after: number, wantedFor: number): { readonly count: number; readonly saves: number } {
        const wanted = this.wanted.get(keyOf(piece, wantedFor));
        const count = after < wantedFor ? Math.min(this.cleared.get(keyOf(piece, after)) ?? 0, wanted?.count ?? 0) : 0;
        return { count, saves: count > 0 ? count + wanted!.overset : 0 };
    }

    take(piece: string, after: number, wantedFor: number): { readonly count: number; readonly saves: number } {
        const taken = this.between(piece, after, wantedFor);
        if (taken.count > 0) {
            const wanted = this.wanted.get(keyOf(piece, wantedFor))!;
            this.cleared.set(keyOf(piece, after), this.cleared.get(keyOf(piece, after))! - taken.count);
            this.wanted.set(keyOf(piece, wantedFor), { count: wanted.count - taken.count, overset: 0 });
        }
        return taken;
    }

    /** Every two courses between which pieces could be washed, in the menu's order. */
    pairsOf(piece: string, courses: number): WashCount[] {
        const pairs: WashCount[] = [];
        for (let after = 0; after < courses; after++) {
            for (let later = after + 1; later < courses; later++) {
                const { count, saves } = this.between(piece, after, later);
                if (count > 0) {
                    pairs.push({ piece, after, for: later, count, saves });
                }
            }
        }
        return pairs;
    }
}

const keyOf = (piece: string, course: number): string => `${course} ${piece}`;

/** What the text lays cannot come later, and what is wanted warm or chilled is not so when it comes out of the machine. */
function isWashable(use: PieceUse): boolean {
    return use.course >= 0 && !use.isFixed && use.state === undefined;
}

/** How many of each piece leave the tables when a course is cleared, by piece and course. */
function clearedWith(variations: readonly Variation[]): Map<string, number> {
    const cleared = new Map<string, number>();
    for (const { steps, count } of variations) {
        for (const step of steps.filter(({ sort }) => sort === 'clear')) {
            for (const { piece } of step.cleared) {
                const key = keyOf(piece, step.course);
                cleared.set(key, (cleared.get(key) ?? 0) + count);
            }
        }
    }
    return cleared;
}

/** The washes that the plan states, in its order, each with what is left for it. */
export function statedWashes(plan: Plan, stock: WashableStock): WashCount[] {
    return (plan.menu?.washes ?? []).flatMap((wash): WashCount[] => {
        const [after, later] = coursesOf(plan, wash);
        if (after === undefined || later === undefined) {
            return [];
        }
        const piece = wash.piece.name;
        return [{ piece, after, for: later, ...stock.take(piece, after, later), stated: wash }];
    });
}

/** The two courses of a wash by index. */
export function coursesOf({ menu }: Plan, wash: Wash): readonly [number | undefined, number | undefined] {
    return [findCourse(menu, wash.after.name)?.index, findCourse(menu, wash.for.name)?.index];
}

/** True for what is polished by hand before it is laid again. Common practice, no source. */
export function isPolished(family: PieceFamily | undefined): boolean {
    return family === 'fork' || family === 'knife' || family === 'spoon' || family === 'glass';
}

/**
 * When the pieces are back: all of them are cleared from the last table, then washed rack after rack, dried and polished.
 * An upper limit: the first racks are under way before that.
 * @param room absent where the house says nothing of its dish room: then it is not known how long it takes
 */
export function turnaroundOf(
    plan: Plan,
    wash: WashCount,
    room: DishRoom | undefined,
    run: Run | undefined,
): Turnaround {
    const racks = racksOf(plan, wash.piece, wash.count)?.racks ?? 0;
    const isToPolish = isPolished(plan.cupboard.pieces.get(wash.piece)?.family);
    const polishing = room && isToPolish ? wash.count / room.polishPerMinute : 0;
    const work = room ? (racks * 60) / room.racksPerHour + polishing : 0;
    const cleared = run?.courses.find(({ course }) => course === wash.after)?.cleared.last;
    const wanted = run && wantedAt(run, wash, isToPolish);
    const isTimed = room && racks > 0 && cleared !== undefined && wanted !== undefined;
    return {
        ...wash,
        racks,
        work,
        ...(isTimed ? { times: { cleared, back: cleared + work + room.drying, wanted } } : {}),
    };
}

/**
 * When the first of the pieces is wanted: plates and bowls for the plating; the rest when it is laid for the course, which at the
 * earliest is when the first table has been cleared of the one before.
 */
function wantedAt(run: Run, wash: WashCount, isLaidAtTable: boolean): number | undefined {
    const course = run.courses.find((each) => each.course === wash.for);
    if (!course) {
        return undefined;
    }
    if (!isLaidAtTable) {
        return Math.min(course.fired, course.plated.first);
    }
    const laying = run.tasks.filter(
        (task) => task.course === wash.for && (task.sort === 'relay' || task.sort === 'pour'),
    );
    const before = run.courses.find((each) => each.course === wash.for - 1)?.cleared.first;
    const earliest = laying.length > 0 ? laying.map((task) => task.start) : [before ?? course.served.first];
    return Math.min(course.served.first, ...earliest);
}

export function isBackInTime({ times }: Turnaround): boolean | undefined {
    return times && times.back <= times.wanted;
}
