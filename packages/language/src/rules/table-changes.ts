import type { CustomName } from '../plan/customs.js';
import { fromComputing, toComputing, type Quantity, type UnitName } from '../plan/quantity.js';
import type { Plan, Tables } from '../plan/types.js';
import type { Change } from './room-trial.js';
import { nameOfTables } from './room-words.js';
import { counted, quoted } from './wording.js';

/** What can be changed of the tables of a room, and the plan as it would then be. */

function withTables(plan: Plan, from: Tables, to: Tables): Plan {
    const tables = plan.room!.tables.map((each) => (each === from ? to : each));
    return { ...plan, room: { ...plan.room!, tables } };
}

/** Fewer guests at each table of a line. */
export function fewerSeats(plan: Plan, tables: Tables): Change[] {
    const { seats, names } = tables;
    return [1, 2, 3, 4].flatMap((fewer): Change[] => {
        const count = (seats?.count ?? 0) - fewer;
        return seats && count >= 2
            ? [
                  {
                      title: `Seat ${count} at ${names.length > 1 ? 'each of ' : ''}${quoted(nameOfTables(tables))}`,
                      changes: [{ do: 'replace', at: seats.origin, words: String(count) }],
                      plan: withTables(plan, tables, { ...tables, seats: { ...seats, count } }),
                  },
              ]
            : [];
    });
}

/** Fewer guests at each, and as many tables more as seat the others. */
export function fewerSeatsAndMoreTables(plan: Plan, tables: Tables): Change[] {
    const { seats, last, names, first } = tables;
    return [1, 2, 3, 4].flatMap((fewer): Change[] => {
        const count = (seats?.count ?? 0) - fewer;
        const longer =
            seats && last && count >= 2
                ? moreNames(plan, tables, Math.ceil((names.length * seats.count) / count) - names.length)
                : undefined;
        return seats && last && longer
            ? [
                  {
                      title: `Seat ${count} at each of ${quoted(`${first.name} to ${longer.at(-1)!}`)}: ${counted(longer.length - names.length, 'table')} more`,
                      changes: [
                          { do: 'replace', at: seats.origin, words: String(count) },
                          { do: 'replace', at: last.origin, words: longer.at(-1)! },
                      ],
                      plan: withTables(plan, tables, { ...tables, seats: { ...seats, count }, names: longer }),
                  },
              ]
            : [];
    });
}

/** More tables of the same sort, as many as seat so many guests more. */
export function moreTables(plan: Plan, tables: Tables, guests: number): Change[] {
    const { seats, last, first } = tables;
    if (!seats || !last || guests === 0) {
        return [];
    }
    const more = Math.ceil(guests / seats.count);
    const longer = moreNames(plan, tables, more);
    return longer
        ? [
              {
                  title: `Set up ${quoted(`${first.name} to ${longer.at(-1)!}`)}: ${counted(more, 'table')} more`,
                  changes: [{ do: 'replace', at: last.origin, words: longer.at(-1)! }],
                  plan: withTables(plan, tables, { ...tables, names: longer }),
              },
          ]
        : [];
}

/** More guests at each table of a line. */
export function moreSeats(plan: Plan, tables: Tables, guests: number): Change[] {
    const { seats, names } = tables;
    if (!seats || guests === 0) {
        return [];
    }
    const count = seats.count + Math.ceil(guests / names.length);
    return [
        {
            title: `Seat ${count} at ${names.length > 1 ? 'each of ' : ''}${quoted(nameOfTables(tables))}`,
            changes: [{ do: 'replace', at: seats.origin, words: String(count) }],
            plan: withTables(plan, tables, { ...tables, seats: { ...seats, count } }),
        },
    ];
}

/** The names of a range gone on with, where no other table has them. */
function moreNames({ room }: Plan, { names, last }: Tables, more: number): string[] | undefined {
    const others = new Set(room!.tables.flatMap((tables) => tables.names));
    const numbered = /^(.*?)(\d+)$/.exec(last!.name);
    const letter = /^[A-Za-z]$/.test(last!.name) ? last!.name.charCodeAt(0) : undefined;
    if (more < 1 || (!numbered && letter === undefined)) {
        return undefined;
    }
    const added = Array.from({ length: more }, (_, index) =>
        numbered ? `${numbered[1]}${Number(numbered[2]) + 1 + index}` : String.fromCharCode(letter! + 1 + index),
    );
    if (!numbered && !added.every((name) => /^[A-Za-z]$/.test(name))) {
        return undefined;
    }
    return added.some((name) => others.has(name)) ? undefined : [...names, ...added];
}

/** Tables as they are bought, across or along: inches (quantities §7.1), and the sizes near them in centimetres. */
const SIZES = { inch: [30, 36, 48, 54, 60, 66, 72, 84, 96, 120], cm: [75, 90, 120, 140, 150, 170, 180, 210, 240, 300] };
/** Depths of long tables. */
const DEPTHS = { inch: [30, 36, 42, 48, 60], cm: [75, 90, 105, 120, 150] };

/** The next larger sizes of the table. */
export function widerTables(plan: Plan, tables: Tables): Change[] {
    const { size, depth, joined } = tables;
    if (joined && joined.count > 1) {
        const count = joined.count + 1;
        return [
            {
                title: `Join ${count} tables for ${quoted(nameOfTables(tables))}`,
                changes: [{ do: 'replace', at: joined.origin, words: String(count) }],
                plan: withTables(plan, tables, { ...tables, joined: { ...joined, count } }),
            },
        ];
    }
    const long = depth && depth.value > size.value ? depth : size;
    return larger(long, SIZES).map((next): Change => {
        const changed = long === size ? { size: next } : { depth: next };
        return {
            title: `Take tables of ${next.written} for ${quoted(nameOfTables(tables))}`,
            changes: [{ do: 'replace', at: long.origin, words: next.written }],
            plan: withTables(plan, tables, { ...tables, ...changed }),
        };
    });
}

/** The same long table, deeper. */
export function deeperTables(plan: Plan, tables: Tables): Change[] {
    const { size, depth } = tables;
    if (!depth) {
        return [];
    }
    const short = depth.value > size.value ? size : depth;
    return larger(short, DEPTHS).map((next): Change => {
        const changed = short === size ? { size: next } : { depth: next };
        return {
            title: `Take tables ${next.written} deep for ${quoted(nameOfTables(tables))}`,
            changes: [{ do: 'replace', at: short.origin, words: next.written }],
            plan: withTables(plan, tables, { ...tables, ...changed }),
        };
    });
}

/** Sizes above a figure, smallest first, written in its unit. */
function larger(figure: Quantity, { inch, cm }: typeof SIZES): Quantity[] {
    const { unit, value } = figure;
    const isImperial = unit === 'inch' || unit === 'ft';
    const [from, sizes]: [UnitName, readonly number[]] = isImperial ? ['inch', inch] : ['cm', cm];
    const shown: UnitName = unit ?? 'mm';
    return sizes
        .map((size) => toComputing(size, from))
        .filter((size) => size > value + 1)
        .map((size) => ({
            ...figure,
            value: size,
            written: `${Number(fromComputing(size, shown).toFixed(3))} ${shown}`,
        }));
}

/** Another word for a custom that the house has declared. */
export function otherCustom(
    plan: Plan,
    name: CustomName & ('napkin' | 'glass-shape' | 'dessert'),
    value: string,
): Change[] {
    const { house, customs } = plan;
    const declared = house.customs.find((custom) => custom.name.name === name);
    if (!house.origin || customs[name].value === value) {
        return [];
    }
    return [
        {
            title: `Lay by the custom ${quoted(`${name}: ${value}`)}`,
            changes: [
                {
                    do: 'set-custom',
                    house: house.origin,
                    laying: house.layingOrigin,
                    custom: declared?.origin,
                    name,
                    value,
                },
            ],
            plan: { ...plan, customs: { ...customs, [name]: { value, origin: house.origin } } },
        },
    ];
}

/** A table moved away from what it is too near, along the width or the depth of the room. */
export function movedTables(plan: Plan, tables: Tables, by: number): Change[] {
    const { at, first } = tables;
    if (!at) {
        return [];
    }
    // A move that is written in round figures: up to the next tenth of a metre, or four inches.
    const isImperial = at.x.unit === 'inch' || at.x.unit === 'ft';
    const step = isImperial ? toComputing(4, 'inch') : 100;
    const far = Math.ceil(by / step) * step;
    const to = (figure: Quantity, millimetres: number): Quantity => {
        const unit = figure.unit ?? 'mm';
        return {
            ...figure,
            value: millimetres,
            written: `${Number(fromComputing(millimetres, unit).toFixed(2))} ${unit}`,
        };
    };
    return [1, 2, 3].flatMap((times) =>
        [
            [1, 0],
            [-1, 0],
            [0, 1],
            [0, -1],
            [1, 1],
            [-1, -1],
            [1, -1],
            [-1, 1],
        ].map(([dx, dy]): Change => {
            const x = to(at.x, at.x.value + dx! * far * times);
            const y = to(at.y, at.y.value + dy! * far * times);
            return {
                title: `Move ${quoted(first.name)} to ${x.written} by ${y.written}`,
                changes: [
                    ...(dx === 0 ? [] : [{ do: 'replace', at: at.x.origin, words: x.written } as const]),
                    ...(dy === 0 ? [] : [{ do: 'replace', at: at.y.origin, words: y.written } as const]),
                ],
                plan: withTables(plan, tables, { ...tables, at: { x, y } }),
            };
        }),
    );
}

/** So many accessible places more at one line of tables, the same number at each; the line that adds fewest to a table first. */
export function moreAccessible(plan: Plan, places: number): Change[] {
    const added = ({ names }: Tables): number => Math.ceil(places / names.length);
    return plan
        .room!.tables.toSorted((a, b) => added(a) - added(b) || a.names.length - b.names.length)
        .map((tables): Change => {
            const { accessible, names, origin } = tables;
            const count = (accessible?.count ?? 0) + added(tables);
            return {
                title: `Make ${counted(count, 'place')} accessible at ${names.length > 1 ? 'each of ' : ''}${quoted(nameOfTables(tables))}`,
                changes: [
                    accessible
                        ? { do: 'replace', at: accessible.origin, words: String(count) }
                        : { do: 'append', at: origin, words: `, ${count} accessible` },
                ],
                plan: withTables(plan, tables, {
                    ...tables,
                    accessible: { count, origin: accessible?.origin ?? origin },
                }),
            };
        });
}
