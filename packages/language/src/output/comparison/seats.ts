import { initials } from '../../service/seats/initials.js';
import type { SeatedGuest } from '../../service/seats/types.js';
import { sortOf } from '../../rules/guest-words.js';
import { listed, quoted } from '../../rules/wording.js';
import type { NamedGuest } from '../../plan/types.js';
import { paired, type Change, type Compared } from './change.js';
import { changedThings, type Facts, type Thing } from './facts.js';
import { saidList } from './said.js';

/** Where guests with needs sit who were dealt a seat, whose place a seat is, and what is served at a seat that the plan names. */
export function changedSeats(before: Compared, after: Compared): Change[] {
    return [...movedGuests(before, after), ...changedPlaces(before, after), ...changedChoices(before, after)];
}

/** A seat that the plan states is told with the guest's needs. */
function movedGuests(before: Compared, after: Compared): Change[] {
    const dealt = ({ service }: Compared) => {
        const seats = new Map<string, string[]>();
        for (const guest of service.seats.guests) {
            const group = service.groups[guest.group]!;
            if (group.needs.length > 0 && guest.stated !== 'seat') {
                const guests = sortOf(group);
                seats.set(guests, [...(seats.get(guests) ?? []), seatOf(guest)]);
            }
        }
        // Whom a plate can hurt comes first.
        const isWithout = (guests: string): boolean => guests.includes('without');
        return [...seats]
            .map(([guests, at]) => ({ guests, at }))
            .toSorted((a, b) => Number(isWithout(b.guests)) - Number(isWithout(a.guests)));
    };
    return paired(dealt(before), dealt(after), ({ guests }) => guests).flatMap(({ key, was, is }): Change[] => {
        const [old, now] = [was?.at ?? [], is?.at ?? []];
        const left = old.filter((seat) => !now.includes(seat));
        const taken = now.filter((seat) => !old.includes(seat));
        // Guests who are no longer there are told as such.
        if (!is || (left.length === 0 && taken.length === 0)) {
            return [];
        }
        const places =
            taken.length === 0
                ? `no longer at ${listed(left)}`
                : left.length === 0
                  ? `${old.length === 0 ? '' : 'also '}at ${listed(taken)}`
                  : `at ${listed(taken)} now, not at ${listed(left)}`;
        return [{ subject: 'guests', key: `seats of ${key}`, text: `${key}: ${places}` }];
    });
}

/** Whose place it is, by initials: a guest list is health data. And what they have chosen. */
function changedPlaces(before: Compared, after: Compared): Change[] {
    const listedGuests = ({ plan }: Compared): Thing<NamedGuest>[] =>
        plan.seating.map((guest) => {
            const { seat } = guest;
            const place = seat ? `${seat.table.name}${seat.seat ? ` seat ${seat.seat.count}` : ''}` : 'no seat stated';
            return { key: `place ${place}`, called: place, of: guest };
        });
    return changedThings(
        'guests',
        NAMED_GUEST,
        listedGuests(before),
        listedGuests(after),
        ({ name }) => `: the place of ${initials(name.text)}`,
        'is no longer the place of a guest of the list',
    );
}

const NAMED_GUEST: Facts<NamedGuest> = {
    'the place of': ({ name }) => ({ text: initials(name.text), means: name.text }),
    'has chosen': ({ chooses }) =>
        saidList(
            chooses.map(({ text }) => quoted(text)),
            ' and ',
        ),
};

/** Guests with needs are told with what all of their sort get. */
function changedChoices(before: Compared, after: Compared): Change[] {
    const plates = ({ plan, service }: Compared) =>
        service.seats.guests
            .filter(({ stated, group }) => stated === 'seat' && service.groups[group]!.needs.length === 0)
            .flatMap((guest) =>
                guest.dishes.flatMap((index, course) => {
                    const { title = '', dishes = [] } = plan.menu?.courses[course] ?? {};
                    const dish = dishes.find((each) => each.index === index)?.title;
                    return dish === undefined || dishes.length === 1
                        ? []
                        : [
                              {
                                  key: `${seatOf(guest)}: ${title}`,
                                  dish,
                                  called: `${seatOf(guest)} gets ${quoted(dish)} for ${quoted(title)}`,
                              },
                          ];
                }),
            );
    return paired(plates(before), plates(after), ({ key }) => key).flatMap(({ key, was, is }): Change[] =>
        !is || was?.dish === is.dish
            ? []
            : [{ subject: 'guests', key, text: `${is.called}${was ? `, not ${quoted(was.dish)}` : ''}` }],
    );
}

const seatOf = ({ table, seat }: Pick<SeatedGuest, 'table' | 'seat'>): string => `${table} seat ${seat}`;
