import type { Room, Tables } from '../../plan/types.js';
import { listed, quoted } from '../../rules/wording.js';
import { paired, type Change, type Compared } from './change.js';
import { changedFacts, changedThings, type Facts, type Thing } from './facts.js';
import { saidCount } from './dish-facts.js';
import { isSaid, said } from './said.js';

/** The room and its tables. Tables that change alike are told together. */
export function changedRoom({ plan: before }: Compared, { plan: after }: Compared): Change[] {
    const theRoom = (room: Room | undefined): Thing<Room>[] =>
        room ? [{ key: 'room', called: 'the room', of: room }] : [];
    return [
        ...changedThings('room', ROOM, theRoom(before.room), theRoom(after.room)),
        ...changedTables(tablesOf(before.room), tablesOf(after.room)),
    ];
}

const ROOM: Facts<Room> = {
    'is called': ({ title }) => said(quoted(title)),
    measures: ({ width, depth }) => said(width, ['by', depth]),
    'air at': ({ temperature }) => said(temperature),
    'aisles of': ({ aisle }) => said(aisle),
    'the kitchen comes in': ({ pass }) => said(pass && `on the ${pass.wall}`),
};

const TABLE: Facts<Tables> = {
    '': ({ shape, size, depth, joined }) => said(['row of', joined?.count], shape.name, size, ['by', depth]),
    seats: ({ seats }) => saidCount(seats),
    'accessible places:': ({ accessible }) => saidCount(accessible),
    at: ({ at }) => said(at?.x, ['by', at?.y]),
    turned: ({ turned }) => isSaid(turned),
};

interface OneTable {
    readonly name: string;
    readonly tables: Tables;
}

const tablesOf = (room: Room | undefined): OneTable[] =>
    (room?.tables ?? []).flatMap((tables) => tables.names.map((name) => ({ name, tables })));

function changedTables(before: readonly OneTable[], after: readonly OneTable[]): Change[] {
    const alike = new Map<string, string[]>();
    for (const { key, was, is } of paired(before, after, ({ name }) => name)) {
        for (const text of tellTable(was?.tables, is?.tables)) {
            alike.set(text, [...(alike.get(text) ?? []), key]);
        }
    }
    return [...alike].map(([text, names]) => ({
        subject: 'room',
        key: `${names.join(' ')}: ${text}`,
        text: `${names.length === 1 ? 'table' : 'tables'} ${listed(names)}: ${text}`,
    }));
}

function tellTable(was: Tables | undefined, is: Tables | undefined): string[] {
    if (was && is) {
        const nameless = (of: Tables): Thing<Tables> => ({ key: '', called: '', of });
        return changedFacts('room', TABLE, nameless(was), nameless(is)).map(({ text }) => text);
    }
    return [is ? `new, ${TABLE['']!(is)!.text}${is.seats ? `, ${is.seats.count} seats` : ''}` : 'gone'];
}
