/** Event, house, room and team, for the compiled plan. */
import type { Event, House, NamedGuest, Room, Stock, Tables, Task, Team, WashLine } from '../plan/types.js';
import { initials } from '../service/seats/initials.js';
import type { Places } from './places.js';
import { clockJson } from './plan-clock.js';
import type { Telling } from './plan-menu.js';
import { at, dateJson, figureJson, needJson, quantityJson, textJson, type Json } from './plan-values.js';

export function eventJson({ places, plan }: Telling, event: Event): Json {
    return {
        title: event.title,
        ...at(places, event.titleOrigin),
        date: dateJson(event.date),
        zone: textJson(event.zone),
        doors: clockJson(plan, event.doors, 'doors'),
        seated: clockJson(plan, event.seated),
        ends: clockJson(plan, event.ends, 'end'),
        rents: event.rents.map((rent) => stockJson(places, rent)),
        revision: event.revision?.count,
        reference: textJson(event.reference),
        notice: textJson(event.notice),
        replications: event.replications && { count: event.replications.count, seed: event.replications.seed },
        crew: event.crew && {
            count: event.crew.count,
            eat: textJson(event.crew.dish),
            at: clockJson(plan, event.crew.at),
        },
        guests: event.guests && {
            expected: event.guests.expected.count,
            guaranteed: event.guests.guaranteed?.count,
            setFor: event.guests.setFor?.count,
        },
        namedGuests: plan.seating.map(namedGuestJson),
    };
}

/** Health data: a guest of the list goes into the plan by initials only. */
function namedGuestJson(guest: NamedGuest): Json {
    return {
        initials: initials(guest.name.text),
        table: guest.seat?.table.name,
        seat: guest.seat?.seat?.count,
        needs: guest.needs.map(needJson),
        chooses: guest.chooses.map((dish) => dish.text),
    };
}

export function houseJson({ places, plan }: Telling, house: House): Json {
    const customs = Object.entries(plan.customs).map(([name, { value, origin }]) => [
        name,
        { value, because: origin ? 'declared' : 'default', ...at(places, origin) },
    ]);
    const { code } = plan;
    return {
        title: house.title || undefined,
        ...at(places, house.head),
        localCode: {
            name: code.name,
            called: code.called,
            figures: Object.fromEntries(
                Object.entries(code.figures).map(([name, figure]) => [
                    name,
                    { ...figureJson(figure.size.dimension, figure.low), source: figure.source },
                ]),
            ),
            caution: 'Planning figures; the code in force at the place and the authority that applies it decide.',
        },
        stock: house.stock.map((stock) => stockJson(places, stock)),
        spares: house.spares.map((spare) => ({
            share: quantityJson(spare.share),
            of: spare.piece?.name,
            ...at(places, spare.origin),
        })),
        washing: house.washing.map((line) => washJson(places, line)),
        customs: Object.fromEntries(customs),
    };
}

function stockJson(places: Places, stock: Stock): Json {
    return {
        piece: stock.piece.name,
        own: stock.count.count,
        holds: stock.holds.map((hold) => ({ count: hold.count, of: hold.what })),
        ...at(places, stock.origin),
    };
}

function washJson(places: Places, line: WashLine): Json {
    if (line.sort === 'figure') {
        return { [line.what.name]: quantityJson(line.size), ...at(places, line.origin) };
    }
    const { rate } = line;
    return {
        work: line.polish ? 'polish' : 'wash',
        amount: rate.amount,
        of: rate.what,
        perMinutes: rate.perMinutes,
        written: rate.written,
        ...at(places, line.origin),
    };
}

export function roomJson({ places }: Telling, room: Room): Json {
    return {
        title: room.title,
        ...at(places, room.head),
        width: quantityJson(room.width),
        depth: quantityJson(room.depth),
        temperature: quantityJson(room.temperature),
        aisle: quantityJson(room.aisle),
        pass: room.pass?.wall,
        tables: room.tables.map((tables) => tablesJson(places, tables)),
    };
}

function tablesJson(places: Places, tables: Tables): Json {
    return {
        names: tables.names,
        ...at(places, tables.origin),
        shape: tables.shape.name,
        size: quantityJson(tables.size),
        depth: quantityJson(tables.depth),
        joined: tables.joined?.count,
        seatsEach: tables.seats?.count,
        accessible: tables.accessible?.count,
        middle: tables.at && { fromLeft: quantityJson(tables.at.x), fromNear: quantityJson(tables.at.y) },
        turned: tables.turned || undefined,
    };
}

export function teamJson({ places }: Telling, team: Team): Json {
    return {
        roles: team.roles.map((role) => ({
            role: role.role.name,
            count: role.count.count,
            rate: role.rate && {
                amount: role.rate.amount,
                of: role.rate.what,
                perMinutes: role.rate.perMinutes,
                written: role.rate.written,
            },
            stations: role.stations.length > 0 ? role.stations.map(quantityJson) : undefined,
            ...at(places, role.origin),
        })),
    };
}

export function tasksJson({ places, plan }: Telling): Json[] {
    return plan.tasks.map((task: Task) => ({
        when: task.when,
        title: task.title.text,
        takes: quantityJson(task.takes),
        between: task.between && { least: quantityJson(task.between.least), most: quantityJson(task.between.most) },
        after: task.after.map((earlier) => earlier.text),
        by: task.by && { count: task.by.count.count, role: task.by.role.name },
        ...at(places, task.origin),
    }));
}
