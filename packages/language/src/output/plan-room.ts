/** The room laid out, for the compiled plan. */
import { accessiblePlaces, occupants } from '../service/room/floor.js';
import type { ClothSize, PlacedTable, TableCloth, TableToPlace } from '../service/room/types.js';
import { tenth } from './plan-cover-geometry.js';
import type { Telling } from './plan-menu.js';
import { at, type Json } from './plan-values.js';

const MODEL =
    'Millimetres from the left and the near wall. Tables without a place stand in rows that keep the clearances; ways from the pass are the shortest round tables and chairs, right to about 250 mm.';

const CAUTION =
    'The local code, the room’s own limit and the authority that applies them decide how many may be in the room, and how wide ways and accessible places have to be.';

export function roomLayoutJson(telling: Telling): Json | undefined {
    const { service, plan, places } = telling;
    const { tables, room } = service;
    if (tables.length === 0) {
        return undefined;
    }
    const { customs } = plan;
    const seats = tables.flatMap((table) => table.seats);
    return {
        model: MODEL,
        sources: ['quantities §7', 'table-service §3c', 'quantities R11', 'quantities R21'],
        caution: CAUTION,
        width: room?.width,
        depth: room?.depth,
        pass: room?.pass,
        clearances: room?.clearances,
        guests: room && floorJson(telling, room),
        seats: {
            count: seats.length,
            accessible: seats.filter((seat) => seat.accessible).length,
            accessibleWanted: accessiblePlaces(seats.length, customs['accessible-share'].value),
        },
        grid: room?.grid && {
            ...room.grid,
            aisle: tenth(room.grid.aisle),
            short: Number.isFinite(room.grid.short.by)
                ? { along: room.grid.short.along, by: tenth(room.grid.short.by) }
                : undefined,
        },
        narrow: room?.narrow.map(({ table, other, left, wanted }) => ({
            table,
            ...('table' in other ? { otherTable: other.table } : { toward: other.fixture }),
            left: tenth(left),
            wanted: tenth(wanted),
        })),
        tables: tables.map((table, index) => ({
            ...tableJson(table, room?.tables[index], room?.cloths.tables[index]),
            ...at(places, plan.room?.tables.find(({ names }) => names.includes(table.name))?.origin),
        })),
        cloths: room && { drop: tenth(room.cloths.drop), pull: room.cloths.pull },
    };
}

function floorJson(
    { plan, service }: Telling,
    { width, depth }: { readonly width: number; readonly depth: number },
): Json {
    const floor = (width * depth) / 1e6;
    const each = plan.customs['floor-per-guest'].value;
    return { expected: service.guestCount, most: occupants(floor, each), squareMetres: floor, squareMetresEach: each };
}

function tableJson(table: TableToPlace, placed: PlacedTable | undefined, cloth: TableCloth | undefined): Json {
    return {
        table: table.name,
        shape: table.shape,
        width: tenth(table.width),
        depth: tenth(table.depth),
        middle: placed?.at && { x: tenth(placed.at.x), y: tenth(placed.at.y), degrees: placed.at.degrees },
        fromPass: placed?.at && Math.round(placed.fromPass),
        seats: table.seats.map((seat) => ({
            seat: seat.number,
            x: tenth(seat.x),
            y: tenth(seat.y),
            degrees: tenth(seat.degrees),
            edge: tenth(seat.pitch),
            accessible: seat.accessible || undefined,
        })),
        cloth: cloth && {
            needed: sizeJson(cloth.needed),
            piece: cloth.piece,
            size: cloth.size && sizeJson(cloth.size),
            count: cloth.count,
            drop: cloth.drop === undefined ? undefined : tenth(cloth.drop),
        },
    };
}

function sizeJson(size: ClothSize): Json {
    return size.shape === 'round'
        ? { across: tenth(size.across) }
        : { length: tenth(size.length), width: tenth(size.width) };
}
