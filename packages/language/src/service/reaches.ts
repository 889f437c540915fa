/** What is put before guests who must not have it. */
import type { Plan } from '../plan/types.js';
import type { Conflict, CourseServing, GuestGroup, Service } from './types.js';

type Reach = Service['reaches'][number];

/** Every allergen that would be put before a guest who must not meet it, each carrier once a group and course. */
export function findReaches(
    plan: Plan,
    {
        servings,
        bread,
        refusedPours,
        refusedCoffee,
    }: Pick<Service, 'servings' | 'bread' | 'refusedPours' | 'refusedCoffee'>,
): readonly Reach[] {
    const dishes = [...servings, ...(bread ? [bread.serving] : [])].flatMap(({ course, unserved }) =>
        unserved.flatMap(({ group, count, refused }) =>
            reached(group, count, commonOf(refused)?.conflicts ?? [], course.index),
        ),
    );
    const pours = refusedPours.flatMap(({ facts, group, count, offered }) => {
        // The pour, or of what is in its place the first that carries one.
        const first = offered.find(({ conflicts }) => conflicts.some(({ allergen }) => allergen));
        return reached(group, count, first?.conflicts ?? [], facts.course);
    });
    const coffee = refusedCoffee.flatMap(({ group, count, conflicts }) =>
        reached(group, count, conflicts, plan.menu?.courses.length ?? 0),
    );
    return [...dishes, ...pours, ...coffee];
}

function reached(group: GuestGroup, count: number, conflicts: readonly Conflict[], course: number): Reach[] {
    const carriers = new Map(
        conflicts
            .filter(({ allergen }) => allergen)
            .map((conflict) => [`${conflict.carrier} ${conflict.substance}`, conflict]),
    );
    return [...carriers.values()].map((conflict) => ({ group, count, conflict, course }));
}

/** Every dish is refused: the one they would get is the common one, else the first. */
function commonOf(refused: CourseServing['unserved'][number]['refused']) {
    return refused.find(({ dish }) => dish.who?.sort !== 'some' || dish.who.needs.length === 0) ?? refused[0];
}
