import { floorOf } from './footprint.js';
import type { Standing } from './narrow-places.js';

/** Side of the squares in which the floor is walked, mm. */
const SQUARE = 250;

interface Ground {
    readonly columns: number;
    readonly rows: number;
    /** 1 where a table with its chairs stands. */
    readonly taken: Uint8Array;
}

/**
 * The shortest way from the pass to each table, round the other tables and their chairs, mm, to the edge of the table.
 * Searched over squares of 250 mm with ways straight across what is free (a lazy any-angle search): the way is right to about
 * one square. A table that the chairs of others close in is walked to as the crow flies.
 */
export function walkFromPass(
    room: { readonly width: number; readonly depth: number },
    pass: { readonly x: number; readonly y: number },
    standing: readonly Standing[],
): ReadonlyMap<string, number> {
    const ground = layGround(room, standing);
    const ways = search(ground, squareAt(ground, pass.x, pass.y));
    return new Map(
        standing.map((each) => {
            const { x, y } = each.at;
            const { width, depth } = each.table;
            // From the last free square on it is straight to the edge of the table, between two chairs.
            const toEdge = (px: number, py: number): number =>
                each.table.shape === 'round'
                    ? Math.max(0, Math.hypot(px - x, py - y) - width / 2)
                    : Math.hypot(Math.max(0, Math.abs(px - x) - width / 2), Math.max(0, Math.abs(py - y) - depth / 2));
            const around = squaresAround(ground, each).map((square) => {
                const middle = middleOf(ground, square);
                return ways[square]! + toEdge(middle.x, middle.y);
            });
            const shortest = Math.min(...around);
            return [each.table.name, Number.isFinite(shortest) ? shortest : toEdge(pass.x, pass.y)] as const;
        }),
    );
}

function layGround(room: { readonly width: number; readonly depth: number }, standing: readonly Standing[]): Ground {
    const columns = Math.max(1, Math.ceil(room.width / SQUARE));
    const rows = Math.max(1, Math.ceil(room.depth / SQUARE));
    const ground = { columns, rows, taken: new Uint8Array(columns * rows) };
    for (const { table, at } of standing) {
        const floor = floorOf(table, at);
        const radius = table.shape === 'round' ? table.width / 2 + table.sides.left.taken : undefined;
        forSquares(ground, floor, (square, x, y) => {
            if (radius === undefined || Math.hypot(x - at.x, y - at.y) < radius) {
                ground.taken[square] = 1;
            }
        });
    }
    return ground;
}

/** Visits the squares whose middle lies in a rectangle. */
function forSquares(
    { columns, rows }: Ground,
    area: { readonly left: number; readonly right: number; readonly near: number; readonly far: number },
    visit: (square: number, x: number, y: number) => void,
): void {
    const first = (from: number): number => Math.max(0, Math.ceil(from / SQUARE - 0.5));
    const last = (to: number, count: number): number => Math.min(count - 1, Math.floor(to / SQUARE - 0.5));
    for (let row = first(area.near); row <= last(area.far, rows); row++) {
        for (let column = first(area.left); column <= last(area.right, columns); column++) {
            visit(row * columns + column, (column + 0.5) * SQUARE, (row + 0.5) * SQUARE);
        }
    }
}

/** Free squares that touch the floor of a table. */
function squaresAround(ground: Ground, { table, at }: Standing): number[] {
    const floor = floorOf(table, at);
    const found: number[] = [];
    const wider = {
        left: floor.left - SQUARE,
        right: floor.right + SQUARE,
        near: floor.near - SQUARE,
        far: floor.far + SQUARE,
    };
    forSquares(ground, wider, (square) => {
        if (ground.taken[square] === 0) {
            found.push(square);
        }
    });
    return found;
}

const middleOf = ({ columns }: Ground, square: number): { x: number; y: number } => ({
    x: ((square % columns) + 0.5) * SQUARE,
    y: (Math.floor(square / columns) + 0.5) * SQUARE,
});

function squareAt({ columns, rows }: Ground, x: number, y: number): number {
    const clamp = (value: number, count: number): number =>
        Math.min(count - 1, Math.max(0, Math.floor(value / SQUARE)));
    return clamp(y, rows) * columns + clamp(x, columns);
}

/** To the eight squares around one. */
const STEPS = [-1, 0, 1].flatMap((dy) => [-1, 0, 1].map((dx) => [dx, dy] as const)).filter(([dx, dy]) => dx || dy);

/** The shortest way from the start to every free square, mm; Infinity where none leads. */
function search(ground: Ground, start: number): Float64Array {
    const { columns, rows, taken } = ground;
    const ways = new Float64Array(columns * rows).fill(Infinity);
    /** The square where the way to each last bends. */
    const bends = new Int32Array(columns * rows).fill(-1);
    const isDone = new Uint8Array(columns * rows);
    const open = new Heap();
    const between = (one: number, other: number): number =>
        SQUARE *
        Math.hypot((one % columns) - (other % columns), Math.trunc(one / columns) - Math.trunc(other / columns));
    const around = (square: number, visit: (next: number) => void): void => {
        const [column, row] = [square % columns, Math.trunc(square / columns)];
        for (const [dx, dy] of STEPS) {
            const [x, y] = [column + dx, row + dy];
            const next = y * columns + x;
            if (x >= 0 && y >= 0 && x < columns && y < rows && (taken[next] === 0 || next === start)) {
                visit(next);
            }
        }
    };
    ways[start] = 0;
    bends[start] = start;
    open.push(0, start);
    for (let square = open.pop(); square !== undefined; square = open.pop()) {
        if (isDone[square]) {
            continue;
        }
        const here = square;
        // Its way was taken to be straight from where its neighbour's bends; where something stands in it, it bends at a neighbour.
        if (!isClear(ground, bends[here]!, here)) {
            ways[here] = Infinity;
            around(here, (each) => {
                const length = isDone[each] ? ways[each]! + between(each, here) : Infinity;
                if (length < ways[here]!) {
                    ways[here] = length;
                    bends[here] = each;
                }
            });
        }
        isDone[here] = 1;
        around(here, (next) => {
            if (!isDone[next]) {
                const bend = bends[here]!;
                const length = ways[bend]! + between(bend, next);
                if (length < ways[next]!) {
                    ways[next] = length;
                    bends[next] = bend;
                    open.push(length, next);
                }
            }
        });
    }
    return ways;
}

/** True where the straight line between the middles of two squares crosses nothing that is taken. */
function isClear({ columns, taken }: Ground, one: number, other: number): boolean {
    const [x0, y0] = [one % columns, Math.floor(one / columns)];
    const [dx, dy] = [(other % columns) - x0, Math.floor(other / columns) - y0];
    const steps = Math.max(Math.abs(dx), Math.abs(dy));
    for (let step = 1; step < steps; step++) {
        const square = Math.round(y0 + (dy * step) / steps) * columns + Math.round(x0 + (dx * step) / steps);
        if (taken[square] === 1 && square !== one && square !== other) {
            return false;
        }
    }
    return true;
}

/** The square with the shortest way comes out first; of equals the one that went in first. */
class Heap {
    readonly #items: { readonly way: number; readonly order: number; readonly square: number }[] = [];
    #count = 0;

    push(way: number, square: number): void {
        const items = this.#items;
        items.push({ way, square, order: this.#count++ });
        for (
            let at = items.length - 1, parent = (at - 1) >> 1;
            at > 0 && this.#isBefore(at, parent);
            parent = (at - 1) >> 1
        ) {
            [items[at], items[parent]] = [items[parent]!, items[at]!];
            at = parent;
        }
    }

    pop(): number | undefined {
        const items = this.#items;
        const first = items[0];
        const last = items.pop();
        if (first === undefined || last === undefined) {
            return undefined;
        }
        if (items.length > 0) {
            items[0] = last;
            for (let at = 0; ;) {
                const [left, right] = [2 * at + 1, 2 * at + 2];
                let least = at;
                if (left < items.length && this.#isBefore(left, least)) {
                    least = left;
                }
                if (right < items.length && this.#isBefore(right, least)) {
                    least = right;
                }
                if (least === at) {
                    break;
                }
                [items[at], items[least]] = [items[least]!, items[at]!];
                at = least;
            }
        }
        return first.square;
    }

    #isBefore(one: number, other: number): boolean {
        const [a, b] = [this.#items[one]!, this.#items[other]!];
        return a.way < b.way || (a.way === b.way && a.order < b.order);
    }
}
