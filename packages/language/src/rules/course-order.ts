import type { Cupboard } from '../plan/cupboard.js';
import type { Course, Customs, Plan } from '../plan/types.js';
import { isSortOfKind } from '../plan/suiting.js';
import { asName } from './wording.js';

/** What says that one course of the menu comes after another. */
export interface Precedence {
    /** Indexes into the menu's courses as written. */
    readonly earlier: number;
    readonly later: number;
    /** The one of the two that is out of place where they stand the other way round. */
    readonly placed: number;
    /** The custom that says so; absent where the kinds of course do. */
    readonly custom?: 'salad' | 'entree' | 'intermezzo' | 'cheese';
}

/** Courses that the published orders place differently, and those beside which they differ. Customs decide here, and no kind's `follows`. */
const BY_CUSTOM: Readonly<Record<NonNullable<Precedence['custom']>, readonly string[]>> = {
    salad: ['main', 'roast', 'game', 'releve'],
    entree: ['main', 'roast', 'game', 'releve'],
    intermezzo: ['main', 'roast', 'game', 'releve', 'entree', 'fish'],
    cheese: ['dessert', 'sweet', 'salad', 'savoury', 'fruit'],
};

/** Everything that orders two courses of the menu, by custom (table-service 7.6 to 7.15) and by what their kinds follow. */
export function precedences(plan: Plan): readonly Precedence[] {
    const courses = plan.menu?.courses ?? [];
    return [...byKind(plan.cupboard, courses), ...byCustom(plan.cupboard, plan.customs, courses)];
}

function byKind(cupboard: Cupboard, courses: readonly Course[]): Precedence[] {
    const kinds = [...new Set(courses.map((course) => course.kind.name))];
    const followed = new Map(
        kinds.map((kind) => {
            const before = [...kindsBefore(cupboard, kind)];
            const isBefore = (other: string) =>
                before.some((name) => isSortOfKind(cupboard, other, name)) && !decidedByCustom(cupboard, other, kind);
            return [kind, new Set(kinds.filter(isBefore))];
        }),
    );
    return courses.flatMap((later) =>
        courses
            .filter((earlier) => earlier !== later && followed.get(later.kind.name)!.has(earlier.kind.name))
            .map((earlier) => ({ earlier: earlier.index, later: later.index, placed: later.index })),
    );
}

/** The kinds that a kind follows, directly or by way of others. */
function kindsBefore(cupboard: Cupboard, kind: string): ReadonlySet<string> {
    const before = new Set<string>();
    const visit = (name: string) => {
        for (const followed of cupboard.kinds.get(name)?.follows ?? []) {
            if (!before.has(followed.name) && !decidedByCustom(cupboard, followed.name, name)) {
                before.add(followed.name);
                visit(followed.name);
            }
        }
    };
    visit(kind);
    // A kind never comes before its own like: two fish courses stand as written.
    return new Set([...before].filter((name) => !isSortOfKind(cupboard, kind, name)));
}

function decidedByCustom(cupboard: Cupboard, one: string, other: string): boolean {
    return Object.entries(BY_CUSTOM).some(
        ([placed, beside]) =>
            (isSortOfKind(cupboard, one, placed) && beside.some((kind) => isSortOfKind(cupboard, other, kind))) ||
            (isSortOfKind(cupboard, other, placed) && beside.some((kind) => isSortOfKind(cupboard, one, kind))),
    );
}

function byCustom(cupboard: Cupboard, customs: Customs, courses: readonly Course[]): Precedence[] {
    const found: Precedence[] = [];
    const ofKind = (...kinds: string[]) =>
        courses.filter((course) => kinds.some((kind) => isSortOfKind(cupboard, course.kind.name, kind)));
    /** A roast may also be a dish of the main course. */
    const serving = (kind: string) =>
        courses.filter(
            (course) =>
                isSortOfKind(cupboard, course.kind.name, kind) ||
                (ofKind('main').includes(course) &&
                    course.dishes.some((dish) => isSortOfKind(cupboard, dish.kind.name, kind))),
        );
    const firstOf = (...choices: (readonly Course[])[]) => choices.find((choice) => choice.length > 0) ?? [];
    const order = (custom: NonNullable<Precedence['custom']>, earlier: readonly Course[], later: readonly Course[]) => {
        for (const one of earlier) {
            for (const other of later) {
                if (one !== other) {
                    const placed = ofKind(custom).includes(one) ? one : other;
                    found.push({ earlier: one.index, later: other.index, placed: placed.index, custom });
                }
            }
        }
    };

    const main = ofKind('main', 'roast');
    switch (customs.salad.value) {
        case 'after-main':
            order('salad', main, ofKind('salad'));
            break;
        case 'before-main':
            order('salad', ofKind('salad'), main);
            break;
        case 'with-main':
        case 'as-written':
            break;
    }
    // A relevé is a roast that comes before the roast: the sorbet stands between the two (table-service 7.6).
    const roast = firstOf(
        serving('roast').filter((course) => !serving('releve').includes(course)),
        serving('roast'),
        ofKind('main'),
    );
    switch (customs.entree.value) {
        case 'before-roast':
            order('entree', ofKind('entree'), roast);
            break;
        case 'after-roast':
            order('entree', roast, ofKind('entree'));
            break;
        case 'as-written':
            break;
    }
    const game = serving('game');
    switch (customs.intermezzo.value) {
        case 'before-roast':
            order('intermezzo', ofKind('intermezzo'), roast);
            break;
        case 'before-game':
            order('intermezzo', ofKind('intermezzo'), firstOf(game, main));
            if (game.length > 0) {
                order(
                    'intermezzo',
                    serving('roast').filter((course) => !game.includes(course)),
                    ofKind('intermezzo'),
                );
            }
            break;
        case 'before-releve':
            order('intermezzo', ofKind('intermezzo'), firstOf(serving('releve'), main));
            break;
        case 'as-written':
            break;
    }
    const dessert = ofKind('dessert');
    switch (customs.cheese.value) {
        case 'after-dessert':
            order('cheese', dessert, ofKind('cheese'));
            break;
        case 'before-dessert':
            order('cheese', ofKind('cheese'), dessert);
            break;
        case 'with-salad':
            order('cheese', ofKind('salad'), ofKind('cheese'));
            order('cheese', ofKind('cheese'), dessert);
            break;
        case 'after-savoury':
            order('cheese', ofKind('savoury'), ofKind('cheese'));
            order('cheese', ofKind('cheese'), ofKind('fruit'));
            break;
        case 'as-written':
            break;
    }
    return found;
}

/** The precedences that an order of the courses breaks. @param order indexes as written, in the order served */
export function brokenBy(rules: readonly Precedence[], order: readonly number[]): readonly Precedence[] {
    const place = new Map(order.map((course, index) => [course, index]));
    return rules.filter(({ earlier, later }) => place.get(earlier)! > place.get(later)!);
}

/** The name by which another clause speaks of a course: its kind where that is the only one, else its title. */
export function courseName(courses: readonly Course[], course: Course): string {
    const alone = courses.filter((other) => other.kind.name === course.kind.name).length === 1;
    return alone ? asName(course.kind.name) : `"${course.title}"`;
}
