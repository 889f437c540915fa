/** What is set down at which seat, course by course: a plate, its mark, and the seats it goes to. */
import { listed } from '../../rules/wording.js';
import type { PlateSort, SeatedGuest } from '../../service/seats/types.js';
import { courseTitle, coursesWithBread, dishOf, plateOf, type SheetSource } from './evening.js';
import type { Block, Cell } from './sheet.js';

/** Plates of one course at one table that are alike in dish, mark and what is left off. */
interface Alike {
    readonly plate: PlateSort;
    readonly guests: SeatedGuest[];
}

/** Who carries plates reads one line: which plate, how it is marked in this course, where it goes. */
export function platesTable(source: SheetSource, table: string): Block {
    const guests = source.service.seats.guests.filter((guest) => guest.table === table);
    const rows = coursesWithBread(source).flatMap((course) =>
        alikeIn(source, course, guests).map(({ plate, guests: own }, index): Cell[] => {
            const title = courseTitle(source.plan, course);
            const dish = dishOf(source, course, plate.dish)?.title ?? title;
            return [
                index === 0 ? { text: title, strong: true } : title,
                plate.leftOff.length > 0 ? `${dish}, without ${listed(plate.leftOff)}` : dish,
                plate.marker === undefined ? 'none' : { text: plate.marker, strong: true },
                own.length === guests.length && guests.length > 1 ? 'all' : seatNumbers(own),
            ];
        }),
    );
    return {
        sort: 'table',
        columns: [
            { head: 'Course', share: 0.25 },
            { head: 'Plate' },
            { head: 'Mark', share: 0.16 },
            { head: 'Seats', share: 0.2 },
        ],
        rows,
    };
}

/** In the order of the kitchen's plates. */
function alikeIn(source: SheetSource, course: number, guests: readonly SeatedGuest[]): Alike[] {
    const { plates } = source.service.seats;
    const given = guests.flatMap((guest) => {
        const plate = plateOf(source, course, guest);
        return plate ? [{ plate, guest }] : [];
    });
    const found = new Map<string, Alike>();
    for (const { plate, guest } of given.toSorted((a, b) => plates.indexOf(a.plate) - plates.indexOf(b.plate))) {
        const { dish, marker, leftOff } = plate;
        const key = JSON.stringify([dish, marker, leftOff]);
        const alike = found.get(key) ?? { plate, guests: [] };
        alike.guests.push(guest);
        found.set(key, alike);
    }
    return [...found.values()];
}

/** `1, 4 to 6`. */
export function seatNumbers(guests: readonly SeatedGuest[]): string {
    const runs: { from: number; to: number }[] = [];
    for (const { seat } of guests.toSorted((a, b) => a.seat - b.seat)) {
        const last = runs.at(-1);
        if (last?.to === seat - 1) {
            last.to = seat;
        } else {
            runs.push({ from: seat, to: seat });
        }
    }
    return runs
        .map(({ from, to }) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`))
        .join(', ');
}
