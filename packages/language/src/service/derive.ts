import { keepCompiled } from '../keep-compiled.js';
import { saysAsMuch } from '../plan/alike.js';
import { findCourse } from '../plan/names.js';
import type { Bread, Course, Dish, Plan, Pour } from '../plan/types.js';
import { allergenMatrix } from './allergens/matrix.js';
import { planChilling } from './chilling/chilling.js';
import { geometryIn, sortsOf } from './cover-geometry/cover-geometry.js';
import { alcoholEach } from './drinks/alcohol.js';
import { needsOf, poursOf } from './drinks/needs.js';
import { refusedCoffee, refusedPours } from './drinks/refused.js';
import { waterNeeds } from './drinks/water.js';
import { dishFacts, firstInHouse, isDessertCourse, pourFacts } from './facts.js';
import { groupGuests, isSameGroup } from './guests.js';
import { heatOf, heatOfFacts } from './heat/heat.js';
import { lazily, lazilyKept, lazilyKeptEach, lazilyKeptOfEach, lazilyOfEach, whenAsked } from '../plan/lazily.js';
import { preparationsOf } from './preparations/preparations.js';
import { warmingOf } from './preparations/warmed-vessels.js';
import { findReaches } from './reaches.js';
import { roomOf } from './room/room-of.js';
import { tablesOf } from './room/room-to-lay-out.js';
import { runService } from './run/run.js';
import { plateSorts } from './seats/markers.js';
import { seatGuests } from './seats/seats.js';
import { serveCourse } from './serving.js';
import { countPieces } from './stock/count-pieces.js';
import { pullList } from './stock/pull.js';
import { servingGear } from './stock/serving-gear.js';
import { stockOf } from './stock/stock.js';
import { statedWashes, WashableStock } from './stock/turnarounds.js';
import { suppliesOf } from './supplies/supplies.js';
import type { DishFacts, GuestGroup, PourFacts, Service } from './types.js';
import { variationsLaid } from './variations-laid.js';
import { variationsOf } from './variations.js';

/**
 * Computes the whole service of a plan, each section when something first asks for it. Pure; whatever is absent or broken in the
 * plan is left out. A section that often comes out the same is kept then, a list each by itself: such a section holds nothing that
 * is worked out later, and of another only what stays the very same while it says the same.
 */
export function deriveService(plan: Plan): Service {
    const courses = (): readonly Course[] => plan.menu?.courses ?? [];
    // Of a course that stays as it is all this stays as well, whatever is written in another.
    const servingOf = lazilyKeptOfEach((course: Course) =>
        serveCourse(course, service.groups, service.guestCount, plan),
    );
    const factsIn = lazilyOfEach((course: Course) => lazilyOfEach((dish: Dish) => dishFacts(plan, course, dish)));
    const factsOfPours = (course: Course, dish?: Dish) =>
        lazilyKeptOfEach((pour: Pour) => pourFacts(plan, pour, course.index, dish), saysAsMuch);
    const poursOfCourse = lazilyOfEach((course: Course) => factsOfPours(course));
    const poursOfDish = lazilyOfEach((course: Course) => lazilyOfEach((dish: Dish) => factsOfPours(course, dish)));
    const poursIn = (course: Course): readonly PourFacts[] => [
        ...course.pours.map(poursOfCourse(course)),
        ...course.dishes.flatMap((dish) => dish.pours.map(poursOfDish(course)(dish))),
    ];
    const heated = lazilyOfEach((facts: DishFacts) =>
        heatOfFacts(
            plan,
            facts,
            () => service.run,
            () => service.warming,
        ),
    );
    const drunk = lazily(() => poursOf(plan, service));
    // Who is fed what is asked by itself: guests sit where they sit, whatever lies at their covers.
    const drafts = lazilyKeptEach(() => variationsOf(service.groups, service.servings, plan));
    const plates = lazilyKeptEach(() => plateSorts(plan, service));
    const gear = lazilyKeptEach(() => servingGear(plan, service));
    const sorts = lazilyKeptEach(() => sortsOf(service.tables));
    const geometryOf = lazilyOfEach(geometryIn(plan, () => service, sorts));
    const service: Service = whenAsked<Service>({
        groups: lazilyKeptEach(() => groupGuests(plan), isSameGroup),
        guestCount: lazily(() => plan.event?.guests?.expected.count ?? 0),
        setFor: lazily(() => plan.event?.guests?.setFor?.count ?? service.guestCount),
        servings: lazilyKeptEach(() => courses().map(servingOf)),
        bread: lazily(
            () => plan.menu?.bread && breadService(plan, plan.menu.bread, service.groups, service.guestCount),
        ),
        coffee: lazily(() => coffeeService(plan)),
        facts: lazilyKeptEach(
            () => courses().flatMap((course) => course.dishes.map((dish) => factsIn(course)(dish)())),
            Object.is,
        ),
        pours: lazilyKeptEach(() => courses().flatMap(poursIn), Object.is),
        variations: lazilyKeptEach(variationsLaid(plan, () => service, drafts)),
        refusedPours: lazily(() => refusedPours(plan, service.pours, service.groups, service.servings)),
        refusedCoffee: lazily(() => refusedCoffee(plan, service.groups)),
        reaches: lazily(() => findReaches(plan, service)),
        counts: lazilyKeptEach(() =>
            countPieces({
                plan,
                variations: service.variations,
                facts: service.facts,
                coffee: service.coffee,
                oversetCovers: Math.max(0, service.setFor - service.guestCount),
                drinks: service.drinks,
                gear: gear(),
            }),
        ),
        pull: lazilyKeptEach(() =>
            pullList(
                plan,
                service.counts,
                statedWashes(plan, keepCompiled(new WashableStock(service.counts, service.variations))),
            ),
        ),
        stock: lazily(() => stockOf(plan, service, () => service.run)),
        supplies: lazily(() => suppliesOf(plan, service)),
        drinks: lazilyKeptEach(() => needsOf(plan, drunk(), service.variations)),
        water: lazily(() => waterNeeds(plan, service.guestCount)),
        alcohol: lazily(() => alcoholEach(plan, service.variations, drunk())),
        seats: lazilyKept(() => seatGuests(plan, service, drafts(), plates())),
        allergens: lazily(() => allergenMatrix(plan, service)),
        tables: lazilyKeptEach(() => tablesOf(plan)),
        room: lazily(() => roomOf(plan, service.tables)),
        coverGeometry: lazilyKeptEach(() => service.variations.map(geometryOf), Object.is),
        run: lazily(() => runService(plan, service)),
        warming: lazily(() => warmingOf(plan, service)),
        heat: lazily(() => heatOf(plan, service, heated)),
        chilling: lazily(() => planChilling(plan, service, service.heat.air, service.run)),
        preparations: lazily(() => preparationsOf(plan, service)),
    });
    return service;
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
        serving: serveCourse(course, groups, guestCount, plan),
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
