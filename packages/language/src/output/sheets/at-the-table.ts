/** What servers pour and pass at the table, course by course, in the words of those who send it and of those who bring it. */
import { listed } from '../../rules/wording.js';
import { atTheTable, type AtTheTable } from '../../service/table-service.js';
import type { SeatedGuest } from '../../service/seats/types.js';
import type { Dish } from '../../plan/types.js';
import { courseTitle, pieceCalled, plateOf, type SheetSource } from './evening.js';
import { seatNumbers } from './plates-at-table.js';

/** One thing that is poured or passed, with the dishes of the course that it is for. */
interface Apart extends AtTheTable {
    readonly dishes: readonly Dish[];
    /** Whether other dishes of the course do without it. */
    readonly isForSome: boolean;
}

function apartIn({ service }: SheetSource, course: number, isServed: (dish: Dish) => boolean = () => true): Apart[] {
    const given = (service.servings[course]?.portions ?? []).filter(({ dish, count }) => count > 0 && isServed(dish));
    const found = new Map<number, { readonly what: AtTheTable; readonly dishes: Dish[] }>();
    for (const { dish } of given) {
        for (const what of atTheTable(dish)) {
            const known = found.get(what.key) ?? { what, dishes: [] };
            known.dishes.push(dish);
            found.set(what.key, known);
        }
    }
    return [...found.values()].map(({ what, dishes }) => ({
        ...what,
        dishes,
        isForSome: what.beside !== undefined && dishes.length < given.length,
    }));
}

/** `pass Cream gravy in the sauce boat, not to T3 seat 1`. @param guests of the station */
export function bringsToTable(
    source: SheetSource,
    course: number,
    dishes: readonly (Dish | undefined)[],
    guests: readonly SeatedGuest[],
): string[] {
    return apartIn(source, course, (dish) => dishes.includes(dish)).map((apart) => {
        const kept = guests.filter((guest) => {
            const plate = plateOf(source, course, guest);
            return apart.dishes.some(({ index }) => index === plate?.dish) && isWithout(apart, plate?.leftOff);
        });
        const tables = [...new Set(kept.map(({ table }) => table))].map((table) => {
            const own = kept.filter((guest) => guest.table === table);
            return `${table} seat${own.length > 1 ? 's' : ''} ${seatNumbers(own)}`;
        });
        return `${does(source, apart)}${tables.length > 0 ? `, not to ${listed(tables)}` : ''}`;
    });
}

/** The same for the whole room: how many guests it is not for, instead of their seats. */
export function pouredAndPassed(source: SheetSource): string[] {
    return coursesOf(source).flatMap((course) =>
        apartIn(source, course).map((apart) => `${does(source, apart)}${notFor(source, course, apart)}`),
    );
}

/** What the kitchen sends apart from the plates, or instead of what would be in them. */
export function sentApart(source: SheetSource): string[] {
    const { plan } = source;
    return coursesOf(source).flatMap((course) =>
        apartIn(source, course).map((apart) => {
            const { beside, gear, how, title, dishes, isForSome } = apart;
            const isWhole = beside === undefined && !plan.menu?.courses[course]?.hasDishes;
            const where = isWhole ? '' : `${courseTitle(plan, course)}: `;
            const inGear = `${preposition(apart)} the ${pieceCalled(plan, gear)}`;
            const at = how === 'poured' ? 'to be poured at the table' : 'to be passed at the table';
            const vessel = dishes[0]!.served.vessel?.piece.name;
            return beside
                ? `${where}${title} goes apart${isForSome ? `, for ${listed(dishes.map((dish) => dish.title))},` : ''} ${inGear}, ${at}${notFor(source, course, apart)}.`
                : `${where}${title} goes ${inGear}, ${at}; the ${vessel === undefined ? 'vessel' : pieceCalled(plan, vessel)} goes empty.`;
        }),
    );
}

const coursesOf = ({ plan }: SheetSource): number[] => plan.menu?.courses.map(({ index }) => index) ?? [];

/** `pour Tomato soup from the soup tureen with ladle`. */
function does({ plan }: SheetSource, apart: Apart): string {
    const { how, title, gear, dishes, isForSome } = apart;
    const pairs = plan.cupboard.pieces.get(gear)?.pairs.map(({ name }) => pieceCalled(plan, name)) ?? [];
    const withPairs = pairs.length > 0 ? ` with ${listed(pairs)}` : '';
    const to = isForSome ? `, with ${listed(dishes.map((dish) => dish.title))}` : '';
    return how === 'poured'
        ? `pour ${title} from the ${pieceCalled(plan, gear)}${withPairs}${to}`
        : `pass ${title} ${preposition(apart)} the ${pieceCalled(plan, gear)}${withPairs}${to}`;
}

/** A garnish is given with a spoon. */
const preposition = ({ gear }: Apart): string => (gear.endsWith('spoon') ? 'with' : 'in');

function notFor({ service }: SheetSource, course: number, apart: Apart): string {
    const count = service.seats.plates
        .filter(
            (plate) =>
                plate.course === course &&
                apart.dishes.some(({ index }) => index === plate.dish) &&
                isWithout(apart, plate.leftOff),
        )
        .reduce((sum, plate) => sum + plate.count, 0);
    return count === 0 ? '' : `, not for ${count} guest${count === 1 ? '' : 's'}`;
}

const isWithout = ({ beside }: Apart, leftOff: readonly string[] = []): boolean =>
    beside !== undefined && leftOff.includes(beside.title ?? beside.sort);
