/** What to wash, substitute and rent: a small integer program, solved exactly. */
import { solve, type Constraint, type Model } from 'yalps';
import { remember } from '../remember.js';
import { windowsOf, type WashJob } from './dish-room-schedule.js';
import { lotsOf, up } from './lots.js';
import type { CostTerms } from './types.js';

/** The problem as plain figures; pieces, washes and substitutions by their index. */
export interface StockProblem {
    /** Every piece that is short, or could stand for one. */
    readonly pieces: readonly {
        /** Owned and rented already. */
        readonly onHand: number;
        /** Pieces in use over the evening, without spares. */
        readonly inUse: number;
        /** 0–1 */
        readonly spare: number;
    }[];
    readonly washes: readonly {
        readonly piece: number;
        /** Courses; the pieces of one are washed for one other at most, and one gets them from one at most. */
        readonly after: number;
        readonly for: number;
        readonly count: number;
        readonly saves: number;
        readonly job: WashJob;
    }[];
    /** What the dish room washes anyway. */
    readonly jobs: readonly WashJob[];
    readonly substitutions: readonly {
        readonly piece: number;
        readonly by: number;
        readonly count: number;
        /** The place in the text: one other piece at most stands there. */
        readonly site: number;
        readonly courses: readonly number[];
    }[];
    /** Pieces that are rented together, 1 or more. */
    readonly lot: number;
    /** Something is rented already, so that the van comes anyway. */
    readonly isDelivered: boolean;
    readonly costs: CostTerms;
}

export interface Choice {
    /** Indices of what is done. */
    readonly washes: readonly number[];
    readonly substitutions: readonly number[];
    /** Lots to rent, by piece. */
    readonly lots: readonly number[];
    readonly cost: number;
    /** False where the search was given up and everything is rented. */
    readonly isProved: boolean;
}

/** Branches looked at, at most: far beyond any menu's problem. */
const MOST_BRANCHES = 2000;

/**
 * The cheapest choice that leaves nothing short.
 *
 * Variables: each wash and each substitution 0 or 1, lots rented whole numbers; once with the van and once without it.
 * For each piece: (1 + spare share) × (in use − washed − taken out + put in) ≤ on hand + lots rented; all else being whole, that
 * rounds spares up. For each span of the dish room: the work in it fits. The pieces of one course are washed for one other at
 * most, and a course gets them from one at most; one other piece at most stands at a place; a wash and a substitution that touch
 * the same piece in the same course exclude each other.
 * Cost: so much for each piece rented, washed and substituted, and for the van.
 * Renting is always possible, so there is always a choice.
 */
export const chooseRemedy = remember((problem: StockProblem): Choice => {
    const parts = partsOf(problem);
    const ways = (problem.isDelivered ? [true] : [false, true]).flatMap((isRenting) => {
        const solved = parts.map((part) => solvePart(problem, part, isRenting));
        return solved.every((each) => each !== undefined) ? [joined(problem, solved)] : [];
    });
    const [best] = ways.toSorted((a, b) => a.cost - b.cost);
    return best ?? rentAll(problem);
    // One look at a plan asks once for everything and four times for each piece that is short.
}, 128);

/** What is solved together; indices as in the problem. */
interface Part {
    readonly pieces: readonly number[];
    readonly washes: readonly number[];
    readonly substitutions: readonly number[];
}

type Solved = Omit<Choice, 'cost'>;

function solvePart(problem: StockProblem, part: Part, isRenting: boolean): Solved | undefined {
    const { variables: found, status } = solve(programOf(problem, part, isRenting), { maxIterations: MOST_BRANCHES });
    if (status === 'infeasible' || (status !== 'optimal' && found.length === 0)) {
        return undefined;
    }
    const value = new Map(found.map(([name, amount]) => [name, Math.round(amount)]));
    const done = (name: string, indices: readonly number[]): number[] =>
        indices.filter((index) => value.get(`${name} ${index}`) === 1);
    return {
        washes: done('wash', part.washes),
        substitutions: done('swap', part.substitutions),
        lots: problem.pieces.map((_, piece) => value.get(`lots ${piece}`) ?? 0),
        isProved: status === 'optimal',
    };
}

function joined(problem: StockProblem, parts: readonly Solved[]): Choice {
    const together = {
        washes: parts.flatMap((part) => part.washes).toSorted((a, b) => a - b),
        substitutions: parts.flatMap((part) => part.substitutions).toSorted((a, b) => a - b),
        lots: problem.pieces.map((_, piece) => parts.reduce((sum, part) => sum + part.lots[piece]!, 0)),
    };
    return { ...together, cost: costOf(problem, together), isProved: parts.every((part) => part.isProved) };
}

/** Pieces that share neither a stand-in nor a crowded span of the dish room are solved apart. */
function partsOf(problem: StockProblem): Part[] {
    const { pieces, washes, substitutions } = problem;
    const groupOf = pieces.map((_, piece) => piece);
    const link = (one: number, other: number): void => {
        const [from, to] = [groupOf[one], groupOf[other]];
        groupOf.forEach((group, piece) => {
            groupOf[piece] = group === from ? to! : group;
        });
    };
    substitutions.forEach(({ piece, by }) => link(piece, by));
    for (const { washes: inside } of crowdedSpans(problem)) {
        inside.forEach((wash) => link(washes[inside[0]!]!.piece, washes[wash]!.piece));
    }
    return [...new Set(groupOf)].map((group) => ({
        pieces: pieces.flatMap((_, piece) => (groupOf[piece] === group ? [piece] : [])),
        washes: washes.flatMap(({ piece }, wash) => (groupOf[piece] === group ? [wash] : [])),
        substitutions: substitutions.flatMap(({ piece }, swap) => (groupOf[piece] === group ? [swap] : [])),
    }));
}

/** Spans of the dish room into which not all the washes that fall there would fit, with the minutes left for them. */
function crowdedSpans({
    washes,
    jobs: anyway,
}: StockProblem): { readonly washes: readonly number[]; readonly minutes: number }[] {
    const jobs = [...washes.map((wash) => wash.job), ...anyway];
    const work = (indices: readonly number[]): number => indices.reduce((sum, job) => sum + jobs[job]!.work, 0);
    return windowsOf(jobs).flatMap(({ minutes, jobs: inside }) => {
        const chosen = inside.filter((job) => job < washes.length);
        const left = Math.max(0, minutes - work(inside.filter((job) => job >= washes.length)));
        return work(chosen) > left ? [{ washes: chosen, minutes: left }] : [];
    });
}

function programOf(problem: StockProblem, part: Part, isRenting: boolean): Model {
    const { pieces, washes, substitutions, lot, costs } = problem;
    const constraints = new Map<string, Constraint>();
    const variables = new Map<string, Map<string, number>>();
    const binaries = new Set<string>();
    const integers = new Set<string>();
    const put = (variable: string, constraint: string, coefficient: number): void => {
        const row = variables.get(variable) ?? new Map<string, number>();
        variables.set(variable, row.set(constraint, (row.get(constraint) ?? 0) + coefficient));
    };
    const atMost = (constraint: string, max: number): void => {
        constraints.set(constraint, { max });
    };
    /** With spares, and no more than can be missing at all: a tighter program with the same whole solutions. */
    const relief = (piece: number, count: number): number =>
        Math.min((1 + pieces[piece]!.spare) * count, Math.max(0, mostMissing(problem, piece)));

    for (const piece of part.pieces) {
        const { onHand, inUse, spare } = pieces[piece]!;
        atMost(`enough ${piece}`, onHand - (1 + spare) * inUse);
        if (isRenting) {
            put(`lots ${piece}`, `enough ${piece}`, -lot);
            put(`lots ${piece}`, COST, lot * costs.rent);
            integers.add(`lots ${piece}`);
        }
    }
    for (const index of part.washes) {
        const { piece, after, for: later, count, saves } = washes[index]!;
        const wash = `wash ${index}`;
        binaries.add(wash);
        put(wash, `enough ${piece}`, -relief(piece, saves));
        put(wash, COST, count * costs.wash);
        for (const once of [`after ${piece} ${after}`, `for ${piece} ${later}`]) {
            atMost(once, 1);
            put(wash, once, 1);
        }
    }
    for (const index of part.substitutions) {
        const { piece, by, count, site, courses } = substitutions[index]!;
        const swap = `swap ${index}`;
        binaries.add(swap);
        put(swap, `enough ${piece}`, -relief(piece, count));
        put(swap, `enough ${by}`, (1 + pieces[by]!.spare) * count);
        put(swap, COST, count * costs.substitute);
        atMost(`site ${site}`, 1);
        put(swap, `site ${site}`, 1);
        for (const other of part.washes) {
            const wash = washes[other]!;
            const touches = courses.includes(wash.after) || courses.includes(wash.for);
            if (touches && (wash.piece === piece || wash.piece === by)) {
                const either = `wash ${other} or swap ${index}`;
                atMost(either, 1);
                put(swap, either, 1);
                put(`wash ${other}`, either, 1);
            }
        }
    }
    crowdedSpans(problem).forEach(({ washes: inside, minutes }, span) => {
        if (part.washes.includes(inside[0]!)) {
            atMost(`span ${span}`, minutes);
            inside.forEach((wash) => put(`wash ${wash}`, `span ${span}`, washes[wash]!.job.work));
        }
    });
    return { direction: 'minimize', objective: COST, constraints, variables, binaries, integers };
}

/** What is missing of a piece, with spares, where nothing is done and it stands in for every other that it could. */
function mostMissing({ pieces, substitutions }: StockProblem, piece: number): number {
    const { onHand, inUse, spare } = pieces[piece]!;
    const standIn = substitutions.reduce((sum, swap) => sum + (swap.by === piece ? swap.count : 0), 0);
    return (1 + spare) * (inUse + standIn) - onHand;
}

const COST = 'cost';

function rentAll(problem: StockProblem): Choice {
    const lots = problem.pieces.map(({ onHand, inUse, spare }) =>
        lotsOf(Math.max(0, inUse + up(spare * inUse) - onHand), problem.lot),
    );
    const choice = { washes: [], substitutions: [], lots };
    return { ...choice, cost: costOf(problem, choice), isProved: false };
}

/** What a choice costs, by the terms of the problem. */
export function costOf(
    problem: StockProblem,
    { washes, substitutions, lots }: Pick<Choice, 'washes' | 'substitutions' | 'lots'>,
): number {
    const { costs, lot, isDelivered } = problem;
    const sum = (amounts: readonly number[]): number => amounts.reduce((total, amount) => total + amount, 0);
    const rented = sum(lots) * lot;
    return (
        rented * costs.rent +
        (rented > 0 && !isDelivered ? costs.delivery : 0) +
        sum(washes.map((wash) => problem.washes[wash]!.count)) * costs.wash +
        sum(substitutions.map((swap) => problem.substitutions[swap]!.count)) * costs.substitute
    );
}
