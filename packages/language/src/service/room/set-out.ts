import {
    floorOf,
    footprintOf,
    transposed,
    transposedRectangle,
    withLanes,
    type Footprint,
    type Rectangle,
} from './footprint.js';
import { rowsOfTables, type Floor, type Rows } from './rows-of-tables.js';
import type { Grid, RoomLayout, RoomToLayOut, TableToPlace } from './types.js';

export interface SetOut {
    /** Middle of each table and whether it is turned, by name; tables without a place are missing. */
    readonly places: ReadonlyMap<string, { readonly x: number; readonly y: number; readonly isTurned: boolean }>;
    readonly grid?: Grid;
}

/** Rows along the width or the depth of the room, long tables lying or turned: tried in this order. */
const WAYS = [
    { isAcross: false, isTurned: false },
    { isAcross: true, isTurned: false },
    { isAcross: false, isTurned: true },
    { isAcross: true, isTurned: true },
] as const;

type Way = (typeof WAYS)[number];

/** Tables with a place stay there; the others are set in rows that keep aisles, walls and the pass clear. */
export function setOut(room: RoomToLayOut, pass: RoomLayout['pass']): SetOut {
    const fixed = room.tables.filter((table) => table.at !== undefined);
    const free = room.tables.filter((table) => table.at === undefined);
    const places = new Map(fixed.map(({ name, at, turned }) => [name, { ...at!, isTurned: turned }]));
    if (free.length === 0) {
        return { places };
    }
    const attempts = WAYS.map((way) => attempt(room, pass, fixed, free, way));
    const fitting = attempts.find(({ state }) => state === 'fits');
    const best =
        fitting ??
        attempts.reduce((one, other) => (other.scale > one.scale || other.placed > one.placed ? other : one));
    best.tables.forEach(({ name, isTurned }, index) => {
        const place = best.places[index];
        if (place) {
            places.set(name, { ...place, isTurned });
        }
    });
    const shortest = attempts.reduce((one, other) => (other.short.by < one.short.by ? other : one)).short;
    return {
        places,
        grid: {
            state: best.state,
            unplaced: free.filter(({ name }) => !places.has(name)).map(({ name }) => name),
            aisle: best.scale * room.clearances.aisle,
            short: fitting ? { along: shortest.along, by: 0 } : shortest,
        },
    };
}

interface Attempt {
    readonly tables: readonly Footprint[];
    readonly places: Rows['places'];
    readonly placed: number;
    readonly state: Grid['state'];
    readonly scale: number;
    readonly short: Grid['short'];
}

function attempt(
    room: RoomToLayOut,
    pass: RoomLayout['pass'],
    fixed: readonly TableToPlace[],
    free: readonly TableToPlace[],
    { isAcross, isTurned }: Way,
): Attempt {
    const { clearances } = room;
    const turns = (table: TableToPlace): boolean =>
        table.turned || (isTurned && table.shape !== 'round' && table.shape !== 'square');
    const tables = free.map((table) => footprintOf(table, turns(table), clearances));
    const standing = fixed.map((table) => ({ table: footprintOf(table, table.turned, clearances), at: table.at! }));
    const kept = (scale: number): Rectangle[] => [
        passSquare(room, pass),
        ...standing.map(({ table, at }) => withLanes(table, floorOf(table, at), scale)),
    ];
    const asSeen = isAcross ? tables.map(transposed) : tables;
    const floor = (scale: number, depth = isAcross ? room.width : room.depth): Floor => ({
        width: isAcross ? room.depth : room.width,
        depth,
        kept: isAcross ? kept(scale).map(transposedRectangle) : kept(scale),
    });
    const fill = (scale: number, perRow = Infinity, extra = 0): Rows =>
        rowsOfTables(asSeen, floor(scale), { scale, perRow, extra });
    const needed = rowsOfTables(asSeen, floor(1, Infinity), { scale: 1, perRow: Infinity, extra: 0 }).depth;
    const short = { along: isAcross ? 'width' : 'depth', by: Math.max(0, needed - floor(1).depth) } as const;
    const done = (rows: Rows, state: Grid['state'], scale: number): Attempt => ({
        tables,
        places: isAcross ? rows.places.map((place) => place && { x: place.y, y: place.x }) : rows.places,
        placed: rows.places.filter((place) => place !== undefined).length,
        state,
        scale,
        short,
    });

    const full = fill(1);
    if (isComplete(full)) {
        return done(spreadOut(full, fill, floor(1).depth, free.length), 'fits', 1);
    }
    if (!isComplete(fill(0))) {
        return done(full, 'full', 0);
    }
    const scale = largestThatFits((each) => isComplete(fill(each)));
    return done(fill(scale), 'squeezed', scale);
}

const isComplete = ({ places }: Rows): boolean => places.every((place) => place !== undefined);

/** Rows of even length, and what is left of the depth shared out between them. */
function spreadOut(
    rows: Rows,
    fill: (scale: number, perRow: number, extra: number) => Rows,
    depth: number,
    count: number,
): Rows {
    const even = Math.ceil(count / rows.rows);
    const perRow = isComplete(fill(1, even, 0)) ? even : Infinity;
    const spare = (depth - fill(1, perRow, 0).depth) / (rows.rows + 1);
    for (const share of [1, 0.5, 0.25, 0]) {
        const spread = fill(1, perRow, spare * share);
        if (isComplete(spread)) {
            return spread;
        }
    }
    return rows;
}

/** Between 0 and 1, to a thousandth; 0 is known to fit. */
function largestThatFits(fits: (scale: number) => boolean): number {
    let [low, high] = [0, 1];
    while (high - low > 0.001) {
        const middle = (low + high) / 2;
        [low, high] = fits(middle) ? [middle, high] : [low, middle];
    }
    return low;
}

/** The square before the pass that no table may stand in. */
export function passSquare(
    { clearances: { pass: side }, passWall, width, depth }: RoomToLayOut,
    pass: RoomLayout['pass'],
): Rectangle {
    const [alongX, alongY] = [
        { left: pass.x - side / 2, right: pass.x + side / 2 },
        { near: pass.y - side / 2, far: pass.y + side / 2 },
    ];
    switch (passWall) {
        case 'left':
            return { left: 0, right: side, ...alongY };
        case 'right':
            return { left: width - side, right: width, ...alongY };
        case 'near':
            return { ...alongX, near: 0, far: side };
        case 'far':
            return { ...alongX, near: depth - side, far: depth };
    }
}
