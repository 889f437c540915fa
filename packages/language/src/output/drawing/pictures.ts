import type { Plan } from '../../plan/types.js';
import { setsBetween } from '../../service/cover-geometry/between-covers.js';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import { markOf } from '../../service/seats/markers.js';
import type { SeatedGuest } from '../../service/seats/types.js';
import type { Service, Step, Variation } from '../../service/types.js';
import { drawCover } from './draw-cover.js';
import { drawNeighbours } from './draw-neighbours.js';
import { drawRoom } from './draw-room.js';
import { drawTable } from './draw-table.js';
import type { DrawnPiece } from './drawn-piece.js';
import { piecesAt } from './standing.js';
import type { Lettering } from './svg.js';
import type { DrawnPlace, SharedPiece } from './table-top.js';

/** What pictures are drawn from: the result of `check`. */
export interface Drawable {
    readonly plan: Plan;
    readonly service: Service;
}

/**
 * The cover for one set of dishes: as it lies when guests sit, or as one step of the evening leaves it. SVG text.
 * @param placeOf what is written on a piece as `data-at`
 */
export function coverPicture(
    drawable: Drawable,
    variation: Variation,
    step?: Step,
    placeOf: (piece: PlacedPiece) => number | undefined = () => undefined,
    lettering?: Lettering,
): string {
    const { cover } = variation;
    const { pieces } = drawable.service.coverGeometry[variation.index]!;
    const list = (all: readonly { readonly piece: { readonly name: string } }[]): string =>
        all.map(({ piece }) => piece.name).join(', ') || 'nothing';
    const title = titleOf(drawable, variation);
    if (!step) {
        const description =
            `Left of the plate, outermost first: ${list(cover.left)}. Right of it: ${list(cover.right)}. Above it: ${list(cover.above)}. ` +
            `Glasses from the knife outward: ${list(cover.glasses)}.`;
        const laid = pieces.filter((piece) => piece.when === 'laid');
        return drawCover(
            laid.map((piece) => ({ ...piece, state: 'standing', at: placeOf(piece) })),
            { title, description },
            undefined,
            lettering,
        );
    }
    const drawn = piecesAt(step, pieces).map((piece) => ({ ...piece, at: placeOf(piece) }));
    const named = (state: string): string =>
        drawn
            .filter((piece) => piece.state === state)
            .map(({ label }) => label)
            .join(', ') || 'nothing';
    const description = `Brought: ${named('brought')}. In use: ${named('used')}. Cleared: ${named('cleared')}. Standing besides: ${named('standing')}.`;
    return drawCover(
        drawn,
        { title, subtitle: `Step ${step.index + 1}: ${step.title}`, description },
        pieces,
        lettering,
    );
}

function titleOf({ plan, service }: Drawable, variation: Variation): string {
    const event = plan.event?.title ?? plan.file;
    return service.variations.length > 1 ? `${event}: ${variation.label}` : event;
}

/** How a table is written on, and what lies on it. */
export interface TableLook extends Lettering {
    /** How it is said at their seats what guests need: in words where absent, by the letters that mark their plates, or not at all. */
    readonly needs?: 'in-words' | 'by-mark' | 'unsaid';
    /** Whether the marks of each guest's plates stand there, with the courses they are for; they do where absent. */
    readonly marks?: boolean;
    /** A line under the title. */
    readonly subtitle?: string;
    /** What of the pieces of a variation's cover lies at a place; where absent, what lies there when guests sit. */
    readonly pieces?: (variation: number, all: readonly PlacedPiece[]) => readonly DrawnPiece[];
}

/** One table with the covers of the guests who sit there, or, where no guest has a seat, with the first cover at every seat. */
export function tablePicture(drawable: Drawable, name: string, look: TableLook = {}): string | undefined {
    const table = drawable.service.tables.find((each) => each.name === name);
    if (!table) {
        return undefined;
    }
    const { places, shared } = onTheTable(drawable, table, look);
    const { subtitle } = look;
    const description = `${table.seats.length} seats, ${places.length} covers.`;
    return drawTable(table, places, shared, { title: tableTitle(drawable, name), subtitle, description }, look);
}

/**
 * One guest's cover with those beside it, as that guest sees the table.
 * @param seat from 1; nothing where the table has no such seat
 */
export function neighboursPicture(
    drawable: Drawable,
    name: string,
    seat: number,
    look: TableLook = {},
): string | undefined {
    const table = drawable.service.tables.find((each) => each.name === name);
    const { subtitle } = look;
    const title = `${tableTitle(drawable, name)}, seat ${seat}`;
    const description = 'The covers at this seat and beside it.';
    if (!table) {
        return undefined;
    }
    const { places, shared } = onTheTable(drawable, table, look);
    return drawNeighbours(table, places, shared, seat, { title, subtitle, description }, look);
}

function tableTitle({ plan }: Drawable, name: string): string {
    return `${plan.event?.title ?? plan.file}: table ${name}`;
}

interface OnTheTable {
    readonly places: readonly DrawnPlace[];
    readonly shared: readonly SharedPiece[];
}

function onTheTable(
    drawable: Drawable,
    table: Service['tables'][number],
    { needs = 'in-words', marks = true, pieces = (_, all) => laid(all) }: TableLook,
): OnTheTable {
    const { plan, service } = drawable;
    const guests = service.seats.guests.filter((guest) => guest.table === table.name);
    const piecesOf = (variation: number): readonly PlacedPiece[] =>
        service.coverGeometry[variation]?.onTables.find(({ tables }) => tables.includes(table.name))?.on.pieces ?? [];
    const covers = table.seats.flatMap((seat) => {
        const guest = guests.find((each) => each.seat === seat.number);
        if (guests.length > 0 && !guest) {
            return [];
        }
        const variation = guest?.variation ?? 0;
        const all = piecesOf(variation);
        return [{ seat, guest, all, drawn: pieces(variation, all) }];
    });
    const isShared = plan.customs['salt-and-pepper'].value === 'between-two';
    const said = (guest: SeatedGuest): string | undefined => {
        const group = service.groups[guest.group]!;
        const words = { 'in-words': group.label, 'by-mark': markOf(group.needs, plan.cupboard), unsaid: undefined };
        return group.needs.length > 0 ? words[needs] : undefined;
    };
    const places = covers.map(({ seat, guest, drawn }) => ({
        seat: seat.number,
        pieces: isShared ? drawn.filter(({ row }) => row !== 'middle') : drawn,
        marks: guest && marks ? marksByCourse(plan, guest) : [],
        needs: guest && said(guest),
    }));
    const laidThere = service.seats.tables.find(({ name }) => name === table.name)?.laid ?? 0;
    // As many as are pulled: covers laid beyond the guests have theirs too.
    const sets = isShared
        ? setsBetween(
              table,
              covers.map(({ seat, all }) => ({ seat, pieces: all })),
              Math.ceil(Math.max(covers.length, laidThere) / 2),
          )
        : [];
    return {
        places,
        shared: sets.flatMap(({ seat, from, piece }) => {
            const own = covers.find((cover) => cover.seat.number === seat)!.drawn.find(({ row }) => row === 'middle');
            return own ? [{ seat, from, piece: { ...own, x: piece.x, y: piece.y } }] : [];
        }),
    };
}

const laid = (pieces: readonly PlacedPiece[]): DrawnPiece[] =>
    pieces.filter(({ when }) => when === 'laid').map((piece) => ({ ...piece, state: 'standing' }));

/** `GF 1: soup, main`: each mark once, with the courses in which it is the guest's. */
function marksByCourse({ menu }: Plan, { breadMarker, markers }: SeatedGuest): string[] {
    const courses = menu?.courses ?? [];
    const called = courses.map(({ kind, title }) =>
        courses.filter((other) => other.kind.name === kind.name).length > 1 ? title : kind.name,
    );
    const all = [
        { mark: breadMarker, where: 'bread' },
        ...called.map((where, index) => ({ mark: markers[index], where })),
    ];
    const found = new Map<string, string[]>();
    for (const { mark, where } of all) {
        if (mark !== undefined) {
            found.set(mark, [...(found.get(mark) ?? []), where]);
        }
    }
    return [...found].map(([mark, where]) => `${mark}: ${where.join(', ')}`);
}

/**
 * The room with its tables; absent where its measures are not stated.
 * @param placeOf what is written on a table as `data-at`, by its name
 */
export function roomPicture(
    { plan, service }: Drawable,
    placeOf: (table: string) => number | undefined = () => undefined,
    lettering?: Lettering,
): string | undefined {
    const { room } = service;
    if (!room) {
        return undefined;
    }
    const words = room.tables.map((table) => {
        const seated = service.seats.tables.find((each) => each.name === table.name);
        const lines = seated && seated.guests > 0 ? [`${seated.guests} guests`] : [];
        return { name: table.name, lines, at: placeOf(table.name) };
    });
    const unplaced = room.tables.filter((table) => !table.at).map((table) => table.name);
    const title = `${plan.event?.title ?? plan.file}: ${plan.room?.title ?? 'room'}`;
    const description =
        `${(room.width / 1000).toFixed(1)} m by ${(room.depth / 1000).toFixed(1)} m, ${room.tables.length} tables.` +
        (unplaced.length > 0 ? ` No place for ${unplaced.join(', ')}.` : '');
    return drawRoom(room, words, { title, description }, lettering);
}
