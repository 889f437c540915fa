import { CONTACT_CAUTION, SEAT_IS } from '../plan-seats.js';
import { courseTitle, guestCalled, needsOf, serverOf, type SheetSource } from '../sheets/evening.js';
import type { List, ListCell, ListColumn } from './list.js';

const PROPOSAL = 'Seats that the plan does not state are a proposal: ask at the table before a plate is set down.';

/** Who sits where and gets which dish, table by table; `undefined` where there are no tables. */
export function seatsList(source: SheetSource): Pick<List, 'title' | 'columns' | 'rows' | 'cautions'> | undefined {
    const { plan, service } = source;
    const { tables, guests } = service.seats;
    if (tables.length === 0) {
        return undefined;
    }
    const choices = plan.menu?.courses.filter(({ dishes }) => dishes.length > 1) ?? [];
    return {
        title: 'Seats',
        columns: [
            { key: 'table', head: 'Table' },
            { key: 'seat', head: 'Seat', figures: true },
            { key: 'seat-is', head: 'Seat is' },
            { key: 'guest', head: 'Guest' },
            { key: 'needs', head: 'Needs' },
            { key: 'server', head: 'Server' },
            ...choices.map(({ index, title }): ListColumn => ({ key: `course-${index + 1}`, head: title })),
            { key: 'marked', head: 'Marked plates' },
        ],
        rows: guests.map((guest): ListCell[] => [
            guest.table,
            guest.seat,
            SEAT_IS[guest.stated],
            guestCalled(source, guest),
            needsOf(service.groups[guest.group]),
            serverOf(source, guest.table),
            ...choices.map(({ index, dishes }) => {
                const dish = guest.dishes[index];
                return dish === undefined ? undefined : dishes.find((each) => each.index === dish)?.title;
            }),
            [
                ...(guest.breadMarker === undefined ? [] : [`Bread: ${guest.breadMarker}`]),
                ...guest.markers.flatMap((marker, course) =>
                    marker === undefined ? [] : [`${courseTitle(plan, course)}: ${marker}`],
                ),
            ].join('; '),
        ]),
        cautions: [...(guests.some(({ stated }) => stated !== 'seat') ? [PROPOSAL] : []), CONTACT_CAUTION],
    };
}
