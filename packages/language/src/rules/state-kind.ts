import { isWithin, type Origin } from '../plan/origin.js';
import type { Course, Dish, Plan } from '../plan/types.js';
import type { Fix } from './fixes.js';
import { asName, quoted } from './wording.js';

/** True where the dish says its kind; else it is of that of its course. */
export function saysItsKind(dish: Dish, course: Course): boolean {
    return dish.kind.origin.start !== course.kind.origin.start;
}

/** Says behind the title of a dish what kind it is; nothing where it has no title. */
export function stateKind(dish: Dish, kind: string, plan: Plan): Fix[] {
    const title = titleOf(dish, plan);
    return title
        ? [
              {
                  title: `Say that ${quoted(dish.title)} is ${quoted(kind)}`,
                  safety: 'show',
                  changes: [{ do: 'append', at: title, words: `is ${asName(kind)}` }],
              },
          ]
        : [];
}

function titleOf({ title, head }: Dish, { readings }: Plan): Origin | undefined {
    return readings
        .flatMap(({ occurrences }) => occurrences)
        .find(
            ({ sort, role, name, origin }) =>
                sort === 'dish-title' && role === 'declares' && name === title && isWithin(origin, head),
        )?.origin;
}
