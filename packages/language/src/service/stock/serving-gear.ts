/** What is pulled for the servers to carry and pour from, and what stands between the covers. */
import { keepCompiled } from '../../keep-compiled.js';
import { isKindOf } from '../../plan/names.js';
import { guestsPerServer } from '../../plan/customs.js';
import type { Plan } from '../../plan/types.js';
import { isDessertCourse } from '../facts.js';
import { clausesOf } from '../run/team-of-plan.js';
import { atTheTable } from '../table-service.js';
import type { Portion, Service } from '../types.js';
import { lotsOf, up } from './lots.js';
import type { PieceCount, PieceUse } from './types.js';

type Served = Pick<
    Service,
    'setFor' | 'guestCount' | 'servings' | 'facts' | 'pours' | 'coffee' | 'bread' | 'seats' | 'room'
>;

/** Guests of a table where no room says: rounds of eight (quantities 6.1). */
const USUAL_TABLE = 8;

interface Crew {
    readonly servers: number;
    readonly runners: number;
    /** `one for each of 7 servers`, or how many are reckoned. */
    readonly basis: string;
}

interface Tables {
    /** Covers laid at each. */
    readonly covers: readonly number[];
    readonly basis: string;
}

/**
 * Jugs, tureens, ladles, baskets, pots, covers, trays and cloths, by piece: each follows from how the menu says it is served.
 * Each server pours from gear of their own, filled for one table at a time.
 */
export function servingGear(plan: Plan, service: Served): PieceCount[] {
    if (!plan.menu || service.guestCount === 0) {
        return [];
    }
    const { menu, customs, cupboard } = plan;
    const crew = crewOf(plan, service.guestCount);
    const tables = tablesOf(service);
    const list = keepCompiled(new GearList());
    const eachServer = (piece: string, purpose: string, each = 1, course = -1): void =>
        list.add(piece, crew.servers * each, `${purpose}, ${each > 1 ? `${each} ` : 'one '}${crew.basis}`, course);

    // on the tables
    if (customs['salt-and-pepper'].value === 'each-cover') {
        list.add('salt-and-pepper', service.setFor, 'one for each cover');
    } else {
        const sets = tables.covers.reduce((sum, covers) => sum + up(covers / 2), 0);
        list.add('salt-and-pepper', sets, `one between two covers, ${tables.basis}`);
    }
    if (customs['place-card'].value !== 'none' && (plan.seating.length > 0 || isListed(plan, 'place-card'))) {
        list.add('place-card', service.setFor, 'one for each cover');
    }
    for (const cloth of service.room?.cloths.pull ?? []) {
        list.add(cloth.piece, cloth.count, `tables of ${plan.room?.title ?? 'the room'}`);
    }
    if (!service.room) {
        list.add('tablecloth', tables.covers.length, `one for each table, ${tables.basis}`);
    }
    const isWaterFromJugs =
        (menu.water === undefined || menu.water.choices.length === 0 || menu.water.choices.includes('still')) &&
        customs['still-water-from'].value === 'jugs';
    if (isWaterFromJugs && customs['water-jugs'].value === 'each-server') {
        eachServer('water-jug', 'water');
    } else if (isWaterFromJugs) {
        list.add('water-jug', tables.covers.length, `water, one for each table, ${tables.basis}`);
    }

    // bread and butter
    if (service.bread) {
        eachServer('bread-basket', 'bread');
        eachServer('serving-tongs', 'bread');
        if (service.bread.bread.accompaniments.some(({ sort }) => sort === 'butter')) {
            const share = Math.max(1, customs['butter-dish'].value);
            const dishes = tables.covers.reduce((sum, covers) => sum + lotsOf(covers, share), 0);
            list.add('butter-dish', dishes, `butter, one for ${share} guests, ${tables.basis}`);
        }
    }

    // poured and passed at table
    const largest = Math.max(...tables.covers);
    for (const { course, portions } of service.servings) {
        for (const { gear, volume, purpose, guests } of pouredIn(plan, portions)) {
            const holds = cupboard.pieces.get(gear)?.measures.holds?.high;
            const each = holds ? Math.max(1, lotsOf(volume * Math.min(guests, largest), holds)) : 1;
            for (const piece of [gear, ...(cupboard.pieces.get(gear)?.pairs ?? []).map((pair) => pair.name)]) {
                eachServer(piece, purpose, each, course.index);
            }
        }
    }
    if (customs['service-style'].value === 'french') {
        eachServer('serving-spoon', 'platters');
        eachServer('serving-fork', 'platters');
    }
    if (service.coffee) {
        eachServer('coffee-pot', 'coffee', 1, menu.courses.length);
    }
    if (service.pours.some(({ kind }) => isKindOf(kind, 'wine'))) {
        const sommeliers = clausesOf(plan, 'sommelier').reduce((sum, { count }) => sum + count.count, 0);
        list.add(
            'corkscrew',
            sommeliers || crew.servers,
            sommeliers > 0 ? 'one for each sommelier' : `one ${crew.basis}`,
        );
    }

    // carried
    const covered = service.servings.map(({ portions }) =>
        portions.reduce((sum, { dish, count }) => sum + (dish.carried?.how === 'covered' ? count : 0), 0),
    );
    // Covers come back when the plate is set down: the next course has them again.
    list.add('dome', Math.max(0, ...covered), 'one for each plate of the largest course that is carried covered');
    const everyone = crew.runners > 0 ? `${crew.basis} and ${people(crew.runners, 'runner')}` : crew.basis;
    list.add('tray', crew.servers + crew.runners, `one ${everyone}`);
    if (customs.crumbing.value === 'brush' && menu.courses.some((course) => isDessertCourse(course, cupboard))) {
        eachServer('crumb-tray', 'crumbing');
    }
    const cloths = customs['service-cloths'].value;
    list.add('side-towel', up((crew.servers + crew.runners) * cloths), `${cloths} ${everyone}`);
    return list.counts();
}

class GearList {
    private readonly uses = new Map<string, PieceUse[]>();

    add(piece: string, count: number, purpose: string, course = -1): void {
        if (count > 0) {
            const use: PieceUse = { course, purpose, count, overset: 0, when: 'brought', isFixed: true };
            this.uses.set(piece, [...(this.uses.get(piece) ?? []), use]);
        }
    }

    counts(): PieceCount[] {
        return [...this.uses].map(([piece, by]) => ({
            piece,
            needed: by.reduce((sum, { count }) => sum + count, 0),
            by,
        }));
    }
}

/** The team, or as many servers as the house's ratio or style reckons. */
function crewOf(plan: Plan, guests: number): Crew {
    const count = (role: 'server' | 'runner'): number =>
        clausesOf(plan, role).reduce((sum, each) => sum + each.count.count, 0);
    const runners = count('runner');
    const servers = count('server');
    if (servers > 0) {
        return { servers, runners, basis: `for each of ${people(servers, 'server')}` };
    }
    const stated = plan.customs['server-ratio'].value;
    const ratio = stated === 'by-style' ? guestsPerServer[plan.customs['service-style'].value] : stated;
    const reckoned = Math.max(1, lotsOf(guests, ratio));
    return {
        servers: reckoned,
        runners,
        basis: `for each of ${people(reckoned, 'server')} reckoned at ${ratio} guests each`,
    };
}

const people = (count: number, role: string): string => `${count} ${role}${count === 1 ? '' : 's'}`;

function tablesOf({ seats, setFor }: Served): Tables {
    const laid = seats.tables.map((table) => table.laid).filter((covers) => covers > 0);
    if (laid.length > 0) {
        return { covers: laid, basis: laid.length === 1 ? '1 table' : `${laid.length} tables` };
    }
    const count = lotsOf(setFor, USUAL_TABLE);
    const covers = Array.from({ length: count }, (_, index) => Math.min(USUAL_TABLE, setFor - index * USUAL_TABLE));
    return { covers, basis: `tables of ${USUAL_TABLE} reckoned, as no room is stated` };
}

interface Poured {
    readonly gear: string;
    /** For one guest, ml; 0 where nobody says. */
    readonly volume: number;
    readonly purpose: string;
    readonly guests: number;
}

/** What a course is poured or passed from at table. A sauce that its dishes share is one, for the guests of all of them. */
function pouredIn(plan: Plan, portions: readonly Portion[]): Poured[] {
    const found = new Map<number, Poured>();
    const add = (key: number, poured: Omit<Poured, 'guests'>, guests: number): void => {
        found.set(key, { ...poured, guests: guests + (found.get(key)?.guests ?? 0) });
    };
    for (const { dish, count } of portions.filter((each) => each.count > 0)) {
        const { portion } = dish.served;
        for (const { title, gear, beside, key } of atTheTable(dish)) {
            const ofDish = portion?.dimension === 'volume' ? portion.value : 0;
            const ofBeside = beside?.sort === 'sauce' ? plan.customs['sauce-portion'].value : 0;
            add(key, { gear, volume: beside ? ofBeside : ofDish, purpose: title }, count);
        }
    }
    return [...found.values()];
}

function isListed(plan: Plan, piece: string): boolean {
    return plan.house.stock.some((stock) => stock.piece.name === piece);
}
