import type { ClothSize, Cloths, TableCloth, TableToPlace } from './types.js';

/** A cloth that the house or the cupboard has. */
export interface StockedCloth {
    readonly piece: string;
    readonly size: ClothSize;
}

export interface ClothRule {
    /** mm below the edge. */
    readonly drop: number;
    /** Of one cloth over the next on a long table, mm. */
    readonly overlap: number;
}

/** The least cloth for a table: its size and the drop on both sides (quantities §7.4). */
export function clothNeeded(table: Pick<TableToPlace, 'shape' | 'width' | 'depth'>, drop: number): ClothSize {
    return table.shape === 'round'
        ? { shape: 'round', across: table.width + 2 * drop }
        : { shape: 'rectangle', length: table.width + 2 * drop, width: table.depth + 2 * drop };
}

/** How far below the edge a cloth hangs where it hangs least, mm. A square cloth on a round table hangs least in the middle of a side. */
export function dropOf(table: Pick<TableToPlace, 'shape' | 'width' | 'depth'>, cloth: ClothSize): number {
    if (cloth.shape === 'round') {
        return (cloth.across - Math.max(table.width, table.depth)) / 2;
    }
    return Math.min(cloth.length - table.width, cloth.width - table.depth) / 2;
}

/** The cloths for all tables: for each the smallest that hangs as wanted, else the one that hangs furthest. */
export function clothsFor(tables: readonly TableToPlace[], stocked: readonly StockedCloth[], rule: ClothRule): Cloths {
    const dressed = tables.map((table) => dress(table, stocked, rule));
    const pull = new Map<string, number>();
    for (const { piece, count } of dressed) {
        if (piece !== undefined) {
            pull.set(piece, (pull.get(piece) ?? 0) + count);
        }
    }
    return {
        drop: rule.drop,
        tables: dressed,
        pull: [...pull].map(([piece, count]) => ({ piece, count })).toSorted((a, b) => (a.piece < b.piece ? -1 : 1)),
    };
}

function dress(table: TableToPlace, stocked: readonly StockedCloth[], { drop, overlap }: ClothRule): TableCloth {
    const needed = clothNeeded(table, drop);
    // A round cloth hides the corners of no table with straight sides.
    const suiting = stocked.filter(({ size }) => size.shape === 'rectangle' || isCurved(table));
    const choices = suiting.flatMap((cloth) =>
        [cloth, turned(cloth)].flatMap((each) => (each ? layOn(table, each, drop, overlap) : [])),
    );
    const best = choices.toSorted(
        (a, b) =>
            Number(b.drop >= drop - NOISE) - Number(a.drop >= drop - NOISE) ||
            (a.drop >= drop - NOISE ? a.count - b.count || areaOf(a.size) - areaOf(b.size) : b.drop - a.drop) ||
            (a.piece < b.piece ? -1 : 1),
    )[0];
    return { table: table.name, needed, count: 1, ...best };
}

const NOISE = 1e-6;

const isCurved = ({ shape }: Pick<TableToPlace, 'shape'>): boolean => shape === 'round' || shape === 'oval';

const areaOf = (size: ClothSize): number =>
    size.shape === 'round' ? (Math.PI * size.across ** 2) / 4 : size.length * size.width;

/** The same cloth with its long side the other way; absent where that makes no difference. */
function turned({ piece, size }: StockedCloth): StockedCloth | undefined {
    return size.shape === 'rectangle' && size.length !== size.width
        ? { piece, size: { shape: 'rectangle', length: size.width, width: size.length } }
        : undefined;
}

function layOn(
    table: TableToPlace,
    { piece, size }: StockedCloth,
    drop: number,
    overlap: number,
): Required<Pick<TableCloth, 'piece' | 'size' | 'count' | 'drop'>> {
    // Only along a table with straight sides can one cloth go on where another ends.
    const isLong = table.shape === 'rectangle' && size.shape === 'rectangle' && size.length > overlap;
    const count = isLong
        ? Math.max(1, Math.ceil((table.width + 2 * drop - overlap) / (size.length - overlap) - NOISE))
        : 1;
    const spread: ClothSize =
        isLong && count > 1 ? { ...size, length: count * (size.length - overlap) + overlap } : size;
    return { piece, size, count, drop: dropOf(table, spread) };
}
