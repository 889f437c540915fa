/** What a simulated evening comes to for every course, table and dish. */
import type { Schedule } from './engine.js';
import { walkTo, type Trip } from './serving-a-course.js';
import type { SimulatedEvening } from './simulate.js';
import type { CourseRun, DishRun, PlateRun, Span, TableCourse } from './types.js';

/** In the order of the menu, coffee last; courses that nobody gets are left out. */
export function courseTimes(simulated: SimulatedEvening): CourseRun[] {
    const { evening } = simulated;
    const courses = evening.courses.flatMap((_, course) => courseRun(simulated, course) ?? []);
    const coffee = coffeeRun(simulated);
    return coffee ? [...courses, coffee] : courses;
}

interface Plate extends PlateRun {
    readonly dish: number;
}

function courseRun(simulated: SimulatedEvening, course: number): CourseRun | undefined {
    const { evening, before, service, times } = simulated;
    const { dishes } = evening.courses[course]!;
    const { call, tables: records } = service.courses[course]!;
    const plates: Plate[] = [];
    const tables: TableCourse[] = [];
    records.forEach((record, table) => {
        if (!record) {
            return;
        }
        const { name } = evening.tables[table]!;
        const stands = before.servings.get(course)?.[table];
        const mine = stands
            ? platesOf(simulated, name, stands.trips, before.times, before.shift)
            : platesOf(simulated, name, record.serving?.trips ?? [], times, 0);
        plates.push(...mine);
        tables.push({
            table: name,
            plated: spanOf(mine.map((plate) => plate.plated)),
            leftPass: spanOf(mine.map((plate) => plate.leftPass)),
            served: spanOf(mine.map((plate) => plate.served)),
            finished: times.end[record.eaten]!,
            cleared: spanOf(record.clearing.map((activity) => times.end[activity]!)),
            poured: record.pour === undefined ? undefined : times.end[record.pour]!,
        });
    });
    if (tables.length === 0) {
        return undefined;
    }
    return {
        course,
        fired: call === undefined ? before.shift : times.start[call]!,
        plated: around(tables.map((table) => table.plated)),
        leftPass: around(tables.map((table) => table.leftPass)),
        served: around(tables.map((table) => table.served)),
        finished: spanOf(tables.map((table) => table.finished)),
        cleared: around(tables.map((table) => table.cleared)),
        tables,
        dishes: dishes.flatMap(
            (_, dish) =>
                dishRun(
                    dish,
                    plates.filter((plate) => plate.dish === dish),
                ) ?? [],
        ),
    };
}

function platesOf(
    { evening }: SimulatedEvening,
    table: string,
    trips: readonly Trip[],
    times: Schedule,
    shift: number,
): Plate[] {
    return trips.flatMap(({ dishes, plated, carry, setDown }) => {
        const leftPass = times.start[carry]! + shift;
        const last = (setDown.from === 'end' ? times.end : times.start)[setDown.activity]! + setDown.lag + shift;
        return dishes.map((dish, index) => ({
            dish,
            table,
            plated: times.end[plated[index]!]! + shift,
            leftPass,
            served: last - (dishes.length - 1 - index) * evening.pace.settingDown,
        }));
    });
}

/** The first plate of a dish set down, and the last at the table where a plate is longest on its way. */
function dishRun(dish: number, plates: readonly Plate[]): DishRun | undefined {
    const way = (plate: Plate): number => plate.served - plate.plated;
    const [some] = plates;
    if (!some) {
        return undefined;
    }
    let first = some;
    let slowest = some;
    for (const plate of plates) {
        first = plate.served < first.served ? plate : first;
        slowest = way(plate) > way(slowest) ? plate : slowest;
    }
    const there = plates.filter((plate) => plate.table === slowest.table);
    const last = there.reduce((latest, plate) => (plate.served > latest.served ? plate : latest));
    return { dish, first: plateRun(first), last: plateRun(last) };
}

function plateRun({ table, plated, leftPass, served }: Plate): PlateRun {
    return { table, plated, leftPass, served };
}

function coffeeRun({ evening, service, times }: SimulatedEvening): CourseRun | undefined {
    const tables = service.coffee.flatMap((activity, table): TableCourse[] => {
        if (activity === undefined) {
            return [];
        }
        const { guests } = evening.tables[table]!.coffee;
        const last = times.end[activity]! - walkTo(evening, table);
        const served = { first: last - (guests - 1) * evening.pace.pouringGlass, last };
        const finished = last + evening.pace.coffeeTime;
        return [
            {
                table: evening.tables[table]!.name,
                plated: spanOf([times.start[activity]!]),
                leftPass: spanOf([times.start[activity]!]),
                served,
                finished,
                cleared: spanOf([finished]),
            },
        ];
    });
    if (tables.length === 0) {
        return undefined;
    }
    return {
        course: evening.courses.length,
        fired: Math.min(...tables.map((table) => table.leftPass.first)),
        plated: around(tables.map((table) => table.plated)),
        leftPass: around(tables.map((table) => table.leftPass)),
        served: around(tables.map((table) => table.served)),
        finished: spanOf(tables.map((table) => table.finished)),
        cleared: around(tables.map((table) => table.cleared)),
        tables,
        dishes: [],
    };
}

/** The last table cleared, coffee served. */
export function overAt(courses: readonly CourseRun[], menu: number): number {
    return Math.max(0, ...courses.map(({ course, cleared, served }) => (course < menu ? cleared.last : served.last)));
}

function spanOf(times: readonly number[]): Span {
    return { first: Math.min(...times), last: Math.max(...times) };
}

function around(spans: readonly Span[]): Span {
    return { first: Math.min(...spans.map((span) => span.first)), last: Math.max(...spans.map((span) => span.last)) };
}
