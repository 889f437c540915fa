import type * as ast from '../grammar/generated/ast.js';
import { customSpecs, type CustomSpec } from './customs.js';
import type { Count, Named, Text } from './origin.js';
import type { Dimension, Quantity } from './quantity.js';
import { ofType, type Scribe } from './read-scribe.js';
import type { Custom, House, Rate, Room, Tables, Task, Team, WashLine } from './types.js';

type Clause = ast.HouseClause;

export function readHouse(scribe: Scribe, node: ast.House): House {
    const clauses = node.clauses ?? [];
    const laying = ofType<Clause, ast.Laying>(clauses, 'Laying');
    const code = scribe.once(ofType<Clause, ast.CodeClause>(clauses, 'CodeClause'), 'local code');
    return {
        title: node.title ?? '',
        origin: scribe.origin(node),
        head: scribe.head(node, 'title'),
        stock: ofType<Clause, ast.Own>(clauses, 'Own').flatMap((own) =>
            (own.stock ?? []).flatMap((stock) => readStock(scribe, stock)),
        ),
        spares: ofType<Clause, ast.Spare>(clauses, 'Spare').flatMap((spare) => {
            const share = scribe.quantity(spare.share, ['share']);
            return share ? [{ share, piece: scribe.named(spare, 'piece', 'piece'), origin: scribe.origin(spare) }] : [];
        }),
        customs: readCustoms(
            scribe,
            laying.flatMap((block) => block.customs ?? []),
        ),
        layingOrigin: laying[0] && scribe.origin(laying[0]),
        washing: ofType<Clause, ast.Washing>(clauses, 'Washing').flatMap((block) =>
            (block.lines ?? []).flatMap((line) => readWashLine(scribe, line)),
        ),
        code: code && scribe.named(code, 'code', 'code'),
        settings: ofType<Clause, ast.RuleSetting>(clauses, 'RuleSetting').flatMap((setting) =>
            setting.level
                ? [
                      {
                          rule: scribe.demanded(setting, 'rule', 'rule'),
                          level: setting.level,
                          levelOrigin: scribe.at(setting, 'level'),
                          reason: scribe.textOf(setting, 'reason'),
                          origin: scribe.origin(setting),
                      },
                  ]
                : [],
        ),
    };
}

export function readStock(scribe: Scribe, node: ast.Stock): House['stock'] {
    const count = scribe.count(node);
    const piece = scribe.named(node, 'piece', 'piece');
    const holds = (node.holds ?? []).flatMap((hold) => {
        const amount = scribe.count(hold);
        return amount ? [{ count: amount.count, what: hold.what ?? '', origin: scribe.origin(hold) }] : [];
    });
    return count && piece ? [{ count, piece, holds, origin: scribe.origin(node) }] : [];
}

function readCustoms(scribe: Scribe, nodes: readonly ast.Custom[]): Custom[] {
    const firsts = new Map<string, Custom>();
    return nodes.flatMap((node) => {
        const custom = readCustom(scribe, node);
        const first = custom && firsts.get(custom.name.name);
        if (custom && first) {
            scribe.repeats.push({ clause: custom.name.name, first: first.origin, again: custom.origin });
            return [];
        }
        if (custom) {
            firsts.set(custom.name.name, custom);
        }
        return custom ?? [];
    });
}

function readCustom(scribe: Scribe, node: ast.Custom): Custom | undefined {
    const name = scribe.named(node, 'name', 'custom');
    if (!name || !node.value) {
        return undefined;
    }
    const origin = scribe.origin(node);
    const valueOrigin = scribe.origin(node.value);
    if (node.value.$type === 'CustomChoice') {
        const choice = scribe.named(node.value, 'choice', 'choice', undefined, name.name);
        return choice && { name, choice, origin, valueOrigin };
    }
    const spec = customSpecs.find((each) => each.name === name.name) as CustomSpec | undefined;
    const wanted: readonly Dimension[] | undefined = spec?.figure && [spec.figure.dimension];
    const fits = (value: number): boolean => !spec?.figure || (value >= spec.figure.low && value <= spec.figure.high);
    const figure = scribe.quantity(node.value.size, wanted, { fits });
    const per: Named | undefined = node.value.per
        ? { name: node.value.per, origin: scribe.at(node.value, 'per') }
        : undefined;
    return figure && { name, figure, per, origin, valueOrigin };
}

function readWashLine(scribe: Scribe, node: ast.WashLine): WashLine[] {
    const origin = scribe.origin(node);
    if (node.$type === 'WashRate') {
        const rate = readRate(scribe, node.rate);
        return rate ? [{ sort: 'rate', polish: node.polish, rate, origin }] : [];
    }
    const size = scribe.quantity(node.size);
    return size
        ? [{ sort: 'figure', what: { name: node.what ?? '', origin: scribe.at(node, 'what') }, size, origin }]
        : [];
}

const PERIOD_MINUTES: Record<string, number> = { hour: 60, h: 60, min: 1, minute: 1, s: 1 / 60 };

function readRate(scribe: Scribe, node: ast.Rate | undefined): Rate | undefined {
    const amount = node && scribe.number(node, 'amount');
    if (!node || amount === undefined) {
        return undefined;
    }
    const origin = scribe.origin(node);
    const written = scribe.words(origin);
    return { amount, what: node.what ?? '', perMinutes: PERIOD_MINUTES[node.per] ?? 60, written, origin };
}

export function readRoom(scribe: Scribe, node: ast.Room): Room {
    const clauses = node.clauses ?? [];
    const at = scribe.once(ofType<ast.RoomClause, ast.RoomAt>(clauses, 'RoomAt'), 'at');
    const pass = scribe.once(ofType<ast.RoomClause, ast.PassOn>(clauses, 'PassOn'), 'pass on the');
    const aisle = scribe.once(ofType<ast.RoomClause, ast.Aisle>(clauses, 'Aisle'), 'aisle');
    return {
        title: node.title ?? '',
        width: scribe.quantity(node.width, ['length']),
        depth: scribe.quantity(node.depth, ['length']),
        tables: ofType<ast.RoomClause, ast.Tables>(clauses, 'Tables').flatMap((tables) => readTables(scribe, tables)),
        temperature: scribe.quantity(at?.temp, ['temperature']),
        aisle: scribe.quantity(aisle?.width, ['length']),
        pass: pass?.wall && { wall: pass.wall, origin: scribe.origin(pass) },
        head: scribe.head(node, 'title', 'width', 'depth'),
        origin: scribe.origin(node),
    };
}

function readTables(scribe: Scribe, node: ast.Tables): Tables[] {
    const size = scribe.quantity(node.size, ['length']);
    const first = scribe.declare(node, 'first', 'table', node.last);
    const shape = scribe.named(node, 'shape', 'shape');
    // `T1-T9` is one word to the lexer; it is read as the range it means and the form to keep is offered.
    const hyphen = node.last === undefined ? /^(\D*)(\d+)[-\u2013]\1?(\d+)$/.exec(first.name) : undefined;
    const [from, to] = hyphen ? [`${hyphen[1]}${hyphen[2]}`, `${hyphen[1]}${hyphen[3]}`] : [first.name, node.last];
    if (hyphen) {
        scribe.written.push({
            form: 'table-hyphen',
            written: first.name,
            suggestions: [`${from} to ${to}`],
            origin: first.origin,
        });
    }
    const names = to === undefined ? [from] : tableNames(from, to);
    for (const name of names) {
        if (name !== first.name) {
            // Those between have no word of their own.
            const origin = name === node.last ? scribe.at(node, 'last') : first.origin;
            scribe.declareAs('table', { name, origin }, to);
        }
    }
    return size && shape ? [tables(scribe, node, first, names, shape, size)] : [];
}

function tables(
    scribe: Scribe,
    node: ast.Tables,
    first: Named,
    names: readonly string[],
    shape: Named,
    size: Tables['size'],
): Tables {
    const phrases = node.phrases ?? [];
    const one = <U extends ast.TablePhrase>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.TablePhrase, U>(phrases, type), clause);
    const counts = ofType<ast.TablePhrase, ast.TableCount>(phrases, 'TableCount');
    const counted = (of: ast.TableCount['of']): Count | undefined => {
        const count = scribe.once(
            counts.filter((each) => each.of === of),
            of,
        );
        return count && scribe.count(count);
    };
    const middle = one<ast.TableAt>('TableAt', 'at');
    const x = scribe.quantity(middle?.x, ['length']);
    const y = scribe.quantity(middle?.y, ['length']);
    return {
        first,
        last: node.last === undefined ? undefined : { name: node.last, origin: scribe.at(node, 'last') },
        names,
        shape,
        size,
        depth: scribe.quantity(node.depth, ['length']),
        joined: scribe.count(node, 'joined'),
        seats: counted('seats'),
        accessible: counted('accessible'),
        at: x && y && { x, y },
        turned: phrases.some((phrase) => phrase.$type === 'TableTurned'),
        origin: scribe.origin(node),
    };
}

/** More tables than any room has: a slip of the finger must not fill the memory. */
const MOST_TABLES = 2000;

/** `T1 to T9`: the same letters, whole numbers, both ends in; or `A to D`. The first alone where the two don't fit together. */
function tableNames(first: string, last: string): string[] {
    if (/^([A-Z]{2}|[a-z]{2})$/.test(first + last) && first < last) {
        const [from, to] = [first.charCodeAt(0), last.charCodeAt(0)];
        return Array.from({ length: to - from + 1 }, (_, index) => String.fromCharCode(from + index));
    }
    const from = /^(.*?)(\d+)$/.exec(first);
    const to = /^(.*?)(\d+)$/.exec(last);
    const count = from && to && from[1] === to[1] ? Number(to[2]) - Number(from[2]) + 1 : 0;
    if (count < 1 || count > MOST_TABLES) {
        return [first];
    }
    return Array.from({ length: count }, (_, index) => `${from![1]}${Number(from![2]) + index}`);
}

export function readTeam(scribe: Scribe, node: ast.Team): Team {
    return {
        roles: (node.roles ?? []).flatMap((role) => {
            const count = scribe.count(role);
            const name = scribe.named(role, 'role', 'role');
            return count && name
                ? [
                      {
                          role: name,
                          count,
                          rate: readRate(scribe, role.rate),
                          stations: times(scribe, role.stations),
                          origin: scribe.origin(role),
                      },
                  ]
                : [];
        }),
        origin: scribe.origin(node),
    };
}

/** The lengths of time of a list that can be read. */
export function times(scribe: Scribe, nodes: readonly ast.Quantity[] | undefined): Quantity[] {
    return (nodes ?? []).flatMap((node) => scribe.quantity(node, ['time']) ?? []);
}

export function readTasks(scribe: Scribe, node: ast.Tasks): Task[] {
    return (node.tasks ?? []).flatMap((task) => {
        const title = scribe.textOf(task, 'title');
        return title ? [readTask(scribe, node.when, task, title)] : [];
    });
}

function readTask(scribe: Scribe, when: Task['when'], node: ast.Task, title: Text): Task {
    const phrases = node.phrases ?? [];
    const one = <U extends ast.TaskPhrase>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.TaskPhrase, U>(phrases, type), clause);
    const between = one<ast.TaskBetween>('TaskBetween', 'between');
    const least = scribe.quantity(between?.least, ['time']);
    const most = scribe.quantity(between?.most, ['time']);
    const after = one<ast.TaskAfter>('TaskAfter', 'after');
    const by = one<ast.TaskBy>('TaskBy', 'by');
    const count = by && scribe.count(by);
    const role = by && scribe.named(by, 'role', 'role');
    const first = (after?.titles ?? []).flatMap((_, index) => scribe.textOf(after!, 'titles', index) ?? []);
    scribe.declareAs('task-title', { name: title.text, origin: title.origin });
    for (const earlier of first) {
        scribe.occurrences.push({ sort: 'task-title', name: earlier.text, role: 'uses', origin: earlier.origin });
    }
    return {
        when,
        title,
        takes: scribe.quantity(one<ast.TaskTakes>('TaskTakes', 'takes')?.time, ['time']),
        between: least && most && { least, most },
        after: first,
        afterOrigin: after && scribe.origin(after),
        by: count && role && { count, role },
        origin: scribe.origin(node),
    };
}
