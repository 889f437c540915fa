import type { Contains, Kind } from '../../plan/cupboard.js';
import { isRequiredBy, withParents } from '../../plan/names.js';
import type { Accompaniment, Course, Dish, Plan, Pour } from '../../plan/types.js';
import { pourFacts } from '../facts.js';
import type { PourFacts, Service } from '../types.js';
import { columnsOf, columnsUnder, toldAs, wordFor } from './duty.js';
import type { AllergenCell, AllergenMatrix, AllergenRow } from './types.js';

/** What is put before a guest, with what is known of its contents. */
interface Served extends Pick<AllergenRow, 'course' | 'sort' | 'title' | 'with' | 'origin'> {
    readonly contains?: Contains;
    readonly kind?: Kind;
    readonly leftOffFor?: AllergenRow['leftOffFor'];
}

/**
 * Dishes, sauces, garnishes, butters, breads, drinks and coffee against the allergens of the code in force.
 * An allergen is told where the plan states it, and where the kind of the dish is made of it; contact is not computed.
 */
export function allergenMatrix(plan: Plan, service: Pick<Service, 'pours'>): AllergenMatrix {
    return {
        columns: columnsOf(plan.code.name, plan.cupboard.substances),
        rows: everythingServed(plan, service).map((served) => rowOf(plan, served)),
    };
}

function rowOf({ code, cupboard }: Plan, { contains, kind, leftOffFor, ...row }: Served): AllergenRow {
    const { substances } = cupboard;
    const isAllergen = (name: string): boolean =>
        substances.get(name)?.sort === 'allergen' || isRequiredBy(code.name, name, substances);
    const word = (name: string) => wordFor(name, code.name, substances);
    const carrier = (name: string) => ({ ...word(name), told: toldAs(name, code.name, substances) });
    const stated = (contains?.what ?? []).map(({ name }) => name).filter(isAllergen);
    const inStated = new Set(stated.flatMap((name) => [...withParents(name, substances)]));
    // Where cod is stated, nobody is told of fish besides.
    const ofKind = (kind?.of ?? []).map(({ name }) => name).filter((name) => isAllergen(name) && !inStated.has(name));
    const usual = contains ? [] : (kind?.usually?.what ?? []).map(({ name }) => name).filter(isAllergen);
    const cells = new Map<string, AllergenCell>();
    for (const [name, from] of [
        ...stated.map((each) => [each, 'stated'] as const),
        ...ofKind.map((each) => [each, 'kind'] as const),
    ]) {
        for (const column of columnsUnder(name, code.name, substances)) {
            const known = cells.get(column);
            cells.set(column, { column, by: [...(known?.by ?? []), carrier(name)], from: known?.from ?? from });
        }
    }
    return {
        ...row,
        isStated: contains !== undefined,
        cells: [...cells.values()].toSorted((a, b) => (a.column < b.column ? -1 : 1)),
        beyond: [...stated, ...ofKind].filter((name) => !isRequiredBy(code.name, name, substances)).map(word),
        usually: [...new Set(usual)].filter((name) => !ofKind.includes(name)).map(word),
        leftOffFor: leftOffFor ?? [],
    };
}

// ---------------------------------------------------------------- everything that is served
function everythingServed(plan: Plan, { pours }: Pick<Service, 'pours'>): Served[] {
    const { menu } = plan;
    return [
        ...breadServed(plan),
        ...(menu?.courses ?? []).flatMap((course) => courseServed(plan, course, pours)),
        ...coffeeServed(plan),
    ];
}

function courseServed(plan: Plan, course: Course, pours: readonly PourFacts[]): Served[] {
    const drinks = (list: readonly Pour[], dish?: Dish): Served[] =>
        list.flatMap((pour) => {
            const facts = pours.find((each) => each.pour === pour);
            return facts ? drinkServed(plan, facts, course.index, dish) : [];
        });
    return [
        ...course.dishes.flatMap((dish) => [...dishServed(plan, dish), ...drinks(dish.pours, dish)]),
        ...drinks(course.pours),
    ];
}

function dishServed({ cupboard }: Plan, dish: Dish, sort: 'dish' | 'bread' = 'dish'): Served[] {
    const { title, course, contains, head } = dish;
    const kind = cupboard.kinds.get(dish.kind.name);
    return [
        { course, sort, title, contains, kind, origin: head },
        ...dish.accompaniments.map((beside) => accompanimentServed(beside, course, title)),
    ];
}

function accompanimentServed(beside: Accompaniment, course: number, dish: string): Served {
    const { sort, title, contains, leftOffFor, head } = beside;
    return { course, sort, title: title ?? sort, with: dish, contains, leftOffFor, origin: head };
}

function drinkServed(plan: Plan, facts: PourFacts, course: number, dish?: Dish): Served[] {
    const { pour, kind } = facts;
    return [
        {
            course,
            sort: 'drink',
            title: pour.title,
            with: dish?.title,
            contains: pour.contains,
            kind,
            leftOffFor: pour.leftOffFor,
            origin: pour.titleOrigin,
        },
        ...pour.instead.flatMap((other) => drinkServed(plan, pourFacts(plan, other, course, dish), course, dish)),
    ];
}

function breadServed(plan: Plan): Served[] {
    const bread = plan.menu?.bread;
    if (!bread) {
        return [];
    }
    const { contains, head, accompaniments, dishes } = bread;
    return [
        { course: -1, sort: 'bread', title: 'bread', contains, kind: plan.cupboard.kinds.get('bread'), origin: head },
        ...accompaniments.map((beside) => accompanimentServed(beside, -1, 'bread')),
        ...dishes.flatMap((dish) => dishServed(plan, { ...dish, course: -1 }, 'bread')),
    ];
}

function coffeeServed(plan: Plan): Served[] {
    const coffee = plan.menu?.coffee;
    if (!coffee) {
        return [];
    }
    const { contains, head, accompaniments } = coffee;
    const course = plan.menu?.courses.length ?? 0;
    const kind = plan.cupboard.drinks.get('coffee');
    return [
        { course, sort: 'coffee', title: 'coffee', contains, kind, origin: head },
        ...accompaniments.map((beside) => accompanimentServed(beside, course, 'coffee')),
    ];
}
