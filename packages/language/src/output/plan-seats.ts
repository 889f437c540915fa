/** Who sits where, and how plates are marked, for the compiled plan. Guests of the list by initials only: health data. */
import type { PlateSort, SeatedGuest } from '../service/seats/types.js';
import type { Telling } from './plan-menu.js';
import type { Json } from './plan-values.js';

/** Said wherever plates are told apart by their guests' needs. */
export const CONTACT_CAUTION =
    'A mark keeps plates apart and nothing else. Keep boards, oil, hands, tongs and surfaces apart as well: traces through contact are not computed. Ask the guest, check every label; the local food code and licensed staff decide.';

/** Absent where no room with tables is in reach. */
export function seatsJson(telling: Telling): Json | undefined {
    const { tables, guests, withoutSeat } = telling.service.seats;
    if (tables.length === 0) {
        return undefined;
    }
    const places = new Map<string, Json[]>(tables.map(({ name }) => [name, []]));
    for (const guest of guests) {
        places.get(guest.table)!.push(placeJson(telling, guest));
    }
    return {
        tables: tables.map(({ name, seats, guests: seated, laid }) => ({
            table: name,
            seats,
            guests: seated,
            covers: laid,
            places: places.get(name),
        })),
        withoutSeat,
        rule: 'Guests whose seat or table the plan states sit there. All others are dealt the free seats, every table filled alike and every sort of guests spread evenly: a proposal, to be asked at the table before a plate is set down.',
        caution: CONTACT_CAUTION,
    };
}

/** How sure a seat is, in words. */
export const SEAT_IS = { seat: 'stated', table: 'dealt at the table stated', nothing: 'dealt' } as const;

function placeJson(telling: Telling, guest: SeatedGuest): Json {
    const { groups } = telling.service;
    const marked = guest.markers.flatMap((marker, course) =>
        marker === undefined ? [] : [{ ...plateOf(telling, course, guest.dishes[course]), marker }],
    );
    const bread =
        guest.breadMarker === undefined ? [] : [{ ...plateOf(telling, -1, guest.bread), marker: guest.breadMarker }];
    const { needs, label } = groups[guest.group]!;
    return {
        seat: guest.seat,
        seatIs: SEAT_IS[guest.stated],
        initials: guest.initials,
        needs: needs.length > 0 ? label : undefined,
        cover: guest.variation + 1,
        marked: [...bread, ...marked],
    };
}

/** The plates of the evening as the pass calls them. */
export function platesJson(telling: Telling): Json[] {
    const { seats, groups } = telling.service;
    return seats.plates.map((plate) => ({
        ...plateOf(telling, plate.course, plate.dish),
        count: plate.count,
        marker: plate.marker,
        because: plate.because.map((reason) => BECAUSE[reason]),
        leftOff: plate.leftOff,
        for: [...new Set(plate.groups.map((group) => groups[group]!.label))],
    }));
}

/** The plates of a course that must not be confused, for the run sheet; with the seats of those that are for some guests alone. */
export function markedPlatesJson(telling: Telling, course: number): Json[] {
    const { plates, guests } = telling.service.seats;
    return plates
        .filter((plate) => plate.course === course && plate.marker !== undefined)
        .map(({ dish, marker, count, groups, because, leftOff }) => {
            const isForSome = because.some((reason) => reason !== 'alike');
            const seated = guests.filter((guest) => guest.dishes[course] === dish && groups.includes(guest.group));
            return {
                marker,
                dish: plateOf(telling, course, dish).dish,
                count,
                leftOff,
                seats: isForSome ? seated.map(({ table, seat }) => ({ table, seat })) : undefined,
            };
        });
}

const BECAUSE: Record<PlateSort['because'][number], string> = {
    allergen: 'an allergen is kept off it',
    'left-off': 'something is left off it',
    diet: 'its dish is for these guests',
    alike: 'another dish of the course comes in the same vessel',
};

function plateOf({ plan, service }: Telling, course: number, dish: number | undefined): Json {
    const served = course < 0 ? service.bread?.serving.course : plan.menu?.courses[course];
    return { course: served?.title, dish: dish === undefined ? undefined : served?.dishes[dish]?.title };
}
