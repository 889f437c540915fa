import type { Footprint, Rectangle } from './footprint.js';

/** A floor to fill with rows of tables along its width. */
export interface Floor {
    readonly width: number;
    /** Infinity where it is asked how deep the floor would have to be. */
    readonly depth: number;
    /** Where no table with its chairs may stand. */
    readonly kept: readonly Rectangle[];
}

export interface Rows {
    /** Middle of each table, in the order given; absent for those without a place. */
    readonly places: readonly ({ readonly x: number; readonly y: number } | undefined)[];
    readonly rows: number;
    /** How deep the floor has to be for the rows there are. */
    readonly depth: number;
}

export interface Spacing {
    /** The share of each clearance that is kept: 1 for all of it. */
    readonly scale: number;
    /** Tables in a row at most. */
    readonly perRow: number;
    /** Depth added between rows and toward the walls. */
    readonly extra: number;
}

/** Sets tables in rows from the near wall on, in their order, the tables of a row spread evenly. */
export function rowsOfTables(tables: readonly Footprint[], floor: Floor, spacing: Spacing): Rows {
    const places: ({ x: number; y: number } | undefined)[] = tables.map(() => undefined);
    let from = 0;
    let rows = 0;
    let behind: { readonly edge: number; readonly lane: number } | undefined;
    let lifted = 0;
    let depth = 0;
    while (from < tables.length) {
        const row = fillRow(tables, from, floor, spacing, behind, lifted);
        if (row === undefined) {
            break;
        }
        if (row.tables.length === 0) {
            // Something that is kept free fills this strip: the row begins beyond it.
            if (row.next === undefined) {
                break;
            }
            lifted = row.next;
            continue;
        }
        const wall = Math.max(...row.tables.map(({ table }) => table.sides.far.wall));
        const needed = row.far + spacing.scale * wall;
        if (needed > floor.depth + NOISE) {
            break;
        }
        depth = needed;
        for (const { index, x } of row.tables) {
            places[index] = { x, y: row.middle };
        }
        behind = { edge: row.far, lane: Math.max(...row.tables.map(({ table }) => table.sides.far.lane)) };
        from += row.tables.length;
        rows++;
    }
    return { places, rows, depth: from < tables.length ? Infinity : depth };
}

const NOISE = 1e-6;

interface Row {
    readonly tables: readonly { readonly table: Footprint; readonly index: number; readonly x: number }[];
    /** The line on which the middles of its tables stand. */
    readonly middle: number;
    readonly far: number;
    /** Where the next strip begins that is kept free of less; absent where there is none. */
    readonly next?: number;
}

/** The next row: as many tables as the strip behind the last one holds. */
function fillRow(
    tables: readonly Footprint[],
    from: number,
    floor: Floor,
    spacing: Spacing,
    behind: { readonly edge: number; readonly lane: number } | undefined,
    lifted: number,
): Row | undefined {
    // A table that needs more depth than those before it moves the whole row: it is filled again.
    for (let deepest = from; deepest < tables.length;) {
        const sample = tables.slice(from, deepest + 1);
        const near = Math.max(...sample.map(({ depth, sides }) => depth / 2 + sides.near.taken));
        const far = Math.max(...sample.map(({ depth, sides }) => depth / 2 + sides.far.taken));
        const lane = Math.max(
            ...sample.map(({ sides }) => (behind ? Math.max(behind.lane, sides.near.lane) : sides.near.wall)),
        );
        const start = Math.max((behind?.edge ?? 0) + spacing.scale * lane + spacing.extra, lifted);
        const middle = start + near;
        const strip = { near: start, far: middle + far };
        const filled = fillStrip(tables, from, floor, strip, spacing);
        const reached = from + filled.length - 1;
        const isDeeper = (index: number): boolean => {
            const { depth, sides } = tables[index]!;
            return depth / 2 + sides.near.taken > near + NOISE || depth / 2 + sides.far.taken > far + NOISE;
        };
        const deeper = Array.from({ length: Math.max(0, reached - deepest) }, (_, index) => deepest + 1 + index).find(
            isDeeper,
        );
        if (deeper === undefined) {
            const next = floor.kept
                .filter((kept) => kept.far > strip.near + NOISE && kept.near < strip.far)
                .map((kept) => kept.far)
                .toSorted((a, b) => a - b)[0];
            return {
                tables: filled,
                middle,
                far: strip.far,
                next: next === undefined || next >= floor.depth ? undefined : next,
            };
        }
        deepest = deeper;
    }
    return undefined;
}

/** As many tables as stand side by side in a strip, left to right, what is left over spread between them. */
function fillStrip(
    tables: readonly Footprint[],
    from: number,
    floor: Floor,
    strip: { readonly near: number; readonly far: number },
    { scale, perRow }: Spacing,
): Row['tables'] {
    const filled: { table: Footprint; index: number; x: number }[] = [];
    for (const { left, right } of freeSpans(floor, strip)) {
        const isLeftWall = left === 0;
        const isRightWall = right === floor.width;
        const span: { table: Footprint; index: number; x: number }[] = [];
        let end = left;
        let wall = 0;
        for (let index = from + filled.length; index < tables.length && filled.length + span.length < perRow; index++) {
            const table = tables[index]!;
            const { sides } = table;
            const before = span.at(-1)?.table.sides.right;
            const gap = before ? Math.max(before.lane, sides.left.lane) : isLeftWall ? sides.left.wall : 0;
            const x = end + scale * gap + sides.left.taken + table.width / 2;
            const reach = x + table.width / 2 + sides.right.taken;
            const after = isRightWall ? scale * sides.right.wall : 0;
            if (reach + after > right + NOISE) {
                break;
            }
            span.push({ table, index, x });
            end = reach;
            wall = after;
        }
        const share = (right - wall - end) / (span.length + 1);
        filled.push(...span.map((each, place) => ({ ...each, x: each.x + share * (place + 1) })));
    }
    return filled;
}

/** The parts of a strip's width that nothing is kept free in. */
function freeSpans(
    { width, kept }: Floor,
    { near, far }: { readonly near: number; readonly far: number },
): { readonly left: number; readonly right: number }[] {
    const blocked = kept
        .filter((each) => each.far > near + NOISE && each.near < far - NOISE)
        .toSorted((a, b) => a.left - b.left);
    const spans: { left: number; right: number }[] = [];
    let left = 0;
    for (const each of blocked) {
        if (each.left > left) {
            spans.push({ left, right: each.left });
        }
        left = Math.max(left, each.right);
    }
    if (left < width) {
        spans.push({ left, right: width });
    }
    return spans;
}
