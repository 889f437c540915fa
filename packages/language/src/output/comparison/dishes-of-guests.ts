import type { CourseServing, Service } from '../../service/types.js';
import { sortOf } from '../../rules/guest-words.js';
import { listed, quoted } from '../../rules/wording.js';
import { paired, type Change, type Compared } from './change.js';

/** What guests with needs are given, course by course, where both plans serve them in it. */
export function changedDishesOfGuests(before: Compared, after: Compared): Change[] {
    return paired(givenIn(before), givenIn(after), ({ key }) => key).flatMap(({ key, was, is }): Change[] => {
        if (!was || !is) {
            return [];
        }
        const [old, now] = [listed(was.dishes), listed(is.dishes)];
        return old === now || (was.isOnly && is.isOnly)
            ? []
            : [{ subject: 'allergens', key, text: `${is.guests} get ${now} for ${is.course}, not ${old}` }];
    });
}

interface Given {
    readonly key: string;
    readonly guests: string;
    readonly course: string;
    readonly dishes: readonly string[];
    /** The course has no other dish, so that the menu tells it. */
    readonly isOnly: boolean;
}

function givenIn({ service }: Compared): Given[] {
    return servingsOf(service).flatMap(([course, { portions }]) => {
        const given = new Map<string, Given>();
        for (const { dish, groups } of portions) {
            for (const { group } of groups.filter((each) => each.group.needs.length > 0)) {
                const guests = sortOf(group);
                const dishes = [...new Set([...(given.get(guests)?.dishes ?? []), quoted(dish.title)])];
                const key = `${guests}: ${course}`;
                given.set(guests, { key, guests, course, dishes, isOnly: portions.length === 1 });
            }
        }
        return [...given.values()];
    });
}

function servingsOf({ servings, bread }: Service): readonly (readonly [string, CourseServing])[] {
    return [
        ...servings.map((serving) => [quoted(serving.course.title), serving] as const),
        ...(bread ? [['bread', bread.serving] as const] : []),
    ];
}
