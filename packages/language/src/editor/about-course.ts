import { degreesOf, rangeOf } from '../plan/degrees.js';
import type { Checked } from '../check.js';
import { capital, courseTitle, faces } from '../output/sheets/evening.js';
import type { Origin } from '../plan/origin.js';
import type { Course, Dish } from '../plan/types.js';
import { counted, listed } from '../rules/wording.js';
import { guestWords } from './guest-counts.js';
import { bullets, page } from './markdown.js';

interface About {
    readonly words: string;
    readonly at: Origin;
}

/** The course, dish, bread or coffee whose heading an offset is in. */
export function aboutCourseAt(checked: Checked, file: string, offset: number): About | undefined {
    const { menu } = checked.plan;
    const holds = (at: Origin | undefined): at is Origin => at?.file === file && at.start <= offset && offset <= at.end;
    const course = menu?.courses.find(({ head }) => holds(head));
    if (course) {
        return { words: aboutCourse(course, checked), at: course.head };
    }
    const dish = menu?.courses
        .flatMap(({ dishes, hasDishes }) => (hasDishes ? dishes : []))
        .find(({ head }) => holds(head));
    if (dish) {
        return { words: aboutDish(dish, checked), at: dish.head };
    }
    const { coffee } = menu ?? {};
    return coffee && holds(coffee.head)
        ? {
              words: page('coffee', undefined, [bullets(timesOf(checked, menu!.courses.length))]),
              at: coffee.head,
          }
        : undefined;
}

/** A course with its times, its plates and how warm they arrive. */
export function aboutCourse(course: Course, checked: Checked): string {
    const { plan, service } = checked;
    const { kind, title, index, lasts, dishes, hasDishes } = course;
    const portions = service.servings.find((serving) => serving.course.index === index)?.portions ?? [];
    const counts = portions.filter(({ count }) => count > 0).map(({ dish, count }) => `${count} ${dish.title}`);
    const most = Math.max(
        0,
        ...service.variations.map(({ cover }) => cover.brought.filter((piece) => piece.course === index).length),
    );
    return page(`course ${kind.name}`, title === kind.name ? undefined : title, [
        `${capital(`${counted(dishes.length, 'dish', 'dishes')}`)}, course ${index + 1} of ${plan.menu!.courses.length}.`,
        lasts ? `Eaten in ${lasts.time.written}.` : undefined,
        bullets([
            ...timesOf(checked, index),
            ...(service.guestCount > 0 && counts.length > 0
                ? [
                      hasDishes
                          ? `plates: ${listed(counts)}`
                          : `plates: ${portions.reduce((sum, { count }) => sum + count, 0)}`,
                  ]
                : []),
            ...(most > 0 ? [`pieces brought to a cover: ${most}`] : []),
            ...dishes.flatMap((dish) => warmthOf(checked, dish, hasDishes)),
        ]),
    ]);
}

function aboutDish(dish: Dish, checked: Checked): string {
    const { service } = checked;
    const portion = service.servings
        .find((serving) => serving.course.index === dish.course)
        ?.portions.find((each) => each.dish.index === dish.index);
    const groups = portion?.groups.filter(({ count }) => count > 0) ?? [];
    const marks = service.seats.plates.filter(
        (plate) => plate.course === dish.course && plate.dish === dish.index && plate.marker !== undefined,
    );
    return page(`dish ${dish.kind.name}`, dish.title, [
        bullets([
            ...(portion && service.guestCount > 0
                ? [`${counted(portion.count, 'plate')}${groups.length > 0 ? `: ${guestWords(groups)}` : ''}`]
                : []),
            ...marks.map(
                ({ marker, count, leftOff }) =>
                    `marked ${marker}: ${counted(count, 'plate')}${leftOff.length > 0 ? `, without ${listed(leftOff)}` : ''}`,
            ),
            ...timesOf(checked, dish.course),
            ...warmthOf(checked, dish, false),
        ]),
    ]);
}

function timesOf({ plan, service }: Checked, course: number): string[] {
    const face = faces(plan);
    const run = service.run?.courses.find((each) => each.course === course);
    if (!run) {
        return [];
    }
    const next = service.run!.courses.find((each) => each.course === course + 1);
    return [
        `called ${face(run.fired)}`,
        `set down ${face(run.served.first)} to ${face(run.served.last)}`,
        `cleared ${face(run.cleared.first)} to ${face(run.cleared.last)}`,
        ...(next ? [`then ${courseTitle(plan, course + 1)} at ${face(next.served.first)}`] : []),
    ];
}

/** How warm the first and the last guest gets it. */
function warmthOf({ plan, service }: Checked, dish: Dish, isNamed: boolean): string[] {
    const heat = service.heat.dishes.find((each) => each.course === dish.course && each.dish === dish.index);
    const [first, last] = [heat?.first?.temperature, heat?.last?.temperature];
    const name = isNamed ? `${dish.title} ` : '';
    if (heat?.published) {
        return [`${name}at the guest: ${rangeOf(plan, heat.published.low, heat.published.high)}, estimated`];
    }
    return first?.celsius === undefined || last?.celsius === undefined
        ? []
        : [
              `${name}at the first guest ${degreesOf(plan, first.celsius)}, at the last ${degreesOf(plan, last.celsius)}, estimated`,
          ];
}
