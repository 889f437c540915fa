/** What is done about what is short: for everything together, and for each piece alone. */
import type { Plan } from '../../plan/types.js';
import type { Service } from '../types.js';
import { chooseRemedy, type StockProblem } from './choose-remedy.js';
import { jobOf } from './dish-room.js';
import { up } from './lots.js';
import { spareShare } from './pull.js';
import { substitutionsFor } from './substitutes.js';
import type { CostTerms, PullLine, Remedy, Stock, Substitution, Turnaround } from './types.js';

type Served = Pick<Service, 'facts' | 'variations' | 'pours' | 'setFor' | 'guestCount' | 'pull'>;

/** What there is to choose from. */
export interface Means {
    readonly stated: readonly Turnaround[];
    readonly possible: readonly Turnaround[];
    readonly costs: CostTerms;
}

export function remediesOf(
    plan: Plan,
    service: Served,
    short: readonly PullLine[],
    { stated, possible, costs }: Means,
): Pick<Stock, 'remedy' | 'remedies'> {
    if (short.length === 0) {
        return { remedies: new Map() };
    }
    const lines = new Map(service.pull.map((line) => [line.piece, line]));
    const rents = plan.event?.rents ?? [];
    const means = {
        washes: possible,
        substitutions: substitutionsFor(
            plan,
            service,
            short.map(({ piece }) => piece),
        ),
    };
    const places = means.substitutions.map(placeOf);
    const solve = (pieces: readonly Line[], { washes, substitutions }: typeof means): Remedy => {
        const index = (piece: string): number => pieces.findIndex((line) => line.piece === piece);
        const problem: StockProblem = {
            pieces: pieces.map(({ onHand, inUse, spare }) => ({ onHand, inUse, spare })),
            washes: washes.flatMap((wash) =>
                jobOf(wash).map((job) => ({
                    piece: index(wash.piece),
                    after: wash.after,
                    for: wash.for,
                    count: wash.count,
                    saves: wash.saves,
                    job,
                })),
            ),
            jobs: stated.flatMap(jobOf),
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
    const remedies = short.map(({ piece }) => [piece, { [Symbol.iterator]: () => waysFor(piece) }] as const);
    return { remedy, remedies: new Map(remedies) };

    /** The way of the whole choice first, then washing alone, other pieces alone, renting alone. */
    function* waysFor(piece: string): Generator<Remedy, undefined> {
        const own = {
            washes: means.washes.filter((wash) => wash.piece === piece),
            substitutions: means.substitutions.filter((swap) => swap.piece === piece),
        };
        // What stands in is not to be made up for here.
        const pieces = [piece, ...new Set(own.substitutions.map(({ by }) => by))].map((name) => {
            const line = lineOf(name);
            return name === piece ? line : { ...line, onHand: Math.max(line.onHand, withSpares(line)) };
        });
        const told: Remedy[] = [];
        for (const choice of [
            {
                washes: remedy.washes.filter((wash) => wash.piece === piece),
                substitutions: remedy.substitutions.filter((swap) => swap.piece === piece),
            },
            { washes: own.washes, substitutions: [] },
            { washes: [], substitutions: own.substitutions },
            { washes: [], substitutions: [] },
        ]) {
            const way = solve(pieces, choice);
            if (!told.some((other) => isSameWay(way, other))) {
                told.push(way);
                yield way;
            }
        }
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
