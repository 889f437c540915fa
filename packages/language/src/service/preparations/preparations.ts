/** Setting up, warming, chilling and striking of a plan: what the calculations need of it, as plain data. */
import type { CustomName } from '../../plan/customs.js';
import type { Plan } from '../../plan/types.js';
import { eveningClock } from '../clock/evening.js';
import { lazily } from '../../plan/lazily.js';
import { remember } from '../remember.js';
import { isAssumed } from '../run/pace.js';
import type { Run } from '../run/types.js';
import type { Service } from '../types.js';
import { setUpTasks, strikeTasks, type Rates, type Workload } from './derived-tasks.js';
import type { Pool } from './drafts.js';
import { handsOf } from './hands.js';
import { planSetUp, type SetUpInput } from './set-up.js';
import { roleName, statedTasks, withStated, type StatedTask } from './stated-tasks.js';
import { planStrike, type StrikeInput } from './strike.js';
import type { ChillingStart, Preparations, WarmingLoad } from './types.js';
import { workloadOf } from './workload.js';

type ForPreparations = Pick<
    Service,
    | 'guestCount'
    | 'variations'
    | 'seats'
    | 'room'
    | 'pull'
    | 'counts'
    | 'stock'
    | 'facts'
    | 'servings'
    | 'chilling'
    | 'run'
    | 'warming'
>;

/** Everything the heavy part needs, without a place in the text. */
export interface PreparationsInput {
    /** Of the team, in the order of the text. */
    readonly pools: readonly Pool[];
    /** Absent where there are no covers to lay: then only the plan's own tasks are planned. */
    readonly workload?: Workload;
    readonly rates: Rates;
    readonly setup: readonly StatedTask[];
    readonly strike: readonly StatedTask[];
    readonly times: Omit<SetUpInput, 'drafts' | 'pools'> & Omit<StrikeInput, 'drafts' | 'pools'>;
}

/** Where a house does not say how fast it polishes: pieces a person in a minute. Common practice, no source. */
const USUAL_POLISH = 6;

/** The dish machine among the pools. */
const MACHINE = 'dish machine';

/** @returns `undefined` where the event does not say when guests are seated, or there is neither a team nor a task */
export function preparationsOf(plan: Plan, service: ForPreparations): Preparations | undefined {
    const input = preparationsInput(plan, service);
    if (!input) {
        return undefined;
    }
    const prepared = prepare(input);
    return {
        doors: input.times.doors,
        get setUp() {
            return prepared.setUp;
        },
        get strike() {
            return prepared.strike;
        },
        get warming() {
            return service.warming;
        },
        chilling: chillingStarts(service),
        assumed: assumedRates(plan, input, service.warming),
    };
}

/** Sets up and strikes, each when it is asked for. Kept: what does not depend on the room or the team changes none of it. */
export const prepare = remember((input: PreparationsInput): Pick<Preparations, 'setUp' | 'strike'> => {
    const { workload, rates, setup, strike, times } = input;
    const pools = [...input.pools, { role: MACHINE, count: 1, isOfTheFloor: false, isMachine: true }];
    // Who is named by tasks alone comes for those, and is not there for the rest.
    const machine = input.pools.length;
    const hands = [handsOf(pools, machine), handsOf(pools, machine)] as const;
    const derived = workload && hands[0].isAnybody;
    const before = withStated(derived ? setUpTasks(workload, rates, hands[0]) : [], setup, pools);
    const after = withStated(derived ? strikeTasks(workload, rates, hands[1]) : [], strike, pools);
    const [setUp, struck] = [
        lazily(() => planSetUp({ ...times, drafts: before, pools })),
        lazily(() => planStrike({ ...times, drafts: after, pools })),
    ];
    return {
        get setUp() {
            return setUp();
        },
        get strike() {
            return struck();
        },
    };
});

/** Plain data: the same for every plan that is prepared in the same way. */
export function preparationsInput(plan: Plan, service: ForPreparations): PreparationsInput | undefined {
    const clock = eveningClock(plan);
    if (!clock || ((plan.team?.roles ?? []).length === 0 && plan.tasks.length === 0)) {
        return undefined;
    }
    const { customs, event } = plan;
    const { run } = service;
    const doors = Math.min(clock.after(event?.doors, 'doors') ?? 0, firstService(run));
    const gone = clock.after(event?.ends, 'end');
    const guestsGone = Math.max(run?.over ?? 0, gone ?? (run?.over ?? 0) + customs.lingering.value);
    const getIn = customs['get-in'].value;
    const getOut = customs['get-out'].value;
    const mealAt = clock.after(event?.crew?.at);
    const hasMeal = event?.crew !== undefined && (mealAt === undefined || mealAt < 0);
    return {
        pools: poolsOf(plan),
        workload: workloadOf(plan, service),
        rates: ratesOf(plan),
        setup: statedTasks(plan.tasks, 'setup'),
        strike: statedTasks(plan.tasks, 'strike'),
        times: {
            doors,
            lineUp: customs['line-up'].value,
            briefing: customs.briefing.value,
            meal: hasMeal ? { minutes: customs['staff-meal'].value, at: mealAt } : undefined,
            callAhead: customs['call-ahead'].value,
            getIn: typeof getIn === 'number' ? getIn : undefined,
            readyChance: customs['ready-chance'].value,
            guestsGone,
            isGoneStated: gone !== undefined,
            by: gone !== undefined && typeof getOut === 'number' ? gone + getOut : undefined,
        },
    };
}

/** Minute at which the team begins to serve: water is poured and first plates are set before guests sit. */
function firstService(run: Run | undefined): number {
    return Math.min(0, ...(run?.tasks ?? []).slice(0, 1).map((task) => task.start));
}

const KITCHEN = ['plating-line', 'plater'];

function poolsOf({ team }: Plan): Pool[] {
    const counts = new Map<string, number>();
    for (const { role, count } of team?.roles ?? []) {
        const name = roleName(role.name);
        counts.set(name, (counts.get(name) ?? 0) + count.count);
    }
    return [...counts].map(([role, count]) => ({ role, count, isOfTheFloor: !KITCHEN.includes(role) }));
}

function ratesOf(plan: Plan): Rates {
    const { customs, house } = plan;
    const polish = polishRate(plan);
    const racks = house.washing.find((line) => line.sort === 'rate' && !line.polish && /^racks?$/.test(line.rate.what));
    const rate = racks?.sort === 'rate' && racks.rate.amount > 0 ? racks.rate : undefined;
    return {
        cloth: customs['laying-cloth'].value,
        piece: customs['laying-piece'].value,
        napkin: customs['folding-napkin'].value,
        card: customs['placing-card'].value,
        polish: 1 / (polish ?? USUAL_POLISH),
        strikePiece: customs['striking-piece'].value,
        strip: customs['stripping-table'].value,
        breakDown: customs['breaking-down-table'].value,
        count: customs['counting-piece'].value,
        rack: rate && rate.perMinutes / rate.amount,
    };
}

/** Pieces a minute, as the house's `washing` says. */
function polishRate({ house }: Plan): number | undefined {
    const line = house.washing.find((each) => each.sort === 'rate' && each.polish);
    return line?.sort === 'rate' && line.rate.amount > 0 ? line.rate.amount / line.rate.perMinutes : undefined;
}

const RATES: readonly CustomName[] = [
    'laying-cloth',
    'laying-piece',
    'folding-napkin',
    'placing-card',
    'briefing',
    'line-up',
    'staff-meal',
    'call-ahead',
    'lingering',
    'striking-piece',
    'stripping-table',
    'breaking-down-table',
    'counting-piece',
    'plate-warming',
];

function assumedRates(plan: Plan, { workload, times }: PreparationsInput, warming: readonly WarmingLoad[]): string[] {
    const isUsed: Partial<Record<CustomName, boolean>> = {
        'staff-meal': times.meal !== undefined,
        lingering: !times.isGoneStated,
        'plate-warming': warming.length > 0,
        'placing-card': workload?.tables.some((table) => table.cards > 0) ?? false,
    };
    const ofWork = ['briefing', 'line-up', 'call-ahead'];
    const used = RATES.filter((name) => isUsed[name] ?? (workload !== undefined || ofWork.includes(name)));
    return [
        ...used.filter((name) => isAssumed(name, plan.customs)),
        ...(workload && polishRate(plan) === undefined ? ['polish'] : []),
    ];
}

function chillingStarts({ chilling }: ForPreparations): ChillingStart[] {
    return chilling
        .flatMap(({ title, startBy, way, takes, bottles }) =>
            startBy === undefined
                ? []
                : [{ title, at: startBy, way, takes, bottles: bottles?.reduce((sum, each) => sum + each.count, 0) }],
        )
        .toSorted((a, b) => a.at - b.at);
}
