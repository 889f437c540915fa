/** The run sheet, for the compiled plan: who does what when, what waits, and what more people would buy. */
import { customSpecs, type CustomName } from '../plan/customs.js';
import { targetsOf } from '../service/run/targets.js';
import type { CourseRun, DishRun, Replications, Run, RunTask, Span, TableCourse } from '../service/run/types.js';
import { momentJson } from './plan-clock.js';
import type { Telling } from './plan-menu.js';
import { CONTACT_CAUTION, markedPlatesJson } from './plan-seats.js';
import { at, figureJson, type Json } from './plan-values.js';

const MODEL =
    'A simulation, event by event: every plate, trip and table in turn, each person at one thing at a time, what is most urgent first. The captain calls a course for the whole room so that its plates meet tables that are ready.';
const CAUTION =
    'Planned, not promised: people are slower and faster than a plan, and guests more so. Figures marked as assumed are common practice without a source; a house that measures its own states them.';

export function runJson(telling: Telling): Json | undefined {
    const { plan, places, service } = telling;
    const { run } = service;
    if (!run) {
        return undefined;
    }
    const targets = targetsOf(plan.customs);
    return {
        model: MODEL,
        source: 'quantities 9',
        ...at(places, plan.team?.origin),
        seated: momentJson(plan, 0),
        over: momentJson(plan, run.over),
        serving: {
            from: plan.customs['serve-from'].value,
            clearedFrom: plan.customs['clear-from'].value,
            drinksFrom: 'right',
            first: plan.customs['served-first'].value,
            round: 'to the right, counter-clockwise seen from above',
            source: 'table-service 6.4, 6.6, 8.13, 8.14',
        },
        tables: run.tables.map(({ name, guests, server, fromPass }) => ({
            table: name,
            guests,
            server: run.people[server]!.name,
            fromPassMillimetres: Math.round(fromPass),
        })),
        courses: run.courses.map((course) => courseJson(telling, course)),
        speeches: run.speeches.map(({ speech, start, end, poured }) => ({
            title: plan.menu?.speeches[speech]?.title,
            sort: plan.menu?.speeches[speech]?.sort,
            ...at(places, plan.menu?.speeches[speech]?.origin),
            begins: momentJson(plan, start),
            ends: momentJson(plan, end),
            glassesFull: poured === undefined ? undefined : momentJson(plan, poured),
        })),
        people: run.people.map(({ name, role, busy, idle }) => ({
            name,
            role,
            busyMinutes: round(busy),
            idleMinutes: round(idle),
        })),
        bottleneck: run.bottleneck && {
            role: run.bottleneck.role,
            busyShare: round(run.bottleneck.busy),
            oneMore: run.bottleneck.oneMore.map(({ role, sooner, shorterWait }) => ({
                role,
                overSoonerMinutes: round(sooner),
                longestWaitShorterMinutes: round(shorterWait),
            })),
        },
        asks: {
            longestTableWaitMinutes: round(targets.tableWait),
            longestSeatWaitMinutes: round(targets.seatWait),
            longestWineWaitMinutes: round(targets.wineWait),
            windowMinutes: round(targets.window),
            guestsPerServer: targets.guestsPerServer,
        },
        platesCaution: CONTACT_CAUTION,
        tasks: run.tasks.map((task) => taskJson(telling, run, task)),
        assumed: run.assumed.map((name) => assumedJson(telling, name)),
        replications: run.replications && replicationsJson(telling, run.replications),
        caution: CAUTION,
    };
}

function titleOf({ plan }: Telling, course: number): string | null {
    const courses = plan.menu?.courses ?? [];
    return course < 0 ? null : (courses[course]?.title ?? 'coffee');
}

function courseJson(telling: Telling, course: CourseRun): Json {
    const { plan, places } = telling;
    const written = plan.menu?.courses[course.course];
    const slowest = later(course.tables, (table) => table.served.first);
    const apart = later(course.tables, (table) => table.served.last - table.served.first);
    return {
        course: titleOf(telling, course.course),
        ...at(places, written?.head ?? plan.menu?.coffee?.head),
        called: momentJson(plan, course.fired),
        plated: spanJson(telling, course.plated),
        leavesPass: spanJson(telling, course.leftPass),
        served: spanJson(telling, course.served),
        finished: spanJson(telling, course.finished),
        cleared: spanJson(telling, course.cleared),
        // From the first table served to the last.
        slowestTable: { table: slowest.table, waitMinutes: round(slowest.served.first - course.served.first) },
        // From the first guest of a table to the last.
        slowestSeats: { table: apart.table, waitMinutes: round(apart.served.last - apart.served.first) },
        tables: course.tables.map(tableJson),
        dishes: course.dishes.map((dish) => dishJson(written?.dishes[dish.dish]?.title, dish)),
        markedPlates: markedPlatesJson(telling, course.course),
    };
}

function later(tables: readonly TableCourse[], of: (table: TableCourse) => number): TableCourse {
    return tables.reduce((latest, table) => (of(table) > of(latest) ? table : latest));
}

function spanJson({ plan }: Telling, { first, last }: Span): Json {
    return { first: momentJson(plan, first), last: momentJson(plan, last) };
}

/** Minutes after guests are seated. */
function tableJson({ table, plated, leftPass, served, poured, finished, cleared }: TableCourse): Json {
    const minutes = ({ first, last }: Span): Json => ({ first: round(first), last: round(last) });
    return {
        table,
        plated: minutes(plated),
        leavesPass: minutes(leftPass),
        served: minutes(served),
        poured: poured === undefined ? undefined : round(poured),
        finished: round(finished),
        cleared: minutes(cleared),
    };
}

function dishJson(dish: string | undefined, { first, last }: DishRun): Json {
    const plate = ({ table, plated, leftPass, served }: DishRun['first']): Json => ({
        table,
        plated: round(plated),
        leavesPass: round(leftPass),
        served: round(served),
    });
    return { dish, first: plate(first), last: plate(last) };
}

function taskJson(telling: Telling, run: Run, { person, sort, course, table, start, end, count }: RunTask): Json {
    return {
        who: run.people[person]!.name,
        does: sort,
        course: titleOf(telling, course),
        table,
        local: momentJson(telling.plan, start).local,
        from: round(start),
        to: round(end),
        count,
    };
}

function assumedJson({ plan }: Telling, name: CustomName): Json {
    const spec = customSpecs.find((each) => each.name === name)!;
    const { value } = plan.customs[name];
    return {
        custom: name,
        decides: spec.title,
        ...(typeof value === 'number' && spec.figure ? figureJson(spec.figure.dimension, value) : { choice: value }),
        per: spec.figure?.per,
        source: 'common practice, no source',
    };
}

function replicationsJson(telling: Telling, { asked, count, seed, window, courses, over }: Replications): Json {
    return {
        ...at(telling.places, telling.plan.event?.replications?.origin),
        asked,
        run: count,
        seed,
        windowMinutes: round(window),
        draws: 'Eating times and trips, each from a triangle between the least and the most allowed, the planned time the likeliest.',
        courses: courses.map((course) => ({
            course: titleOf(telling, course.course),
            due: momentJson(telling.plan, course.due),
            chanceInWindow: course.chance,
            nineOfTenStart: spanJson(telling, course.starts),
        })),
        nineOfTenOver: spanJson(telling, over),
    };
}

/** Two decimals: half a second. */
const round = (value: number): number => Math.round(value * 100) / 100;
