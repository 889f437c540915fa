/** What is done before guests sit: water poured, and courses that stand at the places when they come. */
import { AS_PLANNED, type Draws } from './draws.js';
import { schedule, type Schedule } from './engine.js';
import type { Evening } from './evening.js';
import { serveTable, type Serving } from './serving-a-course.js';
import { WorkNetwork } from './work-network.js';
import type { Workforce } from './workforce.js';

export interface BeforeSeating {
    readonly network: WorkNetwork;
    readonly times: Schedule;
    /** To be added to its times: all of it is over as long before guests sit as the plan says. */
    readonly shift: number;
    /** By course, then by table. */
    readonly servings: ReadonlyMap<number, readonly (Serving | undefined)[]>;
    /** When it is over, and everybody is free. */
    readonly over: number;
}

export function beforeSeating(evening: Evening, workforce: Workforce, draws: Draws = AS_PLANNED): BeforeSeating {
    const { tables, courses, pace } = evening;
    const network = new WorkNetwork(workforce.pools);
    const start = network.add({ sort: 'wait', course: -1, table: -1, count: 0 }, { duration: 0 });
    if (evening.isWaterPouredBeforeSeating && !evening.underway) {
        workforce.order.forEach((table, rank) => {
            const { waters } = tables[table]!;
            if (waters > 0) {
                const duration = waters * pace.pouringGlass;
                const pool = workforce.stationOf[table]!;
                network.add({ sort: 'pour', course: -1, table, count: waters }, { duration, pool }, { rank });
            }
        });
    }
    const servings = new Map<number, (Serving | undefined)[]>();
    const standing: number[] = [];
    courses.forEach(({ standsBefore }, course) => {
        if (standsBefore === undefined || evening.underway) {
            return;
        }
        standing.push(standsBefore);
        const served: (Serving | undefined)[] = [];
        workforce.order.forEach((table, rank) => {
            if (tables[table]!.courses[course]!.plates.length > 0) {
                const when = { call: start, callAhead: start, mayLeave: [], isReady: [] };
                served[table] = serveTable({ evening, workforce, network, draws, course, table, rank, ...when });
            }
        });
        servings.set(course, served);
    });
    const times = schedule(network, network.order);
    const lastSetDown = Math.max(
        -Infinity,
        ...[...servings.values()].flatMap((tables) =>
            tables.flatMap((serving) => (serving ? times.end[serving.served]! : [])),
        ),
    );
    // What stands at the places stands as long as the plan says; where nothing does, all is done before guests are called.
    const shift =
        standing.length > 0
            ? Math.min(-Math.min(...standing) - lastSetDown, -times.finish)
            : -pace.seatingTime - times.finish;
    return { network, times, shift, servings, over: shift + times.finish };
}
