import { needAsWritten, sortOf } from '../../rules/guest-words.js';
import { listed } from '../../rules/wording.js';
import { isMeantFor } from '../../service/drinks/drinkers.js';
import { keptFromPour, type KeptFromPour } from '../../service/drinks/kept-from.js';
import { markOf } from '../../service/seats/markers.js';
import type { SeatedGuest } from '../../service/seats/types.js';
import type { GuestGroup, PourFacts } from '../../service/types.js';
import type { Pour } from '../../plan/types.js';
import { courseTitle, pieceCalled, serverOf, type SheetSource } from './evening.js';
import { seatNumbers } from './plates-at-table.js';
import type { Block, Cell } from './sheet.js';

/**
 * What is poured when, into which glass, how much of it, who does not get it and what they get; nothing where nothing is poured.
 * @param guests of a station, who are told by their seats; where absent or none, guests are told by their numbers
 */
export function poursTable(source: SheetSource, guests: readonly SeatedGuest[] = []): Block[] {
    const { plan, service } = source;
    const { water } = plan.menu ?? {};
    const called = water?.pour.glass?.name;
    const rows = [
        ...(water
            ? [
                  [
                      'All courses',
                      { text: `Water, ${listed(water.choices, 'or')}`, strong: true },
                      howMuch(source, water.pour, called),
                      '',
                  ] as Cell[],
              ]
            : []),
        ...service.pours
            .filter(({ course }) => course >= 0)
            .map((facts): Cell[] => {
                const kept = keptWords(source, facts, guests);
                return [
                    courseTitle(plan, facts.course),
                    { text: facts.pour.title, strong: true },
                    [howMuch(source, facts.pour, facts.glass?.name), ...forWhom(source, facts, guests)].join('; '),
                    kept === '' ? '' : { text: kept, strong: true },
                ];
            }),
    ];
    return rows.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Pours' },
              {
                  sort: 'table',
                  columns: [
                      { head: 'With', share: 0.19 },
                      { head: 'Drink', share: 0.18 },
                      { head: 'How much' },
                      { head: 'Not for: what they get', share: 0.34 },
                  ],
                  rows,
              },
          ];
}

/** `100 ml in white wine glass, at 9 °C; the host tastes first; 1 refill; or Sorrel cordial`. */
function howMuch({ plan }: SheetSource, pour: Pour, glass: string | undefined): string {
    const amount = [pour.amount?.written, glass && `in ${pieceCalled(plan, glass)}`];
    return [
        amount.filter((word) => word !== undefined).join(' '),
        pour.temperature && `at ${pour.temperature.written}`,
        pour.tasted ? 'the host tastes first' : undefined,
        pour.refills && `${pour.refills.count} ${pour.refills.count === 1 ? 'refill' : 'refills'}`,
        pour.toppedUpUntil && `topped up until ${pour.toppedUpUntil.name}`,
        pour.instead.length > 0 ? `or ${pour.instead.map(({ title }) => title).join(', ')}` : undefined,
    ]
        .filter((word) => word !== undefined && word !== '')
        .join('; ');
}

/** Whom alone it is for: guests of a dish, of a need, so many of them. */
function forWhom({ plan, service }: SheetSource, { pour, dish }: PourFacts, guests: readonly SeatedGuest[]): string[] {
    const { who } = pour;
    const only = dish ? [`with ${dish.title} only`] : [];
    if (who?.sort !== 'some') {
        return only;
    }
    const number = who.count ? String(who.count.count) : who.share?.written;
    const needs = who.needs.map(needAsWritten);
    const meant =
        number === undefined && needs.length > 0
            ? guests.filter(({ group }) => isMeantFor(who, service.groups[group]!, plan))
            : undefined;
    const seats = meant && guests.length > 0 ? ` (${meant.length > 0 ? seatsOf(meant) : 'none here'})` : '';
    return [...only, `only for ${[number, ...needs].filter((word) => word !== undefined).join(' ')}${seats}`];
}

/** Guests of the same needs who may not have a pour. */
interface Kept {
    readonly group: GuestGroup;
    count: number;
    /** Those of the station. */
    readonly guests: SeatedGuest[];
}

/** `T1 seat 1 (H), T1 seat 8 (no sulphites): Elder cordial`; in numbers `8 children, 4 halal guests: Elder cordial`. */
function keptWords(source: SheetSource, facts: PourFacts, guests: readonly SeatedGuest[]): string {
    const { plan, service } = source;
    const byDrink = new Map<string, Map<string, Kept>>();
    for (const kept of keptFromPour(plan, service, facts)) {
        const own = guests.filter((guest) => isKept(facts, kept, guest));
        if (guests.length === 0 || own.length > 0) {
            const drink = kept.instead?.pour.title ?? 'nothing is planned in its place';
            const who = byDrink.get(drink) ?? new Map<string, Kept>();
            const words = guests.length > 0 ? markOf(kept.group.needs, plan.cupboard) : sortOf(kept.group);
            const known = who.get(words) ?? { group: kept.group, count: 0, guests: [] };
            known.count += kept.count;
            known.guests.push(...own);
            who.set(words, known);
            byDrink.set(drink, who);
        }
    }
    return [...byDrink]
        .map(([drink, who]) => {
            const all = [...who].map(([words, { group, count, guests: own }]) =>
                guests.length > 0 ? `${seatsOf(own)} (${words})` : `${count} ${sortOf(group, count === 1)}`,
            );
            return `${all.join(', ')}: ${drink}`;
        })
        .join('; ');
}

/** Of a dish's own pour only guests who get the dish are meant. */
const isKept = ({ dish, course }: PourFacts, { group }: KeptFromPour, guest: SeatedGuest): boolean =>
    guest.group === group.index && (!dish || guest.dishes[course] === dish.index);

/** `T1 seats 4, 5 and T2 seat 1`. */
function seatsOf(guests: readonly SeatedGuest[]): string {
    const tables = [...new Set(guests.map(({ table }) => table))];
    return listed(
        tables.map((table) => {
            const own = guests.filter((guest) => guest.table === table);
            return `${table} seat${own.length > 1 ? 's' : ''} ${seatNumbers(own)}`;
        }),
    );
}

/** A line for two people for every glass that an allergen keeps from a guest: who fills it and who sets it down. */
export function glassChecks(source: SheetSource, isOwn: (guest: SeatedGuest) => boolean = () => true): Block[] {
    const { plan, service } = source;
    return service.pours.flatMap((facts) =>
        keptFromPour(plan, service, facts)
            .filter(({ isAllergen }) => isAllergen)
            .flatMap((kept) =>
                service.seats.guests
                    .filter((guest) => isOwn(guest) && isKept(facts, kept, guest))
                    .map(({ table, seat }): Block => ({
                        sort: 'check',
                        text: `${markOf(kept.group.needs, plan.cupboard)} · ${table} seat ${seat} · ${courseTitle(plan, facts.course)}: no ${facts.pour.title}${
                            kept.instead ? `, but ${kept.instead.pour.title}` : ''
                        }`,
                        by: ['bar', serverOf(source, table) ?? 'server'],
                    })),
            ),
    );
}
