import { counted } from '../../rules/wording.js';
import { roomPicture } from '../drawing/pictures.js';
import { chosenDishes, guestCalled, seatNeeds, serverOf, type SheetSource } from './evening.js';
import { TEXT_WIDTH, type Block, type Card, type Cell, type Sheet } from './sheet.js';

const PROPOSAL = 'Seats that the plan does not state are dealt as a proposal: ask before a plate is set down.';

/** Who sits where, table by table; `undefined` where there are no tables. */
export function seatListSheet(source: SheetSource): Sheet | undefined {
    const { service } = source;
    const { tables, guests } = service.seats;
    const picture = roomPicture(source, undefined, { printedWidth: TEXT_WIDTH });
    return tables.length === 0
        ? undefined
        : {
              name: 'seat-list',
              title: 'Seats',
              subtitle: `${counted(service.guestCount, 'guest')} at ${counted(tables.length, 'table')}`,
              blocks: [
                  ...(picture
                      ? [{ sort: 'picture' as const, svg: picture, caption: 'The room, seen from above', share: 1 }]
                      : []),
                  ...(guests.some(({ stated }) => stated !== 'seat')
                      ? [{ sort: 'text' as const, text: PROPOSAL }]
                      : []),
                  ...tables.flatMap(({ name, guests: count }): Block[] => [
                      {
                          sort: 'heading',
                          text: [name, counted(count, 'guest'), serverOf(source, name)]
                              .filter((word) => word !== undefined)
                              .join(' · '),
                      },
                      seatTable(source, name),
                  ]),
              ],
          };
}

function seatTable(source: SheetSource, table: string): Block {
    const { service } = source;
    const isNamed = service.seats.guests.some((guest) => guestCalled(source, guest) !== '');
    return {
        sort: 'table',
        columns: [
            { head: 'Seat', figures: true, share: 0.09 },
            ...(isNamed ? [{ head: 'Guest', share: 0.24 }] : []),
            { head: 'Dish' },
            // Needs are what is looked for: they stand in one line where names leave the room.
            { head: 'Needs', share: isNamed ? 0.3 : 0.4 },
        ],
        rows: service.seats.guests
            .filter((guest) => guest.table === table)
            .map((guest): Cell[] => {
                const needs = seatNeeds(source, guest);
                return [
                    String(guest.seat),
                    ...(isNamed ? [guestCalled(source, guest)] : []),
                    chosenDishes(source, service.variations[guest.variation]!)
                        .map(({ title }) => title)
                        .join(', '),
                    needs === '' ? '' : { text: needs, strong: true },
                ];
            }),
    };
}

/** A card for each place, to be cut out. What a guest needs stands on none: everybody can read them. */
export function placeCardSheet(source: SheetSource): Sheet | undefined {
    const { guests } = source.service.seats;
    return guests.length === 0
        ? undefined
        : {
              name: 'place-cards',
              title: 'Place cards',
              subtitle: source.names ? 'Cut along the lines' : 'Cut along the lines; names are printed when asked for',
              blocks: [
                  {
                      sort: 'cards',
                      cards: guests.map((guest): Card => {
                          const name = guestCalled(source, guest);
                          const place = `Table ${guest.table}, seat ${guest.seat}`;
                          return name === '' ? { title: place, lines: [] } : { title: name, lines: [place] };
                      }),
                  },
              ],
          };
}
