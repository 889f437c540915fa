import type { Plan } from '../../plan/types.js';
import type { Service, Step, Variation } from '../../service/types.js';
import { drawCover } from './draw-cover.js';
import { drawRoom } from './draw-room.js';
import { drawTable } from './draw-table.js';
import { piecesAt } from './standing.js';

/** What pictures are drawn from: the result of `check`. */
export interface Drawable {
    readonly plan: Plan;
    readonly service: Service;
}

/** The cover for one set of dishes: as it lies when guests sit, or as one step of the evening leaves it. SVG text. */
export function coverPicture(drawable: Drawable, variation: Variation, step?: Step): string {
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
            laid.map((piece) => ({ ...piece, state: 'standing' })),
            { title, description },
        );
    }
    const drawn = piecesAt(step, pieces);
    const named = (state: string): string =>
        drawn
            .filter((piece) => piece.state === state)
            .map(({ label }) => label)
            .join(', ') || 'nothing';
    const description = `Brought: ${named('brought')}. In use: ${named('used')}. Cleared: ${named('cleared')}. Standing besides: ${named('standing')}.`;
    return drawCover(drawn, { title, subtitle: `Step ${step.index + 1}: ${step.title}`, description }, pieces);
}

function titleOf({ plan, service }: Drawable, variation: Variation): string {
    const event = plan.event?.title ?? plan.file;
    return service.variations.length > 1 ? `${event}: ${variation.label}` : event;
}

/** How a table is written on. */
export interface TableLook {
    /** Height of the words, mm of the table; a usual one where absent. */
    readonly lettering?: number;
    /** Whether what guests need stands at their seats. */
    readonly needs?: boolean;
}

/** One table with the covers of the guests who sit there, or, where no guest has a seat, with the first cover at every seat. */
export function tablePicture(
    { plan, service }: Drawable,
    name: string,
    { lettering, needs: tellsNeeds = true }: TableLook = {},
): string | undefined {
    const table = service.tables.find((each) => each.name === name);
    if (!table) {
        return undefined;
    }
    const guests = service.seats.guests.filter((guest) => guest.table === name);
    const piecesOf = (variation: number) =>
        service.coverGeometry[variation]?.onTables.find(({ tables }) => tables.includes(name))?.on.pieces ?? [];
    const places = table.seats.flatMap((seat) => {
        const guest = guests.find((each) => each.seat === seat.number);
        if (guests.length > 0 && !guest) {
            return [];
        }
        const group = guest && service.groups[guest.group];
        return [
            {
                seat: seat.number,
                pieces: piecesOf(guest?.variation ?? 0).filter((piece) => piece.when === 'laid'),
                marks: fullestMarks(guest?.markers ?? []),
                needs: tellsNeeds && group && group.needs.length > 0 ? group.label : undefined,
            },
        ];
    });
    const title = `${plan.event?.title ?? plan.file}: table ${name}`;
    const description = `${table.seats.length} seats, ${places.length} covers.`;
    return drawTable(table, places, { title, description }, lettering);
}

/** Each mark once; `GF` is said by `GF 1`. */
function fullestMarks(markers: readonly (string | undefined)[]): string[] {
    const marks = [...new Set(markers.filter((mark) => mark !== undefined))];
    return marks.filter((mark) => !marks.some((other) => other.startsWith(`${mark} `)));
}

/** The room with its tables; absent where its measures are not stated. */
export function roomPicture({ plan, service }: Drawable): string | undefined {
    const { room } = service;
    if (!room) {
        return undefined;
    }
    const words = room.tables.map((table) => {
        const seated = service.seats.tables.find((each) => each.name === table.name);
        return { name: table.name, lines: seated && seated.guests > 0 ? [`${seated.guests} guests`] : [] };
    });
    const unplaced = room.tables.filter((table) => !table.at).map((table) => table.name);
    const title = `${plan.event?.title ?? plan.file}: ${plan.room?.title ?? 'room'}`;
    const description =
        `${(room.width / 1000).toFixed(1)} m by ${(room.depth / 1000).toFixed(1)} m, ${room.tables.length} tables.` +
        (unplaced.length > 0 ? ` No place for ${unplaced.join(', ')}.` : '');
    return drawRoom(room, words, { title, description });
}
