/** What sheets are worded from, and the words that several of them share. Nothing is computed here. */
import { several } from '../../rules/wording.js';
import { eveningClock, type EveningClock } from '../../service/clock/evening.js';
import type { PlateSort, SeatedGuest } from '../../service/seats/types.js';
import type { GuestGroup, Service, Variation } from '../../service/types.js';
import { isAllergenNeed } from '../../service/diets.js';
import type { Finding } from '../../rules/rule.js';
import type { Dish, Plan } from '../../plan/types.js';
import type { SheetFoot } from './sheet.js';

/** The result of `check`, and what the sheets are asked to show. */
export interface SheetSource {
    readonly plan: Plan;
    readonly service: Service;
    readonly findings: readonly Finding[];
    /** Guests of the list by their names; else by initials, for needs are health data. */
    readonly names?: boolean;
}

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** What stands on every page: event, day, revision. */
export function footOf({ plan }: Pick<SheetSource, 'plan'>): SheetFoot {
    const { event } = plan;
    return {
        event: event?.title ?? plan.file,
        date: event?.date?.iso === undefined ? undefined : dayInWords(event.date.iso),
        day: event?.date?.iso,
        revision: event?.revision && `revision ${event.revision.count}`,
    };
}

/** `Saturday 17 October 2026`. @param iso `2026-10-17` */
export function dayInWords(iso: string): string {
    const [year, month, day] = iso.split('-').map(Number) as [number, number, number];
    const weekday = DAYS[new Date(Date.UTC(year, month - 1, day)).getUTCDay()]!;
    return `${weekday} ${day} ${MONTHS[month - 1]!} ${year}`;
}

/** What the clocks show so many minutes after guests are seated; where nobody says when that is, `+12 min`. */
export function faces(plan: Plan): (minutes: number | undefined) => string {
    const clock: EveningClock | undefined = eveningClock(plan);
    return (minutes) => {
        if (minutes === undefined) {
            return '–';
        }
        const whole = Math.round(minutes);
        return clock ? clock.face(minutes) : `${whole < 0 ? '−' : '+'}${Math.abs(whole)} min`;
    };
}

/** A piece as people call it: `soup spoon`. */
export function pieceCalled(plan: Plan, name: string): string {
    return plan.cupboard.pieces.get(name)?.called ?? name.replaceAll('-', ' ');
}

/** `1 soup spoon`, `84 soup spoons`. */
export function piecesCalled(plan: Plan, name: string, count: number): string {
    const called = pieceCalled(plan, name);
    return `${count} ${count === 1 ? called : several(called)}`;
}

export function courseTitle({ menu }: Plan, course: number): string {
    return course < 0 ? 'Bread' : (menu?.courses[course]?.title ?? 'Coffee');
}

/** The dish of a plate: of a course by its index in it, of the bread as its serving numbers them. */
export function dishOf({ plan, service }: SheetSource, course: number, dish: number): Dish | undefined {
    const dishes =
        course < 0
            ? service.bread?.serving.portions.map((portion) => portion.dish)
            : plan.menu?.courses[course]?.dishes;
    return dishes?.find(({ index }) => index === dish);
}

/** Lower case where it begins with a capital by accident of place: `bread` stays what it is. */
export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A name, initials, or nothing. */
export function guestCalled({ plan, names }: SheetSource, guest: SeatedGuest): string {
    const listed = guest.listed === undefined ? undefined : plan.seating[guest.listed];
    return names && listed ? listed.name.text : (guest.initials ?? '');
}

/** What a guest needs, in words; nothing where they need nothing. */
export function needsOf(group: GuestGroup | undefined): string {
    return group && group.needs.length > 0 ? group.label : '';
}

/** What has to be known of a seat: what its guest needs, and whether a wheelchair has room there. */
export function seatNeeds({ service }: SheetSource, { table, seat, group }: SeatedGuest): string {
    const isAccessible = service.tables
        .find(({ name }) => name === table)
        ?.seats.some(({ number, accessible }) => number === seat && accessible);
    return [needsOf(service.groups[group]), isAccessible ? 'accessible place' : '']
        .filter((word) => word !== '')
        .join('; ');
}

/** True where somebody would be hurt by the wrong plate. */
export const isAllergenPlate = (plate: PlateSort): boolean => plate.because.includes('allergen');

/** One plate that goes to one seat and must not be another. */
export interface AllergenPlate {
    readonly course: number;
    readonly plate: PlateSort;
    readonly guest: SeatedGuest;
    readonly marker: string;
}

/** Every plate of the evening from which an allergen is kept, in the order served: bread first, then course by course. */
export function allergenPlates(source: SheetSource): AllergenPlate[] {
    const { service, plan } = source;
    const isGuarded = (guest: SeatedGuest): boolean =>
        service.groups[guest.group]!.needs.some((need) => isAllergenNeed(need, plan.cupboard));
    const guarded = service.seats.guests.filter(isGuarded);
    return coursesWithBread(source).flatMap((course) =>
        guarded.flatMap((guest): AllergenPlate[] => {
            const plate = plateOf(source, course, guest);
            return plate && isAllergenPlate(plate) ? [{ course, plate, guest, marker: plate.marker ?? 'A' }] : [];
        }),
    );
}

/** In the order served: bread, where there is any, as -1, then the menu's courses by index. */
export function coursesWithBread({ plan, service }: SheetSource): number[] {
    return [...(service.bread ? [-1] : []), ...(plan.menu?.courses.map(({ index }) => index) ?? [])];
}

/** The plate that a guest gets in a course; -1 for bread. */
export function plateOf({ service }: SheetSource, course: number, guest: SeatedGuest): PlateSort | undefined {
    const dish = course < 0 ? guest.bread : guest.dishes[course];
    return service.seats.plates.find(
        (each) => each.course === course && each.dish === dish && each.groups.includes(guest.group),
    );
}

/** The dish that tells a guest's plates from the others', such as the main; several where several courses offer a choice. */
export function chosenDishes({ plan }: SheetSource, variation: Variation): Dish[] {
    return variation.dishes.filter(
        (dish, course): dish is Dish => dish !== undefined && (plan.menu?.courses[course]?.dishes.length ?? 0) > 1,
    );
}

/** `server 3`, whose station the table is; nothing where no run sheet tells. */
export function serverOf({ service }: SheetSource, table: string): string | undefined {
    const { run } = service;
    const server = run?.tables.find(({ name }) => name === table)?.server;
    return server === undefined ? undefined : run!.people[server]?.name;
}

/** What `run.over` is the time of: cups are cleared after it, while guests sit on. */
export function overCalled({ service }: Pick<SheetSource, 'service'>): string {
    return service.coffee ? 'courses cleared and coffee served' : 'service over';
}

/** Half-degrees would promise what no model keeps. */

export const CONTACT =
    'A mark keeps plates apart, nothing else. Clean board, clean tongs, clean hands; no shared oil. Traces are not computed: ask the guest, check the label.';
export const FIGURES_ADVISE = 'Figures are planning estimates: thermometer, local food code and licensed staff decide.';
