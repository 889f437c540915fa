import type { Plan } from '../../plan/types.js';
import { portionsToCook } from '../../service/numbers.js';
import type { CourseServing } from '../../service/types.js';
import { listed, quoted } from '../../rules/wording.js';
import { more, paired, type Change, type Compared } from './change.js';
import { changedMenuFacts } from './menu-facts.js';

/** Courses and dishes that came or went, the portions to cook, and how they are made and served. */
export function changedMenu(before: Compared, after: Compared): Change[] {
    return [...changedPortions(before, after), ...changedMenuFacts(before, after)];
}

function changedPortions(before: Compared, after: Compared): Change[] {
    const courses = paired(before.service.servings, after.service.servings, ({ course }) => course.title);
    const changes = courses.flatMap(({ key, was, is }): Change[] => {
        if (!was || !is) {
            const news = is ? `new: ${sayToCook(key, portionsOf(after.plan, is))}` : 'gone';
            return [{ subject: 'menu', key, text: `the course \`${key}\` is ${news}` }];
        }
        return changedDishes(key, portionsOf(before.plan, was), portionsOf(after.plan, is));
    });
    const order = (each: Compared): string[] =>
        each.service.servings
            .map(({ course }) => course.title)
            .filter((title) => courses.find(({ key, was, is }) => key === title && was && is));
    const now = order(after);
    return order(before).join('\n') === now.join('\n')
        ? changes
        : [...changes, { subject: 'menu', key: 'order', text: `the courses now run ${now.join(', ')}` }];
}

/** `84 to cook`, or of each dish how many. */
function sayToCook(course: string, dishes: readonly Cooked[]): string {
    const [only, ...others] = dishes;
    return only?.title === course && others.length === 0
        ? `${only.count} to cook`
        : `${listed(dishes.map(({ title, count }) => `${count} of ${quoted(title)}`))} to cook`;
}

function changedDishes(course: string, before: readonly Cooked[], after: readonly Cooked[]): Change[] {
    return paired(before, after, ({ title }) => title).flatMap(({ key, was, is }): Change[] => {
        const change = {
            subject: 'menu',
            key: `${course}: ${key}`,
            before: was?.count ?? 0,
            after: is?.count ?? 0,
            unit: 'portions',
        } as const;
        if (!was || !is) {
            return [{ ...change, text: `\`${key}\` is ${is ? `new: ${is.count} to cook` : 'gone'}` }];
        }
        return was.count === is.count
            ? []
            : [{ ...change, text: `${more(was.count, is.count)} of \`${key}\`, ${is.count} to cook` }];
    });
}

interface Cooked {
    readonly title: string;
    readonly count: number;
}

function portionsOf(plan: Plan, { portions }: CourseServing): Cooked[] {
    return portions.map((portion) => ({ title: portion.dish.title, count: portionsToCook(plan, portion) }));
}
