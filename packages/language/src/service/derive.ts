import { findCourse } from '../plan/names.js';
import type { Bread, Course, Dish, Plan } from '../plan/types.js';
import { allergenMatrix } from './allergens/matrix.js';
import { planChilling } from './chilling/chilling.js';
import { layCover } from './cover.js';
import { coverGeometry } from './cover-geometry/cover-geometry.js';
import { accompanimentConflicts, pourConflicts } from './diets.js';
import { alcoholEach } from './drinks/alcohol.js';
import { needsOf, poursOf } from './drinks/needs.js';
import { waterNeeds } from './drinks/water.js';
import { dishFacts, firstInHouse, isDessert, pourFacts } from './facts.js';
import { groupGuests } from './guests.js';
import { heatOf } from './heat/heat.js';
import { lazily } from './lazily.js';
import { preparationsOf } from './preparations/preparations.js';
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
import type { Conflict, CourseServing, DishFacts, GuestGroup, PourFacts, Service, Variation } from './types.js';
import { variationsOf } from './variations.js';

/** Computes the whole service of a plan. Pure; whatever is absent or broken in the plan is left out. */
export function deriveService(plan: Plan): Service {
    const courses = plan.menu?.courses ?? [];
    const groups = groupGuests(plan);
    const guestCount = plan.event?.guests?.expected.count ?? 0;
    const servings = courses.map((course) => serveCourse(course, groups, guestCount, plan.cupboard));
    const facts = courses.flatMap((course) => course.dishes.map((dish) => dishFacts(plan, course, dish)));
    const pours = courses.flatMap((course, index) => [
        ...course.pours.map((pour) => pourFacts(plan, pour, index)),
        ...course.dishes.flatMap((dish) => dish.pours.map((pour) => pourFacts(plan, pour, index, dish))),
    ]);
    const bread = plan.menu?.bread && breadService(plan, plan.menu.bread, groups, guestCount);
    const coffee = coffeeService(plan);
    const shared = { plan, bread, coffee };
    const variations = variationsOf(groups, servings, plan).map((draft, index): Variation => {
        const dishes = draft.dishes.map((dish) => facts.find((each) => each.dish === dish));
        const drunk = pours.filter((pour) => !pour.dish || draft.dishes.includes(pour.dish));
        const cover = layCover({ ...shared, dishes, pours: drunk });
        return { ...draft, index, cover, steps: stepThrough({ ...shared, cover, dishes }) };
    });
    const setFor = plan.event?.guests?.setFor?.count ?? guestCount;
    const oversetCovers = Math.max(0, setFor - guestCount);
    // Each section is worked out once, when something first asks for it: a rule that asks for none costs nothing.
    const drunk = lazily(() => poursOf(plan, pours, groups, servings));
    const drinks = lazily(() => needsOf(plan, drunk(), variations));
    const water = lazily(() => waterNeeds(plan, guestCount));
    const alcohol = lazily(() => alcoholEach(plan, variations, drunk()));
    const seats = lazily(() => seatGuests(plan, service));
    const allergens = lazily(() => allergenMatrix(plan, service));
    const tables = lazily(() => tablesOf(plan));
    const room = lazily(() => roomOf(plan, tables()));
    const geometry = lazily(() => coverGeometry(plan, service, tables()));
    const counts = lazily(() =>
        countPieces({
            plan,
            variations,
            facts,
            coffee,
            oversetCovers,
            drinks: drinks(),
            gear: servingGear(plan, service),
        }),
    );
    const pull = lazily(() => pullList(plan, counts(), statedWashes(plan, new WashableStock(counts(), variations))));
    const run = lazily(() => runService(plan, service));
    const stock = lazily(() => stockOf(plan, service, () => service.run));
    const supplies = lazily(() => suppliesOf(plan, service));
    const heat = lazily(() => heatOf(plan, service, service.run));
    const chilling = lazily(() => planChilling(plan, service, heat().air, service.run));
    const preparations = lazily(() => preparationsOf(plan, service));
    const service: Service = {
        groups,
        guestCount,
        setFor,
        servings,
        bread,
        coffee,
        facts,
        pours,
        variations,
        reaches: findReaches(plan, groups, servings, pours, bread?.serving),
        get counts() {
            return counts();
        },
        get pull() {
            return pull();
        },
        get stock() {
            return stock();
        },
        get supplies() {
            return supplies();
        },
        get drinks() {
            return drinks();
        },
        get water() {
            return water();
        },
        get alcohol() {
            return alcohol();
        },
        get seats() {
            return seats();
        },
        get allergens() {
            return allergens();
        },
        get tables() {
            return tables();
        },
        get room() {
            return room();
        },
        get coverGeometry() {
            return geometry();
        },
        get run() {
            return run();
        },
        get heat() {
            return heat();
        },
        get chilling() {
            return chilling();
        },
        get preparations() {
            return preparations();
        },
    };
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
    const beforeDessert = index((course) => isDessert(cupboard.kinds.get(course.kind.name)));
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

// ---------------------------------------------------------------- what reaches whom
/** Everything that would be put before a guest who must not have it, each carrier once a group and course. */
function findReaches(
    plan: Plan,
    groups: readonly GuestGroup[],
    servings: readonly CourseServing[],
    pours: readonly PourFacts[],
    bread: CourseServing | undefined,
): Service['reaches'] {
    const reaches: { group: GuestGroup; count: number; conflict: Conflict; course: number }[] = [];
    const note = (group: GuestGroup, conflicts: readonly Conflict[], course: number, count = group.count): void => {
        const carriers = new Map(
            conflicts
                .filter((conflict) => conflict.allergen)
                .map((conflict) => [`${conflict.carrier} ${conflict.substance}`, conflict]),
        );
        reaches.push(...[...carriers.values()].map((conflict) => ({ group, count, conflict, course })));
    };
    for (const serving of [...servings, ...(bread ? [bread] : [])]) {
        for (const { group, count, refused } of serving.unserved) {
            // Every dish is refused: the one it would get is the common one, else the first.
            const common =
                refused.find(({ dish }) => dish.who?.sort !== 'some' || dish.who.needs.length === 0) ?? refused[0];
            note(group, common?.conflicts ?? [], serving.course.index, count);
        }
    }
    for (const { pour, course, dish } of pours) {
        // A dish's own pour reaches those who get the dish.
        const reached = dish
            ? (servings[course]?.portions.find((portion) => portion.dish === dish)?.groups ?? []).map(
                  (each) => each.group,
              )
            : groups;
        for (const group of reached) {
            const isReplaced = pour.instead.some(
                (instead) => pourConflicts(instead, group, plan.cupboard).length === 0,
            );
            if (!isReplaced) {
                note(group, pourConflicts(pour, group, plan.cupboard), course);
            }
        }
    }
    const coffee = plan.menu?.coffee;
    if (coffee) {
        const after = plan.menu?.courses.length ?? 0;
        for (const group of groups) {
            const drink = {
                ...EMPTY_POUR,
                title: 'coffee',
                contains: coffee.contains,
                origin: coffee.origin,
                titleOrigin: coffee.head,
                head: coffee.head,
            };
            note(
                group,
                [
                    ...pourConflicts(drink, group, plan.cupboard),
                    ...coffee.accompaniments.flatMap((beside) => accompanimentConflicts(beside, group, plan.cupboard)),
                ],
                after,
            );
        }
    }
    return reaches;
}

const EMPTY_POUR = {
    leftOffFor: [],
    suits: [],
    bottles: [],
    instead: [],
    waivers: [],
    brought: false,
    tasted: false,
} as const;

export function factsOf(service: Service, dish: Dish): DishFacts | undefined {
    return service.facts.find((facts) => facts.dish === dish);
}
