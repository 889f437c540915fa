import { findCourse } from '../plan/names.js';
import type { Course, Plan } from '../plan/types.js';
import { brokenBy, courseName, precedences, type Precedence } from './course-order.js';
import type { Fix } from './fixes.js';
import { defineRule, type Report } from './rule.js';
import { isSortOfKind } from '../plan/suiting.js';
import { listed, quoted } from './wording.js';

export default defineRule({
    id: 'courses-out-of-order',
    group: 'service',
    since: '0.1.0',
    title: 'A course before one that it should follow',
    why: 'Each course prepares for the next, light before rich and the sweet last; the kitchen, the cover and the wines are all built on that order.',
    source: [
        'table-service 7.6',
        'table-service 7.10',
        'table-service 7.13',
        'table-service 7.15',
        'table-service 7.17',
        'table-service 7.22',
    ],
    fix: 'always',
    customs: ['salad', 'entree', 'intermezzo', 'cheese'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Fish before the soup',
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    <|course fish "Baked hake"|> {
        served on fish-plate warmed to 60 °C at 62 °C
        lasts 20 min
        contains fish
    }
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
}
`,
            },
        ],
        right: [
            {
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
    course fish "Baked hake" {
        served on fish-plate warmed to 60 °C at 62 °C
        lasts 20 min
        contains fish
    }
}
`,
            },
        ],
    },
    check({ plan, report }) {
        const courses = plan.menu?.courses ?? [];
        const rules = precedences(plan);
        const written = courses.map((course) => course.index);
        let order: readonly number[] = written;
        let open = rules;
        // One misplaced course breaks several precedences: each finding is the one course whose move mends most.
        for (let found = 0; found < MOST_MISPLACED; found++) {
            const broken = brokenBy(open, order);
            const move = bestMove(open, order, written);
            if (!move || brokenBy(open, moved(order, move)).length >= broken.length) {
                // Precedences that contradict each other, such as kinds that follow each other, order nothing.
                break;
            }
            const course = courses[move.course]!;
            report(
                misplaced(plan, course, broken.filter(isOf(move.course)), fixFor(open, courses, written, course.index)),
            );
            order = moved(order, move);
            open = open.filter((rule) => !isOf(move.course)(rule));
        }
        const early = coffeeTooEarly(plan);
        if (early) {
            report(early);
        }
    },
});

/** Coffee comes when the last course is cleared; cheese, petits fours and the like may follow it. */
function coffeeTooEarly({ cupboard, menu }: Plan): Report | undefined {
    const after = menu?.coffee && findCourse(menu, menu.coffee.after.name);
    if (!menu?.coffee || !after) {
        return undefined;
    }
    const mayFollow = ['cheese', 'coffee-and-sweets'];
    const later = menu.courses
        .slice(after.index + 1)
        .filter(({ kind }) => !mayFollow.some((name) => isSortOfKind(cupboard, kind.name, name)));
    const last = later.at(-1);
    if (!last) {
        return undefined;
    }
    const title = `Serve coffee after ${quoted(last.title)}`;
    return {
        at: menu.coffee.after.origin,
        message: `Coffee after ${quoted(after.title)} comes before ${listed(later.map((course) => quoted(course.title)))}, and belongs at the end of the meal.`,
        hint: `${title}.`,
        related: [{ at: last.head, message: `${quoted(last.title)} is served here.` }],
        fixes: [
            {
                title,
                safety: 'unsafe',
                preferred: true,
                changes: [{ do: 'replace', at: menu.coffee.after.origin, words: courseName(menu.courses, last) }],
            },
        ],
    };
}

/** A menu with more courses out of place than this is not a menu yet. */
const MOST_MISPLACED = 8;

/** Take a course out and put it back in at `to`. */
interface Move {
    readonly course: number;
    readonly to: number;
}

function isOf(course: number): (precedence: Precedence) => boolean {
    return ({ earlier, later }) => earlier === course || later === course;
}

function moved(order: readonly number[], { course, to }: Move): readonly number[] {
    return order.filter((index) => index !== course).toSpliced(to, 0, course);
}

/** The move that breaks the fewest precedences; of equal ones that of a course which is itself out of place, then the shortest. */
function bestMove(
    rules: readonly Precedence[],
    order: readonly number[],
    courses: readonly number[],
): Move | undefined {
    const broken = brokenBy(rules, order);
    const outOfPlace = new Set(broken.map(({ placed }) => placed));
    const place = new Map(order.map((course, index) => [course, index]));
    const rulesOf = byCourse(rules);
    const brokenOf = byCourse(broken);
    // Worth trying: right behind the last course it follows, right before the first that follows it.
    const moves = courses.flatMap((course): Move[] => {
        const own = brokenOf.get(course) ?? [];
        const before = own.filter(({ later }) => later === course).map(({ earlier }) => place.get(earlier)!);
        const after = own.filter(({ earlier }) => earlier === course).map(({ later }) => place.get(later)!);
        return [
            ...(before.length > 0 ? [{ course, to: Math.max(...before) }] : []),
            ...(after.length > 0 ? [{ course, to: Math.min(...after) }] : []),
        ];
    });
    // The move of a course touches only the precedences that it is part of.
    const costs = (move: Move) => [
        brokenBy(rulesOf.get(move.course)!, moved(order, move)).length - brokenOf.get(move.course)!.length,
        outOfPlace.has(move.course) ? 0 : 1,
        Math.abs(place.get(move.course)! - move.to),
    ];
    const [best] = moves.map((move) => ({ move, costs: costs(move) })).sort((a, b) => compare(a.costs, b.costs));
    return best?.move;
}

function byCourse(rules: readonly Precedence[]): ReadonlyMap<number, readonly Precedence[]> {
    const found = new Map<number, Precedence[]>();
    for (const rule of rules) {
        for (const course of [rule.earlier, rule.later]) {
            const own = found.get(course) ?? [];
            found.set(course, own);
            own.push(rule);
        }
    }
    return found;
}

/** The first figure that differs decides. */
function compare(one: readonly number[], other: readonly number[]): number {
    const index = one.findIndex((figure, place) => figure !== other[place]);
    return index < 0 ? 0 : one[index]! - other[index]!;
}

function misplaced(plan: Plan, course: Course, broken: readonly Precedence[], fix: Fix): Report {
    const courses = plan.menu!.courses;
    const after = broken.filter(({ later }) => later === course.index).map(({ earlier }) => courses[earlier]!);
    const before = broken.filter(({ earlier }) => earlier === course.index).map(({ later }) => courses[later]!);
    const titles = (some: readonly Course[]) => listed(some.map(({ title }) => quoted(title)));
    const those = (some: readonly Course[]) => (some.length > 1 ? 'them' : 'it');
    const custom = broken.find((each) => each.custom)?.custom;
    const because = custom ? ` (custom \`${custom}: ${plan.customs[custom].value}\`)` : '';
    return {
        at: course.head,
        message:
            after.length > 0
                ? `${quoted(course.title)} comes before ${titles(after)}, and belongs after ${those(after)}${because}.`
                : `${quoted(course.title)} comes after ${titles(before)}, and belongs before ${those(before)}${because}.`,
        hint: `${fix.title}.`,
        related: [...after, ...before].map((other) => ({
            at: other.head,
            message: `${quoted(other.kind.name)} is served here.`,
        })),
        fixes: [fix],
    };
}

/** The move of this one course, in the menu as written, that mends most. */
function fixFor(
    rules: readonly Precedence[],
    courses: readonly Course[],
    written: readonly number[],
    index: number,
): Fix {
    const { to } = bestMove(rules, written, [index])!;
    const others = courses.filter((course) => course.index !== index);
    const next = others[to];
    const course = courses[index]!;
    return {
        title: next
            ? `Serve \`${course.title}\` before \`${next.title}\``
            : `Serve \`${course.title}\` after \`${others.at(-1)!.title}\``,
        safety: 'unsafe',
        preferred: true,
        changes: next
            ? [{ do: 'move-before', block: course.origin, before: next.origin }]
            : courses
                  .slice(index + 1)
                  .map((later) => ({ do: 'move-before', block: later.origin, before: course.origin })),
    };
}
