import type { Plan } from '../../plan/types.js';
import { portionsToCook } from '../../service/numbers.js';
import type { CourseServing } from '../../service/types.js';
import { more, paired, type Change, type Compared } from './change.js';

/** Courses and dishes that came or went, and the portions to cook. */
export function changedMenu(before: Compared, after: Compared): Change[] {
    const courses = paired(before.service.servings, after.service.servings, ({ course }) => course.title);
    const changes = courses.flatMap(({ key, was, is }): Change[] => {
        if (!was || !is) {
            return [{ subject: 'menu', key, text: `the course \`${key}\` is ${is ? 'new' : 'gone'}` }];
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
