import { keepCompiled } from '../../keep-compiled.js';
import { Heap } from '../heap.js';
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

/** The shortest way from the start to every free square, mm; Infinity where none leads. Plain loops: a hall has thousands of squares. */
function search(ground: Ground, start: number): Float64Array {
    const { columns, rows, taken } = ground;
    const ways = new Float64Array(columns * rows).fill(Infinity);
    /** The square where the way to each last bends. */
    const bends = new Int32Array(columns * rows).fill(-1);
    const isDone = new Uint8Array(columns * rows);
    /** Squares to go on from, in the order in which they were come to. */
    const reached = [start];
    const open = keepCompiled(new Heap());
    const lengths = new Float64Array(columns * rows).fill(-1);
    const between = (one: number, other: number): number => {
        const across = Math.abs((one % columns) - (other % columns));
        const up = Math.abs(Math.trunc(one / columns) - Math.trunc(other / columns));
        const place = up * columns + across;
        if (lengths[place]! < 0) {
            lengths[place] = SQUARE * Math.hypot(across, up);
        }
        return lengths[place]!;
    };
    /** The free ones of the eight squares around the one looked at. */
    const around = new Int32Array(8);
    const lookAround = (square: number): number => {
        const column = square % columns;
        const row = Math.trunc(square / columns);
        let count = 0;
        for (let y = Math.max(0, row - 1); y <= row + 1 && y < rows; y++) {
            for (let x = Math.max(0, column - 1); x <= column + 1 && x < columns; x++) {
                const next = y * columns + x;
                if (next !== square && (taken[next] === 0 || next === start)) {
                    around[count++] = next;
                }
            }
        }
        return count;
    };
    ways[start] = 0;
    bends[start] = start;
    open.push(0, 0);
    while (open.size > 0) {
        const here = reached[open.pop()]!;
        if (isDone[here] === 1) {
            continue;
        }
        const count = lookAround(here);
        // Its way was taken to be straight from where its neighbour's bends; where something stands in it, it bends at a neighbour.
        if (!isClear(ground, bends[here]!, here)) {
            ways[here] = Infinity;
            for (let index = 0; index < count; index++) {
                const next = around[index]!;
                const length = isDone[next] === 1 ? ways[next]! + between(next, here) : Infinity;
                if (length < ways[here]) {
                    ways[here] = length;
                    bends[here] = next;
                }
            }
        }
        isDone[here] = 1;
        const bend = bends[here]!;
        for (let index = 0; index < count; index++) {
            const next = around[index]!;
            if (isDone[next] === 0) {
                const length = ways[bend]! + between(bend, next);
                if (length < ways[next]!) {
                    ways[next] = length;
                    bends[next] = bend;
                    open.push(length, reached.push(next) - 1);
                }
            }
        }
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
