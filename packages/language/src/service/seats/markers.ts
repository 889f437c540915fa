/** What plates are marked with, so that nobody carries one to the wrong guest. */
import type { Cupboard } from '../../plan/cupboard.js';
import type { Dish, Need, Plan } from '../../plan/types.js';
import { isAllergenNeed, isLeftOff } from '../diets.js';
import type { CourseServing, DishFacts, GuestGroup, Service } from '../types.js';
import type { PlateSort } from './types.js';

/**
 * A mark of a few letters for one need: the diet's own (`V`), that of the diet which leaves out the same thing (`GF` for
 * `without gluten`), else the words (`no egg`, `child`).
 */
export function marksOf(need: Need, { diets }: Cupboard): string[] {
    switch (need.sort) {
        case 'children':
            return ['child'];
        case 'diet':
            return [diets.get(need.diet.name)?.mark ?? need.diet.name];
        case 'without':
            return need.what.map(({ name }) => {
                const same = [...diets.values()].find(
                    ({ excludes, statedOnly }) => !statedOnly && excludes.length === 1 && excludes[0]!.name === name,
                );
                return same?.mark ?? `no ${name}`;
            });
    }
}

/** The marks of all needs of a guest in one: `V+GF`. */
export const markOf = (needs: readonly Need[], cupboard: Cupboard): string =>
    [...new Set(needs.flatMap((need) => marksOf(need, cupboard)))].join('+');

/**
 * The plates of all courses and of the bread. A plate is marked with the needs of its guests where an allergen is kept off it,
 * something is left off it, or its dish is for such guests; and with the dish's number in its course where another dish of the
 * course comes in the same vessel. Bread has no number: what is not marked is the common one.
 */
export function plateSorts(plan: Plan, service: Pick<Service, 'servings' | 'bread' | 'facts'>): PlateSort[] {
    const { servings, bread, facts } = service;
    return [...servings, ...(bread ? [bread.serving] : [])].flatMap((serving) =>
        platesOf(serving, facts, plan.cupboard),
    );
}

function platesOf({ course, portions }: CourseServing, facts: readonly DishFacts[], cupboard: Cupboard): PlateSort[] {
    const vesselOf = (dish: Dish): string | undefined => facts.find((each) => each.dish === dish)?.vessel?.name;
    const given = portions.filter(({ count }) => count > 0).map(({ dish }) => ({ dish, vessel: vesselOf(dish) }));
    return portions.flatMap(({ dish, groups }) => {
        const isAlike =
            course.index >= 0 && given.some((other) => other.dish !== dish && other.vessel === vesselOf(dish));
        const sorts = new Map<string, { -readonly [Key in keyof PlateSort]: PlateSort[Key] }>();
        for (const { group, count } of groups) {
            const plate = markPlate(dish, group, isAlike, cupboard);
            const key = `${plate.marker} ${plate.because.join()} ${plate.leftOff.join()}`;
            const known = sorts.get(key);
            sorts.set(key, {
                course: course.index,
                dish: dish.index,
                count: (known?.count ?? 0) + count,
                groups: [...(known?.groups ?? []), group.index],
                ...plate,
            });
        }
        return [...sorts.values()];
    });
}

function markPlate(
    dish: Dish,
    group: GuestGroup,
    isAlike: boolean,
    cupboard: Cupboard,
): Pick<PlateSort, 'marker' | 'because' | 'leftOff'> {
    const leftOff = dish.accompaniments
        .filter((beside) => isLeftOff(beside.leftOffFor, group, cupboard))
        .map((beside) => beside.title ?? beside.sort);
    const reasons: Record<PlateSort['because'][number], boolean> = {
        allergen: group.needs.some((need) => isAllergenNeed(need, cupboard)),
        'left-off': leftOff.length > 0,
        diet: dish.who?.sort === 'some' && dish.who.needs.length > 0,
        alike: isAlike,
    };
    const { alike, ...ofGuests } = reasons;
    const marks = Object.values(ofGuests).includes(true) ? markOf(group.needs, cupboard) : '';
    const marker = [marks, alike ? String(dish.index + 1) : ''].filter((part) => part !== '').join(' ');
    return {
        marker: marker === '' ? undefined : marker,
        because: (Object.keys(reasons) as (keyof typeof reasons)[]).filter((reason) => reasons[reason]),
        leftOff,
    };
}
