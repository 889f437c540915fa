import { besides } from '../plan/lazily.js';
import { findCourse, isKindOf } from '../plan/names.js';
import type { Course, Plan, Speech } from '../plan/types.js';
import { isWaiting, lastCourseOf } from './cover.js';
import { isDessertCourse } from './facts.js';
import type { Cover, CoverGlass, CoverPiece, DishFacts, Service, Step, TableItem } from './types.js';

export interface TableInput {
    readonly plan: Plan;
    readonly cover: Cover;
    readonly dishes: readonly (DishFacts | undefined)[];
    readonly bread?: Service['bread'];
    readonly coffee?: Service['coffee'];
}

type Movement = Pick<Step, 'sort' | 'course'> & {
    /** Asked for by who tells it: what stands on the table does not change with what a course is called. */
    readonly title: () => string;
    /** What the title names: a step that names another is another. */
    readonly about?: Course | Speech;
    readonly brought?: readonly TableItem[];
    readonly used?: readonly TableItem[];
    readonly cleared?: readonly TableItem[];
};

/**
 * The evening at one cover as a small state machine: what is brought, used and cleared in each step and what stands there after.
 * The used and the unused pieces of a course leave with it.
 */
export function stepThrough(input: TableInput): Step[] {
    const { plan, dishes } = input;
    const courses = plan.menu?.courses ?? [];
    const items = itemsOf(input);
    const steps: Step[] = [];
    let standing: readonly TableItem[] = [];
    const move = ({ title, brought = [], used = [], cleared = [], ...step }: Movement): void => {
        const gone = new Set(cleared.map((item) => item.id));
        const leaving = gone.size > 0 ? standing.filter((item) => gone.has(item.id)) : [];
        const left = leaving.length > 0 ? standing.filter((item) => !gone.has(item.id)) : standing;
        standing = brought.length > 0 ? [...left, ...brought] : left;
        const bare = !standing.some((item) => item.sort === 'vessel' || item.sort === 'service-plate');
        const fields = { index: steps.length, ...step, brought, used, cleared: leaving, standing, bare };
        steps.push(besides(fields, 'title', title));
    };

    move({
        sort: 'seated',
        course: -1,
        title: () => 'Guests sit',
        brought: [...items.laid, ...courses.flatMap((_, index) => (isWaiting(plan, index) ? items.served(index) : []))],
    });
    speeches(plan, items, 'before', -1, move);
    dishes.forEach((facts, index) => {
        const course = courses[index]!;
        speeches(plan, items, 'before', index, move);
        const comes = items.brought(index);
        if (comes.length > 0) {
            move({
                sort: 'bring',
                course: index,
                title: () => `Bring what ${course.title} is eaten with`,
                about: course,
                brought: comes,
            });
        }
        if (!facts) {
            return;
        }
        const served = items.served(index);
        if (!isWaiting(plan, index)) {
            // One plate out, the next in: the service plate leaves in the movement that brings the plate which replaces it.
            move({
                sort: 'serve',
                course: index,
                title: () => `Serve ${course.title}`,
                about: course,
                brought: served,
                cleared: items.leavesAtServing(index),
            });
        }
        move({
            sort: 'eat',
            course: index,
            title: () => `${course.title} is eaten`,
            about: course,
            used: [...served, ...standing.filter((item) => item.course === index && item.sort === 'flatware')],
        });
        move({
            sort: 'clear',
            course: index,
            title: () => `Clear ${course.title}`,
            about: course,
            cleared: [
                ...standing.filter((item) => item.course === index && item.sort !== 'glass'),
                ...items.leavesAfter(index),
            ],
        });
        speeches(plan, items, 'after', index, move);
        if (isDessertCourse(courses[index + 1], plan.cupboard) && !isDessertCourse(course, plan.cupboard)) {
            move({ sort: 'crumb', course: index, title: () => 'Crumb the table', cleared: items.leavesBeforeDessert });
        }
        if (input.coffee?.after === index) {
            move({
                sort: 'coffee',
                course: courses.length,
                title: () => 'Serve coffee',
                brought: items.coffee,
                used: items.coffee,
            });
        }
    });
    move({ sort: 'farewell', course: courses.length, title: () => 'Guests leave', cleared: standing });
    return steps;
}

type Items = ReturnType<typeof itemsOf>;

/** More than lie on the tables of a large event; then they are forgotten. */
const MOST_ITEMS = 4_000;
const knownItems = new Map<string, TableItem>();

/** One thing for what says the same: steps hold each many times over, and whether they are as before is asked at every key. */
function theSame(item: TableItem): TableItem {
    const says = JSON.stringify(item);
    const before = knownItems.get(says);
    if (before) {
        return before;
    }
    if (knownItems.size >= MOST_ITEMS) {
        knownItems.clear();
    }
    knownItems.set(says, item);
    return item;
}

function speeches(
    plan: Plan,
    items: Items,
    when: 'before' | 'after',
    index: number,
    move: (movement: Movement) => void,
): void {
    for (const speech of plan.menu?.speeches ?? []) {
        const course = speech.when && findCourse(plan.menu, speech.when.course.name);
        if (speech.when?.when === when && course?.index === index) {
            move({
                sort: speech.sort,
                course: index,
                title: () => speech.title ?? (speech.sort === 'toast' ? 'Toast' : 'Speech'),
                about: speech,
                used: items.glassesOf(speech),
                cleared: items.leavesAfterToast(speech),
            });
        }
    }
}

function itemsOf({ plan, cover, dishes, bread, coffee }: TableInput) {
    const { customs } = plan;
    const seen = new Map<string, number>();
    const item = (base: Omit<TableItem, 'id'>): TableItem => {
        const key = `${base.course < 0 ? base.sort : base.course + 1} ${base.piece}`;
        const times = (seen.get(key) ?? 0) + 1;
        seen.set(key, times);
        return theSame({ id: times > 1 ? `${key} #${times}` : key, ...base });
    };
    const PLACE = { left: 'left', right: 'right', above: 'above', saucer: 'saucer', 'bread-plate': 'bread' } as const;
    const flatware = (piece: CoverPiece): TableItem =>
        item({
            piece: piece.piece.name,
            place: PLACE[piece.side],
            course: piece.purpose === 'bread' ? -1 : piece.course,
            sort: piece.purpose === 'bread' ? 'bread' : 'flatware',
        });
    const glass = (each: CoverGlass): TableItem =>
        item({ piece: each.piece.name, place: 'glasses', course: each.course, sort: 'glass' });

    const own = (sort: TableItem['sort'], place: TableItem['place'], piece: string): TableItem =>
        item({ piece, place, course: -1, sort });
    const napkin = own('napkin', 'napkin', 'napkin');
    const saltAndPepper = own('salt-and-pepper', 'centre', 'salt-and-pepper');
    const servicePlate = cover.servicePlate && own('service-plate', 'centre', cover.servicePlate.name);
    const breadPlate = cover.bread && own('bread', 'bread', cover.bread.name);
    const pieces = [...cover.left, ...cover.right, ...cover.above, ...cover.breadPlate].map((piece) => ({
        piece,
        item: flatware(piece),
    }));
    const glasses = [...cover.glasses, ...cover.broughtGlasses].map((each) => ({ glass: each, item: glass(each) }));
    const brought = cover.brought.map((piece) => ({ piece, item: flatware(piece) }));
    const vessels = dishes.map((facts, course) => [
        ...(facts?.underliner
            ? [item({ piece: facts.underliner.name, place: 'centre', course, sort: 'underliner' })]
            : []),
        ...(facts?.vessel ? [item({ piece: facts.vessel.name, place: 'centre', course, sort: 'vessel' })] : []),
    ]);
    const after = plan.menu?.courses.length ?? 0;
    const saucer = coffee?.cup?.on.map((named) => named.name).find((name) => plan.cupboard.pieces.has(name));
    const isBread = ({ piece }: { readonly piece: CoverPiece }): boolean => piece.purpose === 'bread';
    const breadItems = [...(breadPlate ? [breadPlate] : []), ...pieces.filter(isBread).map((each) => each.item)];
    const leavesServing = servicePlateLeavesAt(plan, dishes);
    const toasts = plan.menu?.speeches ?? [];
    const leavesWithCourse = (each: CoverGlass, course: number): boolean =>
        customs['glasses-leave'].value === 'with-their-course' &&
        each.pour !== undefined &&
        lastCourseOf(plan, each) === course;
    /** A glass that would leave just before the toast it is for waits for it. */
    const isDrunkIn = (each: CoverGlass, { when, pour }: Speech): boolean => {
        const course = when && findCourse(plan.menu, when.course.name)?.index;
        const last = course === undefined ? -1 : when!.when === 'after' ? course : course - 1;
        return pour !== undefined && pour.text === each.pour?.title && leavesWithCourse(each, last);
    };

    return {
        laid: [
            ...(servicePlate ? [servicePlate] : []),
            ...pieces.map((each) => each.item),
            ...(breadPlate ? [breadPlate] : []),
            ...glasses.filter((each) => each.glass.when === 'laid').map((each) => each.item),
            saltAndPepper,
            napkin,
        ],
        brought: (course: number): TableItem[] => [
            ...brought.filter((each) => each.piece.course === course).map((each) => each.item),
            ...glasses
                .filter((each) => each.glass.when === 'brought' && each.glass.course === course)
                .map((each) => each.item),
        ],
        served: (course: number): readonly TableItem[] => vessels[course] ?? [],
        leavesAtServing: (course: number): TableItem[] =>
            servicePlate && leavesServing?.serving === course ? [servicePlate] : [],
        leavesAfter: (course: number): TableItem[] => [
            ...(servicePlate && leavesServing?.clearing === course ? [servicePlate] : []),
            ...(bread?.until === course ? breadItems : []),
            ...(customs['salt-and-pepper-leave'].value === 'after-salad' && isKindOf(dishes[course]?.kind, 'salad')
                ? [saltAndPepper]
                : []),
            ...glasses
                .filter(
                    ({ glass: each }) =>
                        leavesWithCourse(each, course) && !toasts.some((toast) => isDrunkIn(each, toast)),
                )
                .map((each) => each.item),
        ],
        glassesOf: (speech: Speech): TableItem[] =>
            glasses
                .filter(({ glass: each }) => each.pour && each.pour.title === speech.pour?.text)
                .map((each) => each.item),
        leavesAfterToast: (speech: Speech): TableItem[] =>
            glasses.filter(({ glass: each }) => isDrunkIn(each, speech)).map((each) => each.item),
        leavesBeforeDessert: customs['salt-and-pepper-leave'].value === 'before-dessert' ? [saltAndPepper] : [],
        coffee: [
            ...(saucer ? [item({ piece: saucer, place: 'saucer', course: after, sort: 'cup' })] : []),
            ...(coffee?.cup ? [item({ piece: coffee.cup.name, place: 'saucer', course: after, sort: 'cup' })] : []),
            ...cover.saucer.map(flatware),
        ],
    };
}

/** The course at whose serving or clearing the service plate leaves, by custom. */
function servicePlateLeavesAt(
    plan: Plan,
    dishes: readonly (DishFacts | undefined)[],
): { serving?: number; clearing?: number } | undefined {
    const isSoup = (facts: DishFacts | undefined): boolean => isKindOf(facts?.kind, 'soup');
    const find = (from: number, test: (facts: DishFacts) => boolean): number =>
        dishes.findIndex((facts, index) => index >= from && facts !== undefined && test(facts));
    const soup = find(0, isSoup);
    if (plan.customs['service-plate'].value === 'with-soup-plate' && soup >= 0) {
        return { clearing: soup };
    }
    const hot = find(soup + 1, (facts) => facts.isHot && !isSoup(facts));
    if (hot >= 0) {
        return { serving: hot };
    }
    // No hot plate comes: it leaves when the table is cleared for dessert, or at the end.
    const dessert = (plan.menu?.courses ?? []).findIndex((course) => isDessertCourse(course, plan.cupboard));
    return dessert > 0 ? { clearing: dessert - 1 } : undefined;
}
