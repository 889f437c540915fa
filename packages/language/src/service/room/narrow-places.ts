import { floorOf, type Footprint, type Rectangle, type Side } from './footprint.js';
import type { NarrowPlace } from './types.js';

export interface Standing {
    readonly table: Footprint;
    readonly at: { readonly x: number; readonly y: number };
    /** The text gives its place. */
    readonly isStated: boolean;
}

/** Smaller shortages are the noise of the figures, mm. */
const NOISE = 0.5;

/**
 * Where a table that the text places has less room than the house keeps: toward other tables, walls and the pass.
 * Tables with their chairs are circles or rectangles; an oval counts as the rectangle around it.
 */
export function narrowPlaces(
    standing: readonly Standing[],
    room: { readonly width: number; readonly depth: number },
    passSquare: Rectangle,
): NarrowPlace[] {
    const found: NarrowPlace[] = [];
    standing.forEach((one, index) => {
        for (const other of standing.slice(index + 1)) {
            if (!one.isStated && !other.isStated) {
                continue;
            }
            const left = apart(one, other);
            const wanted = laneBetween(one, other);
            if (left < wanted - NOISE) {
                found.push({ table: one.table.name, other: { table: other.table.name }, left, wanted });
            }
        }
        if (one.isStated) {
            found.push(...narrowAtWalls(one, room), ...narrowAtPass(one, passSquare));
        }
    });
    return found.toSorted((a, b) => a.left - a.wanted - (b.left - b.wanted));
}

function narrowAtWalls(
    { table, at }: Standing,
    room: { readonly width: number; readonly depth: number },
): NarrowPlace[] {
    const floor = floorOf(table, at);
    const left: Record<Side, number> = {
        left: floor.left,
        right: room.width - floor.right,
        near: floor.near,
        far: room.depth - floor.far,
    };
    return (['left', 'right', 'near', 'far'] as const).flatMap((side) => {
        const wanted = table.sides[side].wall;
        return left[side] < wanted - NOISE
            ? [{ table: table.name, other: { fixture: `${side} wall` as const }, left: left[side], wanted }]
            : [];
    });
}

function narrowAtPass({ table, at }: Standing, square: Rectangle): NarrowPlace[] {
    const floor = floorOf(table, at);
    const across = Math.min(floor.right, square.right) - Math.max(floor.left, square.left);
    const along = Math.min(floor.far, square.far) - Math.max(floor.near, square.near);
    const wanted = square.right - square.left;
    const into = Math.min(across, along);
    return into > NOISE ? [{ table: table.name, other: { fixture: 'pass' }, left: wanted - into, wanted }] : [];
}

/** The way that both ask for where they face each other. */
function laneBetween(one: Standing, other: Standing): number {
    const [dx, dy] = [other.at.x - one.at.x, other.at.y - one.at.y];
    const isBeside =
        Math.abs(dx) - (one.table.width + other.table.width) / 2 >
        Math.abs(dy) - (one.table.depth + other.table.depth) / 2;
    const [mine, theirs]: [Side, Side] = isBeside
        ? dx > 0
            ? ['right', 'left']
            : ['left', 'right']
        : dy > 0
          ? ['far', 'near']
          : ['near', 'far'];
    return Math.max(one.table.sides[mine].lane, other.table.sides[theirs].lane);
}

/** What is left between two tables with their chairs, mm; negative where they meet. */
function apart(one: Standing, other: Standing): number {
    const [a, b] = [roundOf(one), roundOf(other)];
    if (a && b) {
        return Math.hypot(a.x - b.x, a.y - b.y) - a.radius - b.radius;
    }
    const [round, flat] = a ? [a, other] : b ? [b, one] : [undefined, other];
    const floor = floorOf(flat.table, flat.at);
    if (round) {
        return outside(floor, { left: round.x, right: round.x, near: round.y, far: round.y }) - round.radius;
    }
    return outside(floor, floorOf(one.table, one.at));
}

/** A round table with its chairs; absent for any other. */
function roundOf({ table, at }: Standing): { x: number; y: number; radius: number } | undefined {
    const taken = Math.max(...Object.values(table.sides).map((side) => side.taken));
    return table.shape === 'round' ? { ...at, radius: table.width / 2 + taken } : undefined;
}

function outside(one: Rectangle, other: Rectangle): number {
    const dx = Math.max(one.left - other.right, other.left - one.right);
    const dy = Math.max(one.near - other.far, other.near - one.far);
    return dx > 0 && dy > 0 ? Math.hypot(dx, dy) : Math.max(dx, dy);
}
