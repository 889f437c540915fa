/** The stock of one evening: what is washed in between, what is done about what is short, racks, linen and equipment. */
import type { Plan } from '../../plan/types.js';
import type { Run } from '../run/types.js';
import type { Service } from '../types.js';
import { chooseRemedy, type StockProblem } from './choose-remedy.js';
import { finishTimes, type WashJob } from './dish-room-schedule.js';
import { dishRoomOf } from './dish-room.js';
import { equipmentUses } from './equipment.js';
import { parOf, up } from './lots.js';
import { spareShare } from './pull.js';
import { cartsOf, racksOf } from './racks.js';
import { substitutionsFor } from './substitutes.js';
import { statedWashes, turnaroundOf, WashableStock } from './turnarounds.js';
import type { CostTerms, DishRoom, LinenLine, PullLine, Remedy, Stock, Substitution, Turnaround } from './types.js';

type Served = Pick<
    Service,
    'facts' | 'variations' | 'pours' | 'setFor' | 'guestCount' | 'counts' | 'pull' | 'servings'
>;

/** @param run absent where the plan has none: then nothing is known to be back in time */
export function stockOf(plan: Plan, service: Served, run: Run | undefined): Stock {
    const { pull } = service;
    const dishRoom = dishRoomOf(plan.house);
    const washable = new WashableStock(service.counts, service.variations);
    const stated = inTurn(
        statedWashes(plan, washable).map((wash) => turnaroundOf(plan, wash, dishRoom, run)),
        dishRoom,
    );
    const short = pull.filter((line) => line.short > 0);
    const courses = plan.menu?.courses.length ?? 0;
    const possible = short.flatMap(({ piece }) =>
        washable.pairsOf(piece, courses).flatMap((pair) => {
            const wash = turnaroundOf(plan, pair, dishRoom, run);
            return wash.times ? [wash] : [];
        }),
    );
    const racks = pull.flatMap((line) => racksOf(plan, line.piece, line.pull) ?? []);
    const total = racks.reduce((sum, line) => sum + line.racks, 0);
    const costs = costsOf(plan);
    return {
        dishRoom,
        turnarounds: [...stated, ...possible],
        racks,
        wash: { racks: total, hours: dishRoom && total / dishRoom.racksPerHour, carts: cartsOf(plan, total) },
        linen: linenOf(plan, pull),
        costs,
        ...remediesOf(plan, service, short, { stated, possible, dishRoom, costs }),
        equipment: equipmentUses(plan, service, run),
    };
}

function costsOf({ customs }: Plan): CostTerms {
    return {
        rent: customs['rent-cost'].value,
        delivery: customs['delivery-cost'].value,
        wash: customs['wash-cost'].value,
        substitute: customs['substitute-cost'].value,
    };
}

/** What a house keeps that has so many of each in use: in service, on the shelf, in the laundry. */
function linenOf(plan: Plan, pull: readonly PullLine[]): LinenLine[] {
    const par = plan.customs['linen-par'].value;
    return pull
        .filter(({ piece }) => plan.cupboard.pieces.get(piece)?.family === 'linen')
        .map(({ piece, pull: inUse, owned }) => ({ piece, inUse, par, keep: parOf(inUse, par), owned }));
}

// ------------------------------------------------------------------ the dish room
/** What is washed must be dry when it is wanted. */
function jobOf({ times, work }: Turnaround, dishRoom: DishRoom | undefined): WashJob[] {
    return times && dishRoom ? [{ release: times.cleared, due: times.wanted - dishRoom.drying, work }] : [];
}

/** Stated washes share one dish room: each is back when its turn is over. */
function inTurn(washes: readonly Turnaround[], dishRoom: DishRoom | undefined): Turnaround[] {
    const jobs = washes.map((wash) => jobOf(wash, dishRoom)[0]);
    const finished = finishTimes(jobs.flatMap((job) => job ?? []));
    return washes.map((wash, index) => {
        const turn = jobs.slice(0, index).filter((job) => job !== undefined).length;
        return jobs[index] && wash.times && dishRoom
            ? { ...wash, times: { ...wash.times, back: finished[turn]! + dishRoom.drying } }
            : wash;
    });
}

// ------------------------------------------------------------------ what is short
interface Means {
    readonly stated: readonly Turnaround[];
    readonly possible: readonly Turnaround[];
    readonly dishRoom: DishRoom | undefined;
    readonly costs: CostTerms;
}

function remediesOf(
    plan: Plan,
    service: Served,
    short: readonly PullLine[],
    { stated, possible, dishRoom, costs }: Means,
): Pick<Stock, 'remedy' | 'remedies'> {
    if (short.length === 0) {
        return { remedies: new Map() };
    }
    const lines = new Map(service.pull.map((line) => [line.piece, line]));
    const rents = plan.event?.rents ?? [];
    const means = {
        washes: possible,
        substitutions: short.flatMap(({ piece }) => substitutionsFor(plan, service, piece)),
    };
    const places = means.substitutions.map(placeOf);
    const solve = (pieces: readonly Line[], { washes, substitutions }: typeof means): Remedy => {
        const index = (piece: string): number => pieces.findIndex((line) => line.piece === piece);
        const problem: StockProblem = {
            pieces: pieces.map(({ onHand, inUse, spare }) => ({ onHand, inUse, spare })),
            washes: washes.flatMap((wash) =>
                jobOf(wash, dishRoom).map((job) => ({
                    piece: index(wash.piece),
                    after: wash.after,
                    for: wash.for,
                    count: wash.count,
                    saves: wash.saves,
                    job,
                })),
            ),
            jobs: stated.flatMap((wash) => jobOf(wash, dishRoom)),
            substitutions: substitutions.map((swap) => ({
                piece: index(swap.piece),
                by: index(swap.by),
                count: swap.count,
                courses: swap.courses,
                site: places.indexOf(placeOf(swap)),
            })),
            lot: Math.max(1, Math.round(plan.customs['rent-lot'].value)),
            isDelivered: rents.length > 0,
            costs,
        };
        const choice = chooseRemedy(problem);
        return {
            washes: choice.washes.map((wash) => washes[wash]!),
            substitutions: choice.substitutions.map((swap) => substitutions[swap]!),
            rents: choice.lots.flatMap((lots, piece) =>
                lots > 0 ? [{ piece: pieces[piece]!.piece, count: lots * problem.lot }] : [],
            ),
            cost: choice.cost,
            isProved: choice.isProved,
        };
    };

    const lineOf = (piece: string): Line => {
        const line = lines.get(piece);
        const owned = line ? (line.owned ?? 0) + line.rented : standingBy(plan, piece);
        const inUse = line ? line.pull - line.spare : 0;
        return { piece, onHand: owned, inUse, spare: spareShare(plan, piece) };
    };
    const all = new Set([...short.map(({ piece }) => piece), ...means.substitutions.map(({ by }) => by)]);
    const remedy = solve([...all].map(lineOf), means);
    const remedies = short.map(({ piece }) => [piece, waysFor(piece)] as const);
    return { remedy, remedies: new Map(remedies) };

    /** The way of the whole choice first, then washing alone, other pieces alone, renting alone. */
    function waysFor(piece: string): Remedy[] {
        const own = {
            washes: means.washes.filter((wash) => wash.piece === piece),
            substitutions: means.substitutions.filter((swap) => swap.piece === piece),
        };
        // What stands in is not to be made up for here.
        const pieces = [piece, ...new Set(own.substitutions.map(({ by }) => by))].map((name) => {
            const line = lineOf(name);
            return name === piece ? line : { ...line, onHand: Math.max(line.onHand, withSpares(line)) };
        });
        const chosen = solve(pieces, {
            washes: remedy.washes.filter((wash) => wash.piece === piece),
            substitutions: remedy.substitutions.filter((swap) => swap.piece === piece),
        });
        const ways = [
            chosen,
            solve(pieces, { washes: own.washes, substitutions: [] }),
            solve(pieces, { washes: [], substitutions: own.substitutions }),
            solve(pieces, { washes: [], substitutions: [] }),
        ];
        return ways.filter((way, place) => ways.findIndex((other) => isSameWay(way, other)) === place);
    }
}

interface Line {
    readonly piece: string;
    readonly onHand: number;
    readonly inUse: number;
    readonly spare: number;
}

function withSpares({ inUse, spare }: Line): number {
    return inUse + up(spare * inUse);
}

/** A piece that the evening does not use yet. */
function standingBy({ house, event }: Plan, piece: string): number {
    return [...house.stock, ...(event?.rents ?? [])]
        .filter((stock) => stock.piece.name === piece)
        .reduce((sum, stock) => sum + stock.count.count, 0);
}

/** One place of the text takes one piece. */
function placeOf({ sort, write }: Substitution): string {
    return `${sort} ${write.at.file} ${write.at.start}`;
}

function isSameWay(one: Remedy, other: Remedy): boolean {
    const key = ({ washes, substitutions, rents }: Remedy): string =>
        JSON.stringify([
            washes.map((wash) => [wash.after, wash.for]),
            substitutions.map((swap) => [placeOf(swap), swap.by]),
            rents,
        ]);
    return key(one) === key(other);
}
