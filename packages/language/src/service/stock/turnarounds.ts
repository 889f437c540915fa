/** Pieces of one course washed in time for a later one: how many, and whether they are back. */
import type { PieceFamily } from '../../plan/cupboard.js';
import { findCourse } from '../../plan/names.js';
import type { Plan, Wash } from '../../plan/types.js';
import type { Run } from '../run/types.js';
import type { Variation } from '../types.js';
import { racksOf } from './racks.js';
import type { DishRoom, PieceCount, Turnaround } from './types.js';

/** A wash before the run sheet and the dish room are asked. */
export type WashCount = Pick<Turnaround, 'piece' | 'after' | 'for' | 'count' | 'saves' | 'stated'> & {
    /** Plates and bowls that the later course wants warmed. */
    readonly isWarmed: boolean;
};

/** What a course wants of a piece that could come from the wash. */
interface Wanted {
    readonly count: number;
    readonly overset: number;
    readonly isWarmed: boolean;
    /** Nobody knows how long it takes to chill it, or to warm a spoon: only the plan itself may say that it is washed for. */
    readonly isOffered: boolean;
}

/** What is left of each course's pieces as washes take them. */
export class WashableStock {
    private readonly cleared: Map<string, number>;
    private readonly wanted = new Map<string, Wanted>();

    constructor(counts: readonly PieceCount[], variations: readonly Variation[]) {
        this.cleared = clearedWith(variations);
        for (const { piece, by } of counts) {
            // What the text lays before guests sit cannot come later.
            for (const use of by.filter(({ course, isFixed }) => course >= 0 && !isFixed)) {
                const key = keyOf(piece, use.course);
                const known = this.wanted.get(key);
                const isVessel = use.purpose === 'serving' || use.purpose === 'underliner';
                const isWarmed = use.state === 'warmed' && isVessel;
                this.wanted.set(key, {
                    count: use.count + (known?.count ?? 0),
                    overset: use.overset + (known?.overset ?? 0),
                    isWarmed: isWarmed || known?.isWarmed === true,
                    isOffered: (use.state === undefined || isWarmed) && known?.isOffered !== false,
                });
            }
        }
    }

    /** Pieces of `after` that `for` wants; none where the one does not come before the other. */
    private between(piece: string, after: number, later: number): WashCount & Pick<Wanted, 'isOffered'> {
        const wanted = this.wanted.get(keyOf(piece, later));
        const count = after < later ? Math.min(this.cleared.get(keyOf(piece, after)) ?? 0, wanted?.count ?? 0) : 0;
        return {
            piece,
            after,
            for: later,
            count,
            saves: wanted && count > 0 ? count + wanted.overset : 0,
            isWarmed: wanted?.isWarmed === true,
            isOffered: wanted?.isOffered === true,
        };
    }

    /** A wash that is done: its pieces are there for no other. */
    take(piece: string, after: number, later: number): WashCount {
        const taken = this.between(piece, after, later);
        const wanted = this.wanted.get(keyOf(piece, later));
        if (wanted && taken.count > 0) {
            this.cleared.set(keyOf(piece, after), this.cleared.get(keyOf(piece, after))! - taken.count);
            this.wanted.set(keyOf(piece, later), { ...wanted, count: wanted.count - taken.count, overset: 0 });
        }
        return taken;
    }

    /** Every two courses between which pieces could be washed, in the menu's order. */
    pairsOf(piece: string, courses: number): WashCount[] {
        const indices = Array.from({ length: courses }, (_, index) => index);
        return indices
            .flatMap((after) => indices.slice(after + 1).map((later) => this.between(piece, after, later)))
            .filter(({ count, isOffered }) => count > 0 && isOffered);
    }
}

const keyOf = (piece: string, course: number): string => `${course} ${piece}`;

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
        return [{ ...stock.take(wash.piece.name, after, later), stated: wash }];
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
 * When the pieces are back: all of them are cleared from the last table, then washed rack after rack, polished and dry, and
 * warmed again where their course wants them warm. An upper limit: the first racks are under way before that.
 * @param room absent where the house says nothing of its dish room: then it is not known how long it takes
 */
export function turnaroundOf(
    plan: Plan,
    { isWarmed, ...wash }: WashCount,
    room: DishRoom | undefined,
    run: Run | undefined,
): Turnaround {
    const racks = racksOf(plan, wash.piece, wash.count)?.racks ?? 0;
    const isToPolish = isPolished(plan.cupboard.pieces.get(wash.piece)?.family);
    const polishing = room && isToPolish ? wash.count / room.polishPerMinute : 0;
    const work = room ? (racks * 60) / room.racksPerHour + polishing : 0;
    const rest = (room?.drying ?? 0) + (isWarmed ? plan.customs['plate-warming'].value : 0);
    const cleared = run?.courses.find(({ course }) => course === wash.after)?.cleared.last;
    const wanted = run && wantedAt(run, wash, isToPolish);
    const isTimed = room && racks > 0 && cleared !== undefined && wanted !== undefined;
    const { piece, after, for: later, count, saves, stated } = wash;
    return {
        ...{ piece, after, for: later, count, saves, stated, racks, work, rest },
        ...(isTimed ? { times: { cleared, back: cleared + work + rest, wanted } } : {}),
    };
}

/**
 * When the first of the pieces is wanted: plates and bowls for the plating; the rest when it is laid for the course, which at the
 * earliest is when the first table has been cleared of the one before.
 */
function wantedAt(run: Run, wash: Pick<WashCount, 'for'>, isLaidAtTable: boolean): number | undefined {
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
