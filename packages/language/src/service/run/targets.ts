/** What the house asks of a service, and where an evening misses it. Times in min. */
import { guestsPerServer } from '../../plan/customs.js';
import type { Customs } from '../../plan/types.js';
import type { Evening } from './evening.js';
import { figureOf } from './pace.js';
import type { CourseRun, SpeechRun } from './types.js';

export interface Targets {
    /** From the first table that is served a course to the last. */
    readonly tableWait: number;
    /** From the first guest of a table to the last. */
    readonly seatWait: number;
    /** From a table's last plate, or a toast's hour, to its last glass. */
    readonly wineWait: number;
    /** How late a course may start. */
    readonly window: number;
    readonly guestsPerServer: number;
}

export function targetsOf(customs: Customs): Targets {
    const ratio = customs['server-ratio'].value;
    return {
        tableWait: figureOf(customs, 'longest-table-wait'),
        seatWait: figureOf(customs, 'longest-seat-wait'),
        wineWait: figureOf(customs, 'longest-wine-wait'),
        window: figureOf(customs, 'window'),
        guestsPerServer:
            typeof ratio === 'number'
                ? figureOf(customs, 'server-ratio')
                : guestsPerServer[customs['service-style'].value],
    };
}

export interface Miss {
    readonly sort: 'table-wait' | 'seat-wait' | 'wine-wait' | 'toast-wait' | 'late';
    /** Index in the menu: of a course; of a toast among the toasts and speeches. */
    readonly course: number;
    /** The table that waits longest. */
    readonly table?: string;
    readonly minutes: number;
    readonly limit: number;
}

/** Differences of less than this are rounding, min. */
const NOISE = 1e-6;

/** In the order of the menu; of each sort, the worst of every course. */
export function missesOf(
    planned: Evening,
    courses: readonly CourseRun[],
    speeches: readonly SpeechRun[],
    targets: Targets,
): Miss[] {
    const misses = courses.flatMap(({ course, tables, served }): Miss[] => {
        const plan = planned.courses[course];
        if (!plan) {
            return [];
        }
        const miss = (sort: Miss['sort'], limit: number, minutes: number, table?: string): Miss[] =>
            minutes > limit + NOISE ? [{ sort, course, minutes, limit, table }] : [];
        const worst = (waitOf: (table: CourseRun['tables'][number]) => number) => {
            const waits = tables.map(waitOf);
            const longest = Math.max(...waits);
            return { minutes: longest, table: tables[waits.indexOf(longest)]!.table };
        };
        const last = worst((table) => table.served.first - served.first);
        const seat = worst((table) => table.served.last - table.served.first);
        const wine = worst((table) => (table.poured === undefined ? 0 : table.poured - Math.max(0, table.served.last)));
        return [
            // What stands there when guests sit is waited for by nobody.
            ...(plan.standsBefore === undefined
                ? [
                      ...(plan.startsAt === undefined
                          ? []
                          : miss('late', targets.window, served.first - plan.startsAt)),
                      ...miss('table-wait', targets.tableWait, last.minutes, last.table),
                      ...miss('seat-wait', targets.seatWait, seat.minutes, seat.table),
                  ]
                : []),
            ...miss('wine-wait', targets.wineWait, wine.minutes, wine.table),
        ];
    });
    // One that follows a course waits for it, and so for its glasses.
    const toasts = speeches.flatMap(({ speech, at, poured }, index): Miss[] => {
        const minutes = at === undefined || poured === undefined ? 0 : poured - at;
        return planned.speeches[index]?.after === undefined && minutes > targets.wineWait + NOISE
            ? [{ sort: 'toast-wait', course: speech, minutes, limit: targets.wineWait }]
            : [];
    });
    return [...misses, ...toasts];
}

/** The fewest servers that the house's ratio allows. */
export function fewestServers(guests: number, { guestsPerServer: each }: Targets): number {
    return Math.ceil(guests / each - NOISE);
}
