import { measured } from '../cover-geometry/piece-sizes.js';
import type { Plan, Tables } from '../../plan/types.js';
import type { StockedCloth } from './cloths.js';
import { wheelchairInset } from './floor.js';
import { placeSeats, seatsThatFit, type TableShape } from './seats.js';
import type { Clearances, RoomToLayOut, TableToPlace } from './types.js';

/** Larger rooms, tables and seatings are slips of the finger, and figures of their own say so. */
const MOST = { room: 300_000, table: 60_000, seats: 400 } as const;

/** How deep a table is whose second side is not written, mm: the usual folding table of 30 inch (quantities §7.1). */
const USUAL_DEPTH = 762;

/** Every table of the room with its seats, in the order of the text. */
export function tablesOf(plan: Plan): TableToPlace[] {
    return (plan.room?.tables ?? []).flatMap((tables) => {
        const shape = shapeOf(tables);
        if (!shape) {
            return [];
        }
        const { seats, accessible, at, turned, names } = tables;
        const { customs } = plan;
        const widths = { coverWidth: customs['cover-width'].value, leastWidth: customs['least-cover-width'].value };
        const guests = Math.min(MOST.seats, seats?.count ?? seatsThatFit(shape, customs['close-cover-width'].value));
        const placed = placeSeats(shape, guests, accessible?.count ?? 0, widths);
        const isPlaced = at !== undefined && names.length === 1;
        return names.map((name): TableToPlace => ({
            name,
            ...shape,
            seats: placed,
            at: isPlaced ? { x: at.x.value, y: at.y.value } : undefined,
            turned,
        }));
    });
}

/** The top of a table, its long side first; joined tables stand end to end. A table of another shape takes the rectangle round it. */
export function shapeOf({ shape, size, depth, joined }: Tables): TableShape | undefined {
    const count = Math.max(1, joined?.count ?? 1);
    const [one, other] = [size.value, depth?.value];
    if (!isLength(size) || (depth && !isLength(depth))) {
        return undefined;
    }
    const rectangle = (length: number, across: number): TableShape => {
        const whole = length * count;
        return { shape: 'rectangle', width: Math.max(whole, across), depth: Math.min(whole, across) };
    };
    const longest = Math.max(one, other ?? 0);
    switch (shape.name) {
        case 'round':
            return count > 1 ? rectangle(one, one) : { shape: 'round', width: one, depth: one };
        case 'square':
            return count > 1 ? rectangle(one, one) : { shape: 'square', width: one, depth: one };
        case 'oval':
            return other === undefined || other === one
                ? { shape: 'round', width: one, depth: one }
                : { shape: 'oval', width: longest, depth: Math.min(one, other) };
        case 'half-round':
            return rectangle(one, one / 2);
        default:
            return rectangle(longest, other === undefined ? Math.min(one, USUAL_DEPTH) : Math.min(one, other));
    }
}

function isLength({ value, dimension }: Tables['size']): boolean {
    return dimension === 'length' && value > 0 && value <= MOST.table;
}

/** The room as it is laid out; absent where the text gives it no size. */
export function roomToLayOut(plan: Plan, tables: readonly TableToPlace[]): RoomToLayOut | undefined {
    const { room } = plan;
    const [width, depth] = [room?.width, room?.depth];
    if (!room || !width || !depth || ![width, depth].every(({ value }) => value > 0 && value <= MOST.room)) {
        return undefined;
    }
    return {
        width: width.value,
        depth: depth.value,
        passWall: room.pass?.wall ?? 'left',
        tables,
        clearances: clearancesOf(plan),
    };
}

export function clearancesOf({ customs, room }: Plan): Clearances {
    return {
        chair: customs['chair-depth'].value,
        wheelchair: wheelchairInset(customs['wheelchair-length'].value, customs['wheelchair-under-table'].value),
        aisle: room?.aisle?.value ?? customs['aisle-width'].value,
        route: customs['accessible-route'].value,
        wall: customs['wall-gap'].value,
        pass: customs['pass-clear'].value,
    };
}

/** The sizes that dealers publish, across or along and across in inches (quantities §7.4). */
const STANDARD_CLOTHS = [
    ...[70, 78, 90, 108, 120, 132].map((across) => `round-cloth-${across}`),
    ...['54-by-96', '60-by-102', '60-by-126', '90-by-132', '90-by-156'].map((sides) => `cloth-${sides}`),
];

/** The cloths of the house and those rented; where neither lists any, those of the standard cupboard. */
export function stockedCloths(plan: Plan): StockedCloth[] {
    const owned = ownedCloths(plan);
    return owned.length > 0 ? owned : clothsAmong(STANDARD_CLOTHS, plan);
}

/** The cloths of the house and those rented, as far as they have a size. */
export function ownedCloths(plan: Plan): StockedCloth[] {
    const listed = [...plan.house.stock, ...(plan.event?.rents ?? [])];
    return clothsAmong(
        listed.filter(({ count }) => count.count > 0).map(({ piece }) => piece.name),
        plan,
    );
}

function clothsAmong(names: readonly string[], { cupboard }: Plan): StockedCloth[] {
    return [...new Set(names)].flatMap((name): StockedCloth[] => {
        const piece = cupboard.pieces.get(name);
        if (piece?.family !== 'linen' || (name !== 'tablecloth' && piece.parent?.name !== 'tablecloth')) {
            return [];
        }
        const [across, length, width] = ['across', 'length', 'width'].map((measure) => measured(piece, measure));
        if (across !== undefined) {
            return [{ piece: name, size: { shape: 'round', across } }];
        }
        return length === undefined || width === undefined
            ? []
            : [{ piece: name, size: { shape: 'rectangle', length, width } }];
    });
}

/** How far cloths are wanted to hang, mm. */
export function clothDrop({ customs }: Plan): number {
    const drop = customs['cloth-drop'].value;
    const height = customs['table-height'].value;
    return drop === 'floor' ? height : drop === 'half-way' ? height / 2 : drop;
}
