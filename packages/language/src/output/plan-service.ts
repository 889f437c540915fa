/** What is computed, for the compiled plan. */
import type { Plan } from '../plan/types.js';
import { portionsToCook } from '../service/numbers.js';
import type { CourseServing, Cover, CoverGlass, CoverPiece, Step, TableItem, Variation } from '../service/types.js';
import { allergensJson } from './plan-allergens.js';
import { chillingJson } from './plan-chilling.js';
import { coverGeometryJson } from './plan-cover-geometry.js';
import { drinksJson } from './plan-drinks.js';
import { heatJson } from './plan-heat.js';
import type { Telling } from './plan-menu.js';
import { numbersJson } from './plan-numbers.js';
import { preparationsJson } from './plan-preparations.js';
import { roomLayoutJson } from './plan-room.js';
import { platesJson, seatsJson } from './plan-seats.js';
import { stockJson } from './plan-stock.js';
import { runJson } from './plan-run.js';
import { at, needJson, type Json } from './plan-values.js';

export function serviceJson(telling: Telling): Json {
    const { service, plan, places } = telling;
    return {
        guests: service.guestCount,
        setFor: service.setFor,
        groups: service.groups.map((group) => ({
            count: group.count,
            needs: group.needs.map(needJson),
            label: group.label,
            children: group.children || undefined,
            table: group.seat?.table.name,
            seat: group.seat?.seat?.count,
            ...at(places, group.origin),
        })),
        numbers: numbersJson(telling),
        courses: service.servings.map((serving) => servingJson(plan, serving)),
        bread: service.bread && servingJson(plan, service.bread.serving),
        plates: platesJson(telling),
        seats: seatsJson(telling),
        allergens: allergensJson(telling),
        covers: service.variations.map((variation) => variationJson(telling, variation)),
        ...stockJson(telling),
        ...drinksJson(telling),
        room: roomLayoutJson(telling),
        run: runJson(telling),
        heat: heatJson(telling),
        chilling: chillingJson(telling),
        preparations: preparationsJson(telling),
    };
}

function servingJson(plan: Plan, { course, portions, unserved, leftover }: CourseServing): Json {
    return {
        course: course.title,
        portions: portions.map(({ dish, count, groups }) => ({
            dish: dish.title,
            count,
            cook: portionsToCook(plan, { dish, count }),
            groups: groups.map((each) => ({ label: each.group.label, count: each.count })),
        })),
        unserved: unserved.map(({ group, count }) => ({ label: group.label, count })),
        leftOver: leftover.map(({ dish, count }) => ({ dish: dish.title, count })),
    };
}

function variationJson(telling: Telling, variation: Variation): Json {
    return {
        label: variation.label,
        count: variation.count,
        dishes: variation.dishes.map((dish) => dish?.title ?? null),
        guests: variation.groups.map((group) => group.label),
        cover: coverJson(telling, variation.cover),
        geometry: coverGeometryJson(telling, variation),
        steps: variation.steps.map(stepJson),
    };
}

/** Left and right run outermost first, above nearest the plate first, glasses from the knife tip outward. */
function coverJson(telling: Telling, cover: Cover): Json {
    const pieces = (list: readonly CoverPiece[]): Json[] => list.map((piece) => pieceJson(telling, piece));
    const glasses = (list: readonly CoverGlass[]): Json[] => list.map((glass) => glassJson(telling, glass));
    return {
        servicePlate: cover.servicePlate?.name,
        napkin: cover.napkin,
        left: pieces(cover.left),
        right: pieces(cover.right),
        above: pieces(cover.above),
        breadPlate: cover.bread && { piece: cover.bread.name, with: pieces(cover.breadPlate) },
        glasses: glasses(cover.glasses),
        brought: pieces(cover.brought),
        broughtGlasses: glasses(cover.broughtGlasses),
        saucer: pieces(cover.saucer),
    };
}

const PURPOSE = { eating: undefined, bread: 'bread', coffee: 'coffee' } as const;

function pieceJson({ plan, places }: Telling, piece: CoverPiece): Json {
    return {
        piece: piece.piece.name,
        course: plan.menu?.courses[piece.course]?.title ?? PURPOSE[piece.purpose] ?? null,
        state: piece.state,
        celsius: piece.to,
        broughtBecause: piece.broughtBecause,
        because: {
            stated: 'stated',
            lay: 'a `lay` clause',
            kind: `what \`${piece.dish?.kind.name ?? piece.purpose}\` is eaten with`,
        }[piece.from],
        ...at(places, piece.origin),
    };
}

function glassJson({ plan, places }: Telling, glass: CoverGlass): Json {
    return {
        piece: glass.piece.name,
        for: glass.pour?.title ?? 'water',
        course: plan.menu?.courses[glass.course]?.title,
        ...at(places, glass.origin),
    };
}

function stepJson(step: Step): Json {
    const ids = (items: readonly TableItem[]): string[] => items.map((item) => item.id);
    return {
        step: step.index + 1,
        sort: step.sort,
        title: step.title,
        brought: ids(step.brought),
        used: ids(step.used),
        cleared: ids(step.cleared),
        standing: ids(step.standing),
        bare: step.bare,
    };
}
