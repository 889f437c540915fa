import { needAsWritten, sortOf } from '../../rules/guest-words.js';
import { listed } from '../../rules/wording.js';
import { isMeantFor } from '../../service/drinks/drinkers.js';
import { isKeptFromPour, keptFromCoffee, keptFromPour, type KeptFromCoffee } from '../../service/drinks/kept-from.js';
import { markOf } from '../../service/seats/markers.js';
import type { SeatedGuest } from '../../service/seats/types.js';
import type { GuestGroup, PourFacts } from '../../service/types.js';
import type { Accompaniment, Pour } from '../../plan/types.js';
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
                const kept = keptFromPour(plan, service, facts).map((each) => ({
                    ...each,
                    gets: each.instead?.pour.title ?? 'nothing is planned in its place',
                    own: guests.filter((guest) => isKeptFromPour(facts, each, guest)),
                }));
                return [
                    courseTitle(plan, facts.course),
                    { text: facts.pour.title, strong: true },
                    [howMuch(source, facts.pour, facts.glass?.name), ...forWhom(source, facts, guests)].join('; '),
                    keptCell(source, kept, guests),
                ];
            }),
        ...coffeeRow(source, guests),
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

/** Coffee goes round the table with what is beside it, and is a drink like the others. */
function coffeeRow(source: SheetSource, guests: readonly SeatedGuest[]): Cell[][] {
    const { plan, service } = source;
    if (!service.coffee) {
        return [];
    }
    const { coffee, cup, after } = service.coffee;
    const besides = coffee.accompaniments.map(besideCalled);
    const how = [
        cup && `in ${pieceCalled(plan, cup.name)}`,
        coffee.temperature && `at ${coffee.temperature.written}`,
        coffee.onRequest ? 'on request' : undefined,
        besides.length > 0 ? `with ${listed(besides)}` : undefined,
    ];
    const kept = keptFromCoffee(plan, service.groups).map((each) => ({
        ...each,
        gets: coffeeFor(each),
        own: guests.filter(({ group }) => group === each.group.index),
    }));
    return [
        [
            `After ${courseTitle(plan, after)}`,
            { text: 'Coffee', strong: true },
            how.filter((word) => word !== undefined).join('; '),
            keptCell(source, kept, guests),
        ],
    ];
}

const besideCalled = ({ title, sort }: Accompaniment): string => title ?? sort;

const coffeeFor = ({ without }: KeptFromCoffee): string =>
    without ? `without ${listed(without.map(besideCalled))}` : 'no coffee';

/** Guests of one group who may not have something, and what they get. */
interface Kept {
    readonly group: GuestGroup;
    readonly count: number;
    readonly gets: string;
    /** Those of the station. */
    readonly own: readonly SeatedGuest[];
}

/** `T1 seat 1 (H), T1 seat 8 (no sulphites): Elder cordial`; in numbers `8 children, 4 halal guests: Elder cordial`. */
function keptCell({ plan }: SheetSource, kept: readonly Kept[], guests: readonly SeatedGuest[]): Cell {
    const bySeat = guests.length > 0;
    const here = kept.filter(({ own }) => !bySeat || own.length > 0);
    const text = [...groupBy(here, ({ gets }) => gets)]
        .map(([gets, who]) => {
            const alike = groupBy(who, ({ group }) => (bySeat ? markOf(group.needs, plan.cupboard) : sortOf(group)));
            const all = [...alike].map(([words, same]) => {
                const count = same.reduce((sum, each) => sum + each.count, 0);
                return bySeat
                    ? `${seatsOf(same.flatMap(({ own }) => own))} (${words})`
                    : `${count} ${sortOf(same[0]!.group, count === 1)}`;
            });
            return `${all.join(', ')}: ${gets}`;
        })
        .join('; ');
    return text === '' ? '' : { text, strong: true };
}

function groupBy<Value>(values: readonly Value[], keyOf: (value: Value) => string): Map<string, Value[]> {
    const groups = new Map<string, Value[]>();
    for (const value of values) {
        const key = keyOf(value);
        groups.set(key, [...(groups.get(key) ?? []), value]);
    }
    return groups;
}

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

type IsOwn = (guest: SeatedGuest) => boolean;

/** A line for two people for every glass that an allergen keeps from a guest: who fills it and who sets it down. */
export function glassChecks(source: SheetSource, isOwn: IsOwn = () => true): Block[] {
    const { plan, service } = source;
    return service.pours.flatMap((facts) =>
        keptFromPour(plan, service, facts)
            .filter(({ isAllergen }) => isAllergen)
            .flatMap((kept) => {
                const instead = kept.instead ? `, but ${kept.instead.pour.title}` : '';
                const what = `${courseTitle(plan, facts.course)}: no ${facts.pour.title}${instead}`;
                return service.seats.guests
                    .filter((guest) => isOwn(guest) && isKeptFromPour(facts, kept, guest))
                    .map((guest) => checkLine(source, guest, what));
            }),
    );
}

/** The same for every cup of coffee that an allergen keeps from a guest, or something beside it. */
export function cupChecks(source: SheetSource, isOwn: IsOwn = () => true): Block[] {
    const { plan, service } = source;
    return keptFromCoffee(plan, service.groups)
        .filter(({ isAllergen }) => isAllergen)
        .flatMap((kept) =>
            service.seats.guests
                .filter((guest) => isOwn(guest) && guest.group === kept.group.index)
                .map((guest) => checkLine(source, guest, `Coffee: ${coffeeFor(kept)}`)),
        );
}

function checkLine(source: SheetSource, { group, table, seat }: SeatedGuest, what: string): Block {
    const mark = markOf(source.service.groups[group]!.needs, source.plan.cupboard);
    return {
        sort: 'check',
        text: `${mark} · ${table} seat ${seat} · ${what}`,
        by: ['bar', serverOf(source, table) ?? 'server'],
    };
}
