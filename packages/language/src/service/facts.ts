import type { Cupboard, Kind, Piece } from '../plan/cupboard.js';
import { itself } from '../plan/alike.js';
import { lazily, lazilyOfEach, lazilyOfEachName } from '../plan/lazily.js';
import { isKindOf } from '../plan/names.js';
import type { Course, Dish, House, Plan, Pour } from '../plan/types.js';
import type { DishFacts, PourFacts } from './types.js';

/** True where the house has the piece: it owns some, or it states no stock at all. */
export function isInHouse(piece: string, house: House): boolean {
    return piecesOf(house)(piece);
}

/** Asked piece by piece: a cover stays as it is when the house counts other pieces anew. */
const piecesOf = lazilyOfEach((house: House) => {
    const owned = lazily(
        () => new Set(house.stock.filter(({ count }) => count.count > 0).map(({ piece }) => piece.name)),
    );
    return lazilyOfEachName((piece) => house.stock.length === 0 || owned().has(piece));
});

/** The first of these that the house has, else the first there is. */
export function firstInHouse(names: readonly string[], cupboard: Cupboard, house: House): Piece | undefined {
    const pieces = names.flatMap((name) => cupboard.pieces.get(name) ?? []);
    return pieces.find((piece) => isInHouse(piece.name, house)) ?? pieces[0];
}

/** Lowest temperature of a dish that counts as hot and highest of one that counts as cold, °C, where its kind doesn't say. */
const HOT_FROM = 40;
const COLD_TO = 15;

/** A dish with its kind and vessels looked up, each when it is asked for: what it says, else what its kind says. */
export function dishFacts(plan: Plan, course: Course, dish: Dish): () => DishFacts {
    const { cupboard } = plan;
    // Each by itself: what comes out the same changes nothing of what stands on it.
    const kind = lazily(() => cupboard.kinds.get(dish.kind.name));
    const isStated = lazily(() => dish.served.vessel !== undefined);
    const vessel = lazily(() => {
        const stated = dish.served.vessel;
        const usual = kind()?.vessels.flatMap(({ names }) => names.map(({ name }) => name)) ?? [];
        return stated ? cupboard.pieces.get(stated.piece.name) : firstInHouse(usual, cupboard, plan.house);
    });
    const underliner = lazily(() => underlinerOf(plan, dish, vessel()));
    const isHot = lazily(() => {
        const wanted = dish.served.temperature?.value;
        return wanted === undefined ? kind()?.band === 'hot' : wanted >= HOT_FROM;
    });
    const isCold = lazily(() => {
        const wanted = dish.served.temperature?.value;
        return wanted === undefined ? kind()?.band === 'cold' || kind()?.band === 'frozen' : wanted <= COLD_TO;
    });
    // How warm it is changes nothing of what it is served in.
    return lazily(() => ({
        dish,
        course,
        kind: kind(),
        vessel: vessel(),
        vesselHow: isStated() ? 'stated' : vessel() ? 'kind' : 'none',
        underliner: underliner(),
        wantsUnderliner: (vessel()?.on.length ?? 0) > 0,
        get wanted() {
            return dish.served.temperature?.value;
        },
        get isHot() {
            return isHot();
        },
        get isCold() {
            return isCold();
        },
    }));
}

/** What the vessel stands on: stated, else — unless the house wants it stated — the first fitting one it has. */
function underlinerOf({ cupboard, house, customs }: Plan, dish: Dish, vessel: Piece | undefined): Piece | undefined {
    if (dish.served.under) {
        return cupboard.pieces.get(dish.served.under.piece.name);
    }
    if (customs.underliner.value === 'stated') {
        return undefined;
    }
    const fitting = (vessel?.on ?? []).flatMap((named) => cupboard.pieces.get(named.name) ?? []);
    return fitting.find((piece) => isInHouse(piece.name, house));
}

export function pourFacts({ cupboard, house }: Plan, pour: Pour, course: number, dish?: Dish): PourFacts {
    const kind = pour.kind && cupboard.drinks.get(pour.kind.name);
    const usual = kind?.vessels.flatMap((vessel) => vessel.names.map((named) => named.name)) ?? [];
    const glass = pour.glass ? cupboard.pieces.get(pour.glass.name) : firstInHouse(usual, cupboard, house);
    const taken = kind ?? kindFromGlass(glass, cupboard);
    return itself({ pour, course, dish, kind: taken, glass, strength: pour.strength?.value ?? taken?.strength?.value });
}

/** A pour that doesn't say what it is takes the one kind its glass is for: wine in a wine glass. */
function kindFromGlass(glass: Piece | undefined, cupboard: Cupboard): Kind | undefined {
    const kinds = (glass?.suits ?? []).flatMap((named) => cupboard.drinks.get(named.name) ?? []);
    return kinds.length === 1 ? kinds[0] : undefined;
}

export function isDessert(kind: Kind | undefined): boolean {
    return isKindOf(kind, 'dessert');
}

/** True where a table is cleared for a course as for dessert: by the course's kind, or by that of all its dishes. */
export function isDessertCourse(course: Course | undefined, { kinds }: Cupboard): boolean {
    return (
        course !== undefined &&
        (isDessert(kinds.get(course.kind.name)) || course.dishes.every(({ kind }) => isDessert(kinds.get(kind.name))))
    );
}
