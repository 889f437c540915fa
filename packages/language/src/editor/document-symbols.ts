import { SymbolKind, type DocumentSymbol, type SymbolInformation } from 'vscode-languageserver';
import type { Origin } from '../plan/origin.js';
import type { Course, Dish, Menu, Pour, Reading } from '../plan/types.js';
import { eveningClock } from '../service/clock/evening.js';
import type { Folder } from './folder.js';
import { eventsWith } from './names.js';
import type { Place } from './workspace.js';

/** One line of the outline, before it has lines and columns. */
interface Entry {
    readonly name: string;
    readonly detail?: string;
    readonly kind: SymbolKind;
    /** Everything it is made of. */
    readonly at: Origin;
    /** What to show when it is gone to. */
    readonly head?: Origin;
    readonly inside?: readonly Entry[];
}

/** The outline of a file: events, courses with their dishes and pours, tables, pieces; what happens at a time says when. */
export function documentSymbols(place: Place): DocumentSymbol[] {
    return symbolsOf(place, timesIn(place));
}

function symbolsOf({ folder, path }: Place, times: Times): DocumentSymbol[] {
    const reading = folder.readingOf(path);
    const entries = reading ? entriesOf(reading, times) : [];
    return entries.sort((a, b) => a.at.start - b.at.start).flatMap((entry) => symbolOf(folder, entry) ?? []);
}

/** What the clocks show when something begins, by where it stands in the file. */
type Times = ReadonlyMap<number, string>;

const NO_TIMES: Times = new Map();

/** When the courses of a file are set down, and its toasts and speeches held; nothing where several events use the file. */
function timesIn({ folder, path }: Place): Times {
    const events = eventsWith(folder, path);
    if (events.length > 1) {
        return NO_TIMES;
    }
    const { plan, service } = folder.checked(events[0] ?? path);
    const clock = eveningClock(plan);
    const { menu } = plan;
    if (!clock || !menu || !service.run) {
        return NO_TIMES;
    }
    const moments: readonly (readonly [Origin | undefined, number])[] = [
        ...service.run.courses.map(
            ({ course, served }) => [menu.courses[course]?.origin ?? menu.coffee?.origin, served.first] as const,
        ),
        ...service.run.speeches.map(({ speech, start }) => [menu.speeches[speech]?.origin, start] as const),
    ];
    return new Map(
        moments.flatMap(([at, minutes]) => (at?.file === path ? [[at.start, clock.face(minutes)] as const] : [])),
    );
}

/** The same as a list, for clients that know no tree. */
export function flatSymbols(place: Place): SymbolInformation[] {
    const uri = place.folder.uriOf(place.path);
    const flat = (symbol: DocumentSymbol, within?: string): SymbolInformation[] => [
        {
            name: symbol.name,
            kind: symbol.kind,
            location: { uri, range: symbol.range },
            ...(within === undefined ? {} : { containerName: within }),
        },
        ...(symbol.children ?? []).flatMap((child) => flat(child, symbol.name)),
    ];
    return symbolsOf(place, NO_TIMES).flatMap((symbol) => flat(symbol));
}

/** Things of the folders whose name holds what is typed, letters in order. */
export function workspaceSymbols(folders: readonly Folder[], query: string, mostFound = 200): SymbolInformation[] {
    const letters = [...query.toLowerCase()];
    const isMeant = (name: string): boolean => {
        let at = 0;
        return letters.every((letter) => (at = name.indexOf(letter, at) + 1) > 0);
    };
    const all = folders.flatMap((folder) => folder.plans.flatMap((path) => flatSymbols({ folder, path })));
    return all.filter(({ name }) => isMeant(name.toLowerCase())).slice(0, mostFound);
}

function symbolOf(folder: Folder, { name, detail, kind, at, head, inside = [] }: Entry): DocumentSymbol | undefined {
    const range = folder.rangeOf(at);
    const selection = head && head.start >= at.start && head.end <= at.end ? folder.rangeOf(head) : range;
    if (!range || !selection) {
        return undefined;
    }
    const children = [...inside]
        .sort((a, b) => a.at.start - b.at.start)
        .flatMap((entry) => symbolOf(folder, entry) ?? []);
    return {
        name: name === '' ? '…' : name,
        ...(detail === undefined ? {} : { detail }),
        kind,
        range,
        selectionRange: selection,
        ...(children.length > 0 ? { children } : {}),
    };
}

function entriesOf(reading: Reading, times: Times): Entry[] {
    return [
        ...reading.events.map((event): Entry => ({
            name: event.title,
            detail: ['event', event.date?.written, event.seated?.written]
                .filter((part) => part !== undefined)
                .join(' '),
            kind: SymbolKind.Event,
            at: event.origin,
            head: event.titleOrigin,
        })),
        ...reading.menus.map((menu): Entry => ({
            name: 'menu',
            kind: SymbolKind.Module,
            at: menu.origin,
            inside: menuEntries(menu, times),
        })),
        ...reading.houses.flatMap((house): Entry[] =>
            house.origin
                ? [{ name: house.title, detail: 'house', kind: SymbolKind.Package, at: house.origin, head: house.head }]
                : [],
        ),
        ...reading.rooms.map((room): Entry => ({
            name: room.title,
            detail: 'room',
            kind: SymbolKind.Namespace,
            at: room.origin,
            head: room.head,
            inside: room.tables.map((tables) => ({
                name: tables.names.length > 1 ? `${tables.names[0]} to ${tables.names.at(-1)}` : tables.first.name,
                detail: `${tables.shape.name} ${tables.size.written}`,
                kind: SymbolKind.Field,
                at: tables.origin,
                head: tables.first.origin,
            })),
        })),
        ...reading.teams.map((team): Entry => ({ name: 'team', kind: SymbolKind.Namespace, at: team.origin })),
        ...reading.pieces.map((piece): Entry => ({
            name: piece.name,
            detail: piece.family,
            kind: SymbolKind.Class,
            at: piece.origin,
            head: piece.nameOrigin,
        })),
        ...reading.kinds.map((kind): Entry => ({
            name: kind.name,
            detail: kind.sort,
            kind: SymbolKind.Interface,
            at: kind.origin,
            head: kind.nameOrigin,
        })),
        ...reading.substances.map((substance): Entry => ({
            name: substance.name,
            detail: substance.sort,
            kind: SymbolKind.EnumMember,
            at: substance.origin,
            head: substance.nameOrigin,
        })),
        ...reading.diets.map((diet): Entry => ({
            name: diet.name,
            detail: 'diet',
            kind: SymbolKind.EnumMember,
            at: diet.origin,
            head: diet.nameOrigin,
        })),
        ...reading.codes.map((code): Entry => ({
            name: code.name,
            detail: 'local code',
            kind: SymbolKind.Module,
            at: code.origin,
            head: code.nameOrigin,
        })),
        ...reading.guests.map((guest): Entry => ({
            name: guest.name.text,
            detail: guest.seat ? `${guest.seat.table.name} ${guest.seat.seat?.count ?? ''}`.trim() : undefined,
            kind: SymbolKind.Object,
            at: guest.origin,
            head: guest.name.origin,
        })),
    ];
}

function menuEntries(menu: Menu, times: Times): Entry[] {
    const at = ({ start }: Origin, detail?: string): string | undefined =>
        [detail, times.get(start)].filter((part) => part !== undefined).join(', ') || undefined;
    return [
        ...menu.courses.map((course) => ({ ...courseEntry(course), detail: at(course.origin, course.kind.name) })),
        ...(menu.bread
            ? [
                  {
                      name: 'bread',
                      kind: SymbolKind.Field,
                      at: menu.bread.origin,
                      head: menu.bread.head,
                      inside: menu.bread.dishes.map(dishEntry),
                  },
              ]
            : []),
        ...(menu.coffee
            ? [
                  {
                      name: 'coffee',
                      detail: at(menu.coffee.origin),
                      kind: SymbolKind.Field,
                      at: menu.coffee.origin,
                      head: menu.coffee.head,
                  },
              ]
            : []),
        ...(menu.water ? [{ name: 'water', kind: SymbolKind.Field, at: menu.water.origin }] : []),
        ...menu.speeches.map((speech): Entry => ({
            name: speech.title ?? speech.sort,
            detail: at(speech.origin, speech.sort),
            kind: SymbolKind.Event,
            at: speech.origin,
        })),
    ];
}

function courseEntry(course: Course): Entry {
    const dishes = course.hasDishes ? course.dishes.map(dishEntry) : [];
    return {
        name: course.title,
        detail: course.kind.name,
        kind: SymbolKind.Method,
        at: course.origin,
        head: course.head,
        inside: [...dishes, ...course.pours.map(pourEntry)],
    };
}

function dishEntry(dish: Dish): Entry {
    return {
        name: dish.title,
        detail: dish.kind.name,
        kind: SymbolKind.Function,
        at: dish.origin,
        head: dish.head,
        inside: dish.pours.map(pourEntry),
    };
}

function pourEntry(pour: Pour): Entry {
    return {
        name: pour.title,
        detail: pour.amount?.written,
        kind: SymbolKind.Variable,
        at: pour.origin,
        head: pour.titleOrigin,
    };
}
