/** What the texts say of the evening, for the compiled plan. */
import type { Contains, PieceUse } from '../plan/cupboard.js';
import { isRequiredBy, withParents } from '../plan/names.js';
import type {
    Accompaniment,
    Bread,
    Coffee,
    Course,
    Dish,
    Lay,
    Plan,
    Pour,
    Speech,
    VesselUse,
    Water,
} from '../plan/types.js';
import { factsOf } from '../service/derive.js';
import { wordFor } from '../service/allergens/duty.js';
import type { Service } from '../service/types.js';
import type { Places } from './places.js';
import { clockJson } from './plan-clock.js';
import { at, needJson, quantityJson, textJson, whoJson, type Json } from './plan-values.js';

export interface Telling {
    readonly plan: Plan;
    readonly service: Service;
    readonly places: Places;
}

export function menuJson(telling: Telling): Json | undefined {
    const { plan, places } = telling;
    const { menu } = plan;
    return (
        menu && {
            courses: menu.courses.map((course) => courseJson(telling, course)),
            bread: menu.bread && breadJson(telling, menu.bread),
            water: menu.water && waterJson(telling, menu.water),
            coffee: menu.coffee && coffeeJson(telling, menu.coffee),
            toastsAndSpeeches: menu.speeches.map((speech) => speechJson(telling, speech)),
            washes: menu.washes.map((wash) => ({
                piece: wash.piece.name,
                after: wash.after.name,
                for: wash.for.name,
                ...at(places, wash.origin),
            })),
            lay: menu.lay && layJson(places, menu.lay),
        }
    );
}

function courseJson(telling: Telling, course: Course): Json {
    const { places } = telling;
    return {
        number: course.index + 1,
        kind: course.kind.name,
        title: course.title,
        ...at(places, course.head),
        lasts: course.lasts && { ...quantityJson(course.lasts.time), giveOrTake: quantityJson(course.lasts.spread) },
        startsAt: clockJson(telling.plan, course.startsAt?.time),
        preset: course.preset && {
            beforeSeating: quantityJson(course.preset.before),
            ...at(places, course.preset.origin),
        },
        lay: course.lay && layJson(places, course.lay),
        dishes: course.dishes.map((dish) => dishJson(telling, dish)),
        pours: course.pours.map((pour) => pourJson(telling, pour)),
    };
}

function dishJson(telling: Telling, dish: Dish): Json {
    const { places, service } = telling;
    const facts = factsOf(service, dish);
    const { served } = dish;
    return {
        title: dish.title,
        kind: dish.kind.name,
        ...at(places, dish.head),
        who: whoJson(dish.who),
        vessel:
            (served.vessel && vesselJson(places, served.vessel)) ??
            (facts?.vessel && { piece: facts.vessel.name, because: 'the usual vessel of its kind' }),
        underliner:
            (served.under && vesselJson(places, served.under)) ??
            (facts?.underliner && { piece: facts.underliner.name, because: 'its vessel wants one' }),
        servedAt: quantityJson(served.temperature),
        portion: quantityJson(served.portion),
        servedFrom: served.side?.side,
        pouredAtTable: served.pouredAtTable && { from: served.pouredAtTable.gear?.name },
        raw: served.raw?.how ?? facts?.kind?.raw,
        eatenWith: dish.eaten?.map((group) => group.map((use) => useJson(places, use))),
        leavesPassAt: quantityJson(dish.leavesPass?.temperature),
        heldAt: dish.heldAt && { ...quantityJson(dish.heldAt.temperature), for: quantityJson(dish.heldAt.time) },
        cookTo: dish.cookTo && { ...quantityJson(dish.cookTo.temperature), for: quantityJson(dish.cookTo.time) },
        reheatTo: dish.reheat && { ...quantityJson(dish.reheat.temperature), in: quantityJson(dish.reheat.time) },
        cooled: dish.cooled?.steps.map((step) => ({ to: quantityJson(step.temperature), in: quantityJson(step.time) })),
        measured: dish.measured && {
            ...quantityJson(dish.measured.temperature),
            after: quantityJson(dish.measured.after),
        },
        cookExtra: dish.extra?.count,
        carried: dish.carried?.how,
        platedIn: dish.platedIn?.times.map(quantityJson),
        platedAhead: dish.platedAhead && { into: dish.platedAhead.gear?.name, ...at(places, dish.platedAhead.origin) },
        within: quantityJson(served.within?.time),
        contains: containsJson(telling, dish.contains),
        suits: dish.suits.map((named) => named.name),
        accompaniments: dish.accompaniments.map((beside) => accompanimentJson(telling, beside)),
        pours: dish.pours.map((pour) => pourJson(telling, pour)),
        recipe: textJson(dish.recipe),
        lay: dish.lay && layJson(places, dish.lay),
    };
}

function vesselJson(places: Places, vessel: VesselUse): Json {
    return { piece: vessel.piece.name, state: vessel.state, to: quantityJson(vessel.to), ...at(places, vessel.origin) };
}

function useJson(places: Places, use: PieceUse): Json {
    return {
        piece: use.piece.name,
        state: use.state,
        to: quantityJson(use.to),
        brought: use.brought || undefined,
        laid: use.laid || undefined,
        ...at(places, use.origin),
    };
}

/**
 * A complete statement of contents; `null` where the text makes none. Each with whether the local code in force requires it to be
 * told, in the code's words. The code decides words and duties only: what a guest is kept from does not depend on it.
 */
function containsJson({ plan }: Telling, contains: Contains | undefined): readonly Json[] | null {
    if (!contains) {
        return null;
    }
    const { substances } = plan.cupboard;
    return contains.what.map(({ name }) => {
        const substance = substances.get(name);
        const line = [...withParents(name, substances)].flatMap((each) => substances.get(each) ?? []);
        const isRequired = isRequiredBy(plan.code.name, name, substances);
        return {
            ...wordFor(name, plan.code.name, substances),
            sort: substance?.sort,
            requiredByCode: isRequired,
            alsoA: line.slice(1).map((each) => each.name),
        };
    });
}

function accompanimentJson(telling: Telling, beside: Accompaniment): Json {
    return {
        sort: beside.sort,
        title: beside.title,
        ...at(telling.places, beside.head),
        pouredAtTable: beside.pouredAtTable && { from: beside.pouredAtTable.gear?.name },
        passed: beside.passed || undefined,
        leftOffFor: beside.leftOffFor.map(needJson),
        contains: containsJson(telling, beside.contains),
    };
}

function pourJson(telling: Telling, pour: Pour): Json {
    const facts = telling.service.pours.find((each) => each.pour === pour);
    return {
        title: pour.title,
        kind: pour.kind?.name ?? facts?.kind?.name,
        ...at(telling.places, pour.titleOrigin),
        amount: quantityJson(pour.amount),
        glass: pour.glass?.name ?? facts?.glass?.name,
        servedAt: quantityJson(pour.temperature),
        who: whoJson(pour.who),
        refills: pour.refills?.count,
        toppedUpUntil: pour.toppedUpUntil?.name,
        glassBrought: pour.brought || undefined,
        tastedByHost: pour.tasted || undefined,
        leftOffFor: pour.leftOffFor.map(needJson),
        strength:
            quantityJson(pour.strength) ??
            (facts?.strength === undefined
                ? undefined
                : { share: facts.strength, because: 'usual for its kind; the label decides' }),
        bottles: pour.bottles.map(quantityJson),
        chilledIn: pour.chilledIn?.name,
        contains: containsJson(telling, pour.contains),
        suits: pour.suits.map((named) => named.name),
        instead: pour.instead.map((other) => pourJson(telling, other)),
    };
}

function breadJson(telling: Telling, bread: Bread): Json {
    const courses = telling.plan.menu?.courses ?? [];
    const { from, until } = telling.service.bread ?? {};
    return {
        ...at(telling.places, bread.head),
        from: bread.from?.name ?? (from === undefined ? undefined : courses[from]?.kind.name),
        until: bread.until?.name ?? (until === undefined ? undefined : courses[until]?.kind.name),
        untilBecause: bread.until ? 'stated' : 'custom `bread-leaves`',
        plate: bread.plate?.name,
        piece: bread.piece?.name,
        contains: containsJson(telling, bread.contains),
        suits: bread.suits.map((named) => named.name),
        recipe: textJson(bread.recipe),
        accompaniments: bread.accompaniments.map((beside) => accompanimentJson(telling, beside)),
        otherBreads: bread.dishes.map((dish) => dishJson(telling, dish)),
    };
}

function coffeeJson(telling: Telling, coffee: Coffee): Json {
    const { cup, spoon } = telling.service.coffee ?? {};
    return {
        ...at(telling.places, coffee.head),
        after: coffee.after.name,
        onRequest: coffee.onRequest,
        cup: coffee.cup?.name ?? cup?.name,
        spoon: coffee.piece?.name ?? spoon?.name,
        servedAt: quantityJson(coffee.temperature),
        contains: containsJson(telling, coffee.contains),
        accompaniments: coffee.accompaniments.map((beside) => accompanimentJson(telling, beside)),
    };
}

function waterJson({ places }: Telling, { choices, pour, origin }: Water): Json {
    return {
        ...at(places, origin),
        choices,
        amount: quantityJson(pour.amount),
        glass: pour.glass?.name,
        servedAt: quantityJson(pour.temperature),
        refills: pour.refills?.count,
        toppedUpUntil: pour.toppedUpUntil?.name,
    };
}

function speechJson({ places, plan }: Telling, speech: Speech): Json {
    return {
        sort: speech.sort,
        title: speech.title,
        ...at(places, speech.origin),
        when: speech.when && { [speech.when.when]: speech.when.course.name },
        startsAt: clockJson(plan, speech.at),
        lasts: quantityJson(speech.lasts),
        with: textJson(speech.pour),
    };
}

function layJson(places: Places, lay: Lay): Json {
    const names = (side: Lay['left']): string[] | undefined => side?.map((named) => named.name);
    return {
        ...at(places, lay.origin),
        left: names(lay.left),
        right: names(lay.right),
        above: names(lay.above),
        saucer: names(lay.saucer),
        breadPlate: names(lay.breadPlate),
    };
}
