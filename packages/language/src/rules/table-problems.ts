import { lazily } from '../plan/lazily.js';
import type { Plan, Tables } from '../plan/types.js';
import type { CoverOnTable, Overlap } from '../service/cover-geometry/types.js';
import type { NarrowPlace, TableToPlace } from '../service/room/types.js';
import { accessiblePlaces, occupants } from '../service/room/floor.js';
import type { Service, Variation } from '../service/types.js';

/** What is wrong with tables and the covers on them; rules report it, and fixes are tried against it. */

export interface TableCase {
    readonly tables: Tables;
    /** One of them with its seats. */
    readonly table: TableToPlace;
}

/** Every line of tables that seats anybody. */
export function tableCases({ room }: Plan, { tables }: Pick<Service, 'tables'>): TableCase[] {
    return (room?.tables ?? []).flatMap((each) => {
        const table = tables.find(({ name }) => name === each.names[0]);
        return table && table.seats.length > 0 ? [{ tables: each, table }] : [];
    });
}

/** The least width of table edge that a guest has, mm. */
export const leastPitch = ({ seats }: TableToPlace): number => Math.min(...seats.map(({ pitch }) => pitch));

/** Half a hair: a pitch that equals its limit is not below it. */
const NOISE = 1e-6;

export interface Crowded extends TableCase {
    readonly pitch: number;
    readonly isCrowded: boolean;
}

/** Tables whose guests have less edge than the house wants. */
export function crowdedTables(plan: Plan, service: Pick<Service, 'tables'>): Crowded[] {
    const close = plan.customs['close-cover-width'].value;
    const least = plan.customs['least-cover-width'].value;
    return tableCases(plan, service).flatMap((each) => {
        const pitch = leastPitch(each.table);
        return pitch < Math.max(close, least) - NOISE ? [{ ...each, pitch, isCrowded: pitch < least - NOISE }] : [];
    });
}

/**
 * How far pieces may lie on each other or over the edge before it is told, mm. Plates of one sort differ by as much from
 * pattern to pattern: half an inch in the published sizes (table-service 3.53, 3.55–3.57).
 */
export const SPREAD_OF_SIZES = 12.7;

export interface LaidTable extends TableCase {
    readonly variation: Variation;
    readonly on: CoverOnTable;
}

type Laid = Pick<Service, 'tables' | 'coverGeometry' | 'variations'>;

/** Every variation's cover on every line of tables. */
export function laidTables(plan: Plan, service: Laid): readonly LaidTable[] {
    const laid = known.get(service) ?? lazily(() => layTables(plan, service));
    known.set(service, laid);
    return laid();
}

/** Several rules ask for it. */
const known = new WeakMap<Laid, () => readonly LaidTable[]>();

function layTables(plan: Plan, service: Laid): LaidTable[] {
    const cases = tableCases(plan, service);
    return service.coverGeometry.flatMap(({ variation, onTables }) =>
        cases.flatMap((each) => {
            const found = onTables.find(({ tables }) => tables.includes(each.table.name));
            return found ? [{ ...each, variation: service.variations[variation]!, on: found.on }] : [];
        }),
    );
}

export const overlapsTold = ({ on }: LaidTable): readonly Overlap[] =>
    on.overlaps.filter(({ by }) => by > SPREAD_OF_SIZES);

export const offTableTold = ({ on }: LaidTable): CoverOnTable['offTable'] =>
    on.offTable.filter(({ by }) => by > SPREAD_OF_SIZES);

/** Width missing in the middle of the table, mm; 0 where there is enough. */
export function centreShort({ customs }: Plan, { on }: LaidTable): number {
    const { value } = customs.centre;
    return value === 'none' ? 0 : Math.max(0, value - on.centre - SPREAD_OF_SIZES);
}

/** mm². */
const SQUARE_METRE = 1e6;

/** Areas in m². */
export interface FloorNeed {
    readonly floor: number;
    readonly each: number;
    readonly guests: number;
    readonly most: number;
}

/** More guests than the floor of the room is for; absent where there is floor enough, or nobody says how much there is. */
export function floorShort(
    plan: Plan,
    { room, guestCount }: Pick<Service, 'room' | 'guestCount'>,
): FloorNeed | undefined {
    if (!room || guestCount === 0) {
        return undefined;
    }
    const each = plan.customs['floor-per-guest'].value;
    const floor = (room.width * room.depth) / SQUARE_METRE;
    const most = occupants(floor, each);
    return guestCount > most ? { floor, each, guests: guestCount, most } : undefined;
}

/** Accessible places wanted and there; absent where enough are stated, or neither the room nor the house speaks of them. */
export function accessibleShort(
    plan: Plan,
    { tables }: Pick<Service, 'tables'>,
): { readonly seats: number; readonly wanted: number; readonly stated: number } | undefined {
    const isSpokenOf =
        plan.customs['accessible-share'].origin !== undefined ||
        plan.room?.tables.some(({ accessible }) => accessible !== undefined) === true;
    const seats = tables.reduce((sum, table) => sum + table.seats.length, 0);
    const stated = tables.reduce((sum, table) => sum + table.seats.filter(({ accessible }) => accessible).length, 0);
    const wanted = accessiblePlaces(seats, plan.customs['accessible-share'].value);
    return isSpokenOf && stated < wanted ? { seats, wanted, stated } : undefined;
}

/** Guests without a seat; 0 where a table does not say how many it seats. */
export function seatsMissing({ room }: Plan, { tables, guestCount }: Pick<Service, 'tables' | 'guestCount'>): number {
    const isOpen = room?.tables.some(({ seats, names, last }) => !seats || (last !== undefined && names.length === 1));
    const seats = tables.reduce((sum, table) => sum + table.seats.length, 0);
    return isOpen === false && tables.length > 0 ? Math.max(0, guestCount - seats) : 0;
}

export const narrowPlacesOf = ({ room }: Pick<Service, 'room'>): readonly NarrowPlace[] => room?.narrow ?? [];
