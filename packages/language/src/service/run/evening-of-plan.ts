import type { CustomName } from '../../plan/customs.js';
import { findCourse } from '../../plan/names.js';
import type { Course, Plan, Speech } from '../../plan/types.js';
import { eveningClock } from '../clock/evening.js';
import { isWaiting } from '../cover.js';
import { isDessertCourse } from '../facts.js';
import type { Service } from '../types.js';
import type { Evening, EveningCourse, EveningSpeech, EveningTable } from './evening.js';
import { figureOf, isAssumed, paceOf } from './pace.js';
import { tableWork } from './table-work.js';
import { teamOf, withoutHands } from './team-of-plan.js';

/** What the simulation needs of the service; never what is computed from the simulation. */
export type ForEvening = Pick<
    Service,
    'guestCount' | 'groups' | 'variations' | 'facts' | 'pours' | 'drinks' | 'bread' | 'coffee' | 'seats' | 'room'
>;

export interface PlannedEvening {
    readonly evening: Evening;
    /** Customs without a source that are used and that the house does not state. */
    readonly assumed: readonly CustomName[];
}

/** The plan as the simulation takes it; `undefined` where it names no guests, courses, tables or servers, or nobody to plate. */
export function eveningOf(plan: Plan, service: ForEvening): PlannedEvening | undefined {
    const { menu, customs } = plan;
    if (!menu || menu.courses.length === 0 || !plan.team || service.seats.guests.length === 0) {
        return undefined;
    }
    const used = new Set<CustomName>(['walking', 'setting-down', 'clearing-cover', 'covers-a-trip', 'plates-a-trip']);
    const use = (name: CustomName): number => {
        used.add(name);
        return figureOf(customs, name);
    };
    const { isPaceStated, ...team } = teamOf(plan, figureOf(customs, 'plating-rate'));
    if (team.servers <= 0 || withoutHands(plan, 'plating')) {
        return undefined;
    }
    if (team.lines > 0 && !isPaceStated) {
        use('plating-rate');
    }
    if (team.runners > 0) {
        use('handing-over');
    }
    const isClearedOneByOne = customs.clearing.value === 'guest-by-guest';
    const courses = menu.courses.map((course) =>
        courseOf(plan, course, use, isClearedOneByOne || plan.event?.replications !== undefined),
    );
    const tables = tablesOf(plan, service, use);
    noteWork(tables, courses, use);
    if (plan.event?.replications) {
        use('trip-spread');
    }
    const underway = plan.underway && { at: plan.underway.minutes, next: plan.underway.done + 1 };
    const speeches = menu.speeches
        .flatMap((speech, index) => speechOf(plan, service, speech, index, use) ?? [])
        .filter(
            ({ after, at }) =>
                !underway || (after === undefined ? (at ?? 0) >= underway.at : after >= underway.next - 1),
        );
    const evening: Evening = {
        tables,
        courses,
        speeches,
        coffee: service.coffee && { after: service.coffee.after },
        isWaterPouredBeforeSeating: customs['water-poured'].value === 'before-seating',
        isWinePouredFirst: customs['wine-poured'].value === 'before-the-plate',
        isClearedOneByOne,
        team,
        pace: paceOf(customs),
        underway,
    };
    return { evening, assumed: [...used].filter((name) => isAssumed(name, customs)) };
}

type Use = (name: CustomName) => number;

function courseOf(plan: Plan, course: Course, use: Use, isSpreadUsed: boolean): EveningCourse {
    const { index, lasts, preset } = course;
    const time = Math.max(0, lasts?.time.value ?? use('eating-time'));
    const isDessert = (each: Course | undefined) => isDessertCourse(each, plan.cupboard);
    const before = plan.menu?.courses[index - 1];
    const share = lasts?.spread || !isSpreadUsed ? figureOf(plan.customs, 'eating-spread') : use('eating-spread');
    return {
        lasts: time,
        spread: Math.min(time, Math.max(0, lasts?.spread?.value ?? time * share)),
        startsAt: eveningClock(plan)?.after(course.startsAt?.time),
        standsBefore: isWaiting(plan, index) ? Math.max(0, preset?.before?.value ?? use('seating-time')) : undefined,
        isCrumbed: before !== undefined && isDessert(course) && !isDessert(before),
        dishes: course.dishes.map(({ platedIn, platedAhead }) => ({
            stations:
                platedIn && platedIn.times.length > 0
                    ? platedIn.times.map((each) => Math.max(0, each.value))
                    : undefined,
            isAhead: platedAhead !== undefined,
        })),
    };
}

function tablesOf(plan: Plan, service: ForEvening, use: Use): EveningTable[] {
    const ways = new Map(
        (service.room?.tables ?? []).flatMap((table) => (table.at ? [[table.name, table.fromPass]] : [])),
    );
    const work = tableWork(plan, service);
    return service.seats.tables.flatMap(({ name, guests }, index) =>
        guests > 0 ? [{ name, guests, fromPass: ways.get(name) ?? use('pass-distance'), ...work[index]! }] : [],
    );
}

/** Notes the paces of what is done at any table. */
function noteWork(tables: readonly EveningTable[], courses: readonly EveningCourse[], use: Use): void {
    const works = tables.flatMap((table) => table.courses);
    const done: Partial<Record<CustomName, boolean>> = {
        'crumbing-cover': courses.some((course) => course.isCrumbed),
        'relaying-piece':
            works.some((work) => work.pieces + work.temperedPieces > 0) ||
            tables.some((each) => each.coffee.guests > 0),
        'pouring-glass':
            works.some((work) => work.glasses > 0 || work.rounds.length > 0) ||
            tables.some((table) => [table.waters, table.coffee.guests, ...table.toasts].some((count) => count > 0)),
        tasting: works.some((work) => work.tastes > 0),
        'offering-bread': works.some((work) => work.bread > 0),
        'coffee-time': tables.some((table) => table.coffee.guests > 0),
    };
    for (const [name, isDone] of Object.entries(done)) {
        if (isDone) {
            use(name as CustomName);
        }
    }
}

function speechOf(plan: Plan, service: ForEvening, speech: Speech, index: number, use: Use): EveningSpeech | undefined {
    const named = speech.when && findCourse(plan.menu, speech.when.course.name)?.index;
    const isBefore = speech.when?.when === 'before';
    const after = named === undefined ? undefined : isBefore ? named - 1 : named;
    const at = eveningClock(plan)?.after(speech.at);
    if (after === undefined && at === undefined) {
        return undefined;
    }
    const poured = service.pours.flatMap((each) => (each.pour.title === speech.pour?.text ? [each.course] : []));
    return {
        speech: index,
        isToast: speech.sort === 'toast',
        after,
        isBeforeNext: isBefore,
        at,
        lasts: Math.max(0, speech.lasts?.value ?? use('speech-time')),
        pour: after === undefined ? poured[0] : poured.findLast((course) => course <= after),
    };
}
