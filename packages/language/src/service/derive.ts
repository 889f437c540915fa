import { findCourse } from '../plan/names.js';
import type { Bread, Course, Dish, Plan } from '../plan/types.js';
import { allergenMatrix } from './allergens/matrix.js';
import { planChilling } from './chilling/chilling.js';
import { layCover } from './cover.js';
import { coverGeometry } from './cover-geometry/cover-geometry.js';
import { alcoholEach } from './drinks/alcohol.js';
import { needsOf, poursOf } from './drinks/needs.js';
import { refusedCoffee, refusedPours } from './drinks/refused.js';
import { waterNeeds } from './drinks/water.js';
import { dishFacts, firstInHouse, isDessertCourse, pourFacts } from './facts.js';
import { groupGuests } from './guests.js';
import { heatOf, heatOfFacts } from './heat/heat.js';
import { lazily, lazilyKept, lazilyOfEach } from '../plan/lazily.js';
import { preparationsOf } from './preparations/preparations.js';
import { warmingOf } from './preparations/warmed-vessels.js';
import { findReaches } from './reaches.js';
import { roomOf } from './room/room-of.js';
import { tablesOf } from './room/room-to-lay-out.js';
import { runService } from './run/run.js';
import { seatGuests } from './seats/seats.js';
import { serveCourse } from './serving.js';
import { countPieces } from './stock/count-pieces.js';
import { pullList } from './stock/pull.js';
import { servingGear } from './stock/serving-gear.js';
import { stockOf } from './stock/stock.js';
import { statedWashes, WashableStock } from './stock/turnarounds.js';
import { suppliesOf } from './supplies/supplies.js';
import { stepThrough } from './table.js';
import type { DishFacts, GuestGroup, Service, Variation } from './types.js';
import { labelOf, variationsOf } from './variations.js';

/** Computes the whole service of a plan, each section when something first asks for it. Pure; whatever is absent or broken in the plan is left out. */
export function deriveService(plan: Plan): Service {
    const courses = (): readonly Course[] => plan.menu?.courses ?? [];
    // Of a course that stays as it is all this stays as well, whatever is written in another.
    const servingOf = lazilyOfEach((course: Course) =>
        serveCourse(course, service.groups, service.guestCount, plan.cupboard),
    );
    const dishesOf = lazilyOfEach((course: Course) => course.dishes.map((dish) => dishFacts(plan, course, dish)));
    const poursIn = lazilyOfEach((course: Course) => [
        ...course.pours.map((pour) => pourFacts(plan, pour, course.index)),
        ...course.dishes.flatMap((dish) => dish.pours.map((pour) => pourFacts(plan, pour, course.index, dish))),
    ]);
    const heated = lazilyOfEach((facts: DishFacts) => heatOfFacts(plan, facts, service.run, service.warming));
    const drunk = lazily(() => poursOf(plan, service.pours, service.groups, service.servings));
    const service: Service = inSections({
        groups: () => groupGuests(plan),
        guestCount: () => plan.event?.guests?.expected.count ?? 0,
        setFor: () => plan.event?.guests?.setFor?.count ?? service.guestCount,
        servings: () => courses().map(servingOf),
        bread: () => plan.menu?.bread && breadService(plan, plan.menu.bread, service.groups, service.guestCount),
        coffee: () => coffeeService(plan),
        facts: () => courses().flatMap(dishesOf),
        pours: () => courses().flatMap(poursIn),
        variations: () => layVariations(plan, service),
        refusedPours: () => refusedPours(plan, service.pours, service.groups, service.servings),
        refusedCoffee: () => refusedCoffee(plan, service.groups),
        reaches: () => findReaches(plan, service),
        counts: () =>
            countPieces({
                plan,
                variations: service.variations,
                facts: service.facts,
                coffee: service.coffee,
                oversetCovers: Math.max(0, service.setFor - service.guestCount),
                drinks: service.drinks,
                gear: servingGear(plan, service),
            }),
        pull: () =>
            pullList(plan, service.counts, statedWashes(plan, new WashableStock(service.counts, service.variations))),
        stock: () => stockOf(plan, service, () => service.run),
        supplies: () => suppliesOf(plan, service),
        drinks: () => needsOf(plan, drunk(), service.variations),
        water: () => waterNeeds(plan, service.guestCount),
        alcohol: () => alcoholEach(plan, service.variations, drunk()),
        seats: () => seatGuests(plan, service),
        allergens: () => allergenMatrix(plan, service),
        tables: () => tablesOf(plan),
        room: () => roomOf(plan, service.tables),
        coverGeometry: () => coverGeometry(plan, service, service.tables),
        run: () => runService(plan, service),
        warming: () => warmingOf(plan, service),
        heat: () => heatOf(plan, service, service.run, heated),
        chilling: () => planChilling(plan, service, service.heat.air, service.run),
        preparations: () => preparationsOf(plan, service),
    });
    return service;
}

/**
 * Sections that often come out the same again. They hold nothing that is worked out later, and nothing of another section: that
 * would stay with them as it was.
 */
const PLAIN: ReadonlySet<string> = new Set<keyof Service>(['groups', 'seats', 'tables', 'counts', 'pull']);

function inSections(sections: { readonly [Name in keyof Required<Service>]: () => Service[Name] }): Service {
    const getters = Object.entries(sections).map(([name, make]: [string, () => unknown]) => [
        name,
        { get: PLAIN.has(name) ? lazilyKept(make) : lazily(make), enumerable: true },
    ]);
    return Object.defineProperties({}, Object.fromEntries(getters) as PropertyDescriptorMap) as Service;
}

/** The covers of guests who eat alike, each with the steps of its evening. */
function layVariations(plan: Plan, { groups, servings, facts, pours, bread, coffee }: Service): readonly Variation[] {
    const shared = { plan, bread, coffee };
    return variationsOf(groups, servings, plan).map((draft, index, drafts): Variation => {
        const dishes = draft.dishes.map((dish) => facts.find((each) => each.dish === dish));
        const drunk = pours.filter((pour) => !pour.dish || draft.dishes.includes(pour.dish));
        const cover = layCover({ ...shared, dishes, pours: drunk });
        const label = lazily(() => labelOf(draft, drafts));
        return {
            ...draft,
            index,
            // A cover does not change with what a dish is called.
            get label() {
                return label();
            },
            cover,
            steps: stepThrough({ ...shared, cover, dishes }),
        };
    });
}

// ---------------------------------------------------------------- bread and coffee
function breadService(
    plan: Plan,
    bread: Bread,
    groups: readonly GuestGroup[],
    guestCount: number,
): NonNullable<Service['bread']> {
    const { cupboard, menu, customs } = plan;
    const common: Dish = {
        title: 'bread',
        kind: { name: 'bread', origin: bread.head },
        course: -1,
        index: bread.dishes.length,
        head: bread.head,
        origin: bread.origin,
        who: { sort: 'rest', origin: bread.head },
        served: {},
        contains: bread.contains,
        suits: bread.suits,
        accompaniments: bread.accompaniments,
        pours: [],
        waivers: bread.waivers,
    };
    // Breads for some guests come with the same butter and spreads as the common one.
    const others = bread.dishes.map((dish) => ({
        ...dish,
        accompaniments: [...bread.accompaniments, ...dish.accompaniments],
    }));
    const course: Course = {
        kind: common.kind,
        title: 'bread',
        index: -1,
        head: bread.head,
        origin: bread.origin,
        dishes: [...others, common],
        hasDishes: true,
        pours: [],
        waivers: bread.waivers,
    };
    const last = (menu?.courses.length ?? 0) - 1;
    const from = bread.from && findCourse(menu, bread.from.name)?.index;
    const until = bread.until && findCourse(menu, bread.until.name)?.index;
    return {
        bread,
        serving: serveCourse(course, groups, guestCount, cupboard),
        plate: bread.plate && cupboard.pieces.get(bread.plate.name),
        spreader: bread.piece && cupboard.pieces.get(bread.piece.name),
        from: from ?? 0,
        until: until ?? breadLeavesByCustom(plan, customs['bread-leaves'].value, from ?? 0) ?? last,
    };
}

/** The course with whose clearing the bread plate leaves where the plan doesn't say. */
function breadLeavesByCustom({ menu, cupboard }: Plan, custom: string, from: number): number | undefined {
    const courses = menu?.courses ?? [];
    const index = (test: (course: Course) => boolean): number | undefined => {
        const found = courses.findIndex(test);
        return found < 0 ? undefined : found;
    };
    const isA = (name: string) => (course: Course) =>
        cupboard.kinds.get(course.kind.name)?.lineage.includes(name) === true;
    const beforeDessert = index((course) => isDessertCourse(course, cupboard));
    switch (custom) {
        case 'after-salad':
            return index(isA('salad'));
        case 'with-its-course':
            return from;
        case 'before-dessert':
            return beforeDessert === undefined || beforeDessert === 0 ? undefined : beforeDessert - 1;
        default:
            return undefined;
    }
}

function coffeeService(plan: Plan): Service['coffee'] {
    const { menu, cupboard, house } = plan;
    if (!menu?.coffee) {
        return undefined;
    }
    const { coffee } = menu;
    const kind = cupboard.drinks.get('coffee');
    const cups = coffee.cup
        ? [coffee.cup.name]
        : (kind?.vessels.flatMap((vessel) => vessel.names.map((named) => named.name)) ?? ['coffee-cup']);
    const spoons = coffee.piece ? [coffee.piece.name] : ['coffee-spoon', 'teaspoon'];
    const after = findCourse(menu, coffee.after.name)?.index;
    return {
        coffee,
        cup: firstInHouse(cups, cupboard, house),
        spoon: firstInHouse(spoons, cupboard, house),
        after: after ?? menu.courses.length - 1,
    };
}

export function factsOf(service: Service, dish: Dish): DishFacts | undefined {
    return service.facts.find((facts) => facts.dish === dish);
}
