import type { Contains, Cupboard, Kind } from '../plan/cupboard.js';
import { clashes, withParents } from '../plan/names.js';
import type { Named, Origin } from '../plan/origin.js';
import type { Accompaniment, Coffee, Dish, Need, Who } from '../plan/types.js';
import { ALCOHOL, hasAlcohol, isAlcohol, isSoldAsFree, namedAlcohol } from './drinks/alcohol.js';
import { sayNeed } from './guests.js';
import type { Conflict, GuestGroup, PourFacts } from './types.js';

/** Something a guest may be given: what it is called, what it contains, which diets it says it suits. */
interface Served {
    readonly carrier: string;
    readonly contains?: Pick<Contains, 'what'>;
    readonly suits: readonly Named[];
    readonly who?: Who;
    readonly kind?: Pick<Kind, 'of'>;
    /** Where the kind is named. */
    readonly kindOrigin?: Pick<Named, 'origin'>;
    /** Its silence is not held against a diet that has to be stated: water, a cordial, coffee. */
    readonly isHarmlessUnsaid?: boolean;
}

/** What of `served` this guest may not have. Allergens are taken in their widest meaning, whatever the local code requires. */
function conflictsWith(served: Served, need: Need, cupboard: Cupboard): Conflict[] {
    if (need.sort === 'children') {
        return [];
    }
    const { substances } = cupboard;
    const diet = need.sort === 'diet' ? cupboard.diets.get(need.diet.name) : undefined;
    const excluded = excludedBy(need, cupboard);
    const allergen = isAllergenNeed(need, cupboard);
    const conflict = (substance: string, name: string, origin: Origin, isAllergen: boolean): Conflict => ({
        need,
        substance,
        excluded: name,
        // By a getter: who only looks whether there is a conflict is not asked again when a dish is called otherwise.
        get carrier() {
            return served.carrier;
        },
        origin,
        allergen: isAllergen,
    });
    const find = (contained: readonly Named[], origin?: Origin): Conflict[] =>
        contained.flatMap((what) =>
            excluded
                // An allergen is kept from in its widest meaning; a diet leaves out what it names and every sort of it.
                .filter((name) =>
                    allergen ? clashes(what.name, name, substances) : withParents(what.name, substances).has(name),
                )
                .slice(0, 1)
                .map((name) => conflict(what.name, name, origin ?? what.origin, allergen)),
        );
    const stated = find(served.contains?.what ?? []);
    const isSaidToSuit =
        diet !== undefined && (served.suits.some((named) => named.name === diet.name) || asksFor(served.who, need));
    if (isSaidToSuit) {
        return stated;
    }
    // The kind says what a dish is made of (`kind steak … of meat`), unless the dish says it suits the diet.
    const byKind = find(served.kind?.of ?? [], served.kindOrigin?.origin);
    const all = [...stated, ...byKind];
    if (diet?.statedOnly && all.length === 0 && !served.isHarmlessUnsaid) {
        return [conflict(diet.name, diet.name, served.kindOrigin?.origin ?? need.origin, false)];
    }
    return all;
}

/** The names of all that a guest of this need must not meet. */
export function excludedBy(need: Need, { diets }: Pick<Cupboard, 'diets'>): string[] {
    const left =
        need.sort === 'without' ? need.what : need.sort === 'diet' ? (diets.get(need.diet.name)?.excludes ?? []) : [];
    return left.map(({ name }) => name);
}

/** True where what the need leaves out is an allergen: a diet of allergens alone (gluten-free) is kept as strictly as `without gluten`. */
export function isAllergenNeed(need: Need, cupboard: Cupboard): boolean {
    const excluded = excludedBy(need, cupboard);
    return (
        need.sort === 'without' ||
        (excluded.length > 0 && excluded.every((name) => cupboard.substances.get(name)?.sort === 'allergen'))
    );
}

/** True where the dish is meant for this very need: `for vegetarian`. */
function asksFor(who: Who | undefined, need: Need): boolean {
    return who?.sort === 'some' && who.needs.some((wanted) => sayNeed(wanted) === sayNeed(need));
}

/** True where something said to be left off for guests of a need is left off for this group. */
export function isLeftOff(leftOffFor: readonly Need[], group: GuestGroup, cupboard: Cupboard): boolean {
    return leftOffFor.some((off) => group.needs.some((need) => sameNeed(off, need, cupboard)));
}

/** True where a guest of `need` is meant by `wanted`: the same need, or one of the things it is without. */
export function sameNeed(wanted: Need, need: Need, cupboard: Cupboard): boolean {
    if (wanted.sort === 'without' && need.sort === 'without') {
        return wanted.what.every((what) =>
            need.what.some((each) => clashes(each.name, what.name, cupboard.substances)),
        );
    }
    if (wanted.sort === 'without' && need.sort === 'diet') {
        const excluded = excludedBy(need, cupboard);
        return wanted.what.every((what) => excluded.some((each) => clashes(what.name, each, cupboard.substances)));
    }
    return sayNeed(wanted) === sayNeed(need);
}

function conflictsOf(served: Served, group: GuestGroup, cupboard: Cupboard): Conflict[] {
    return group.needs.flatMap((need) => conflictsWith(served, need, cupboard));
}

/** True where a dish is made of something the group may not have by its kind alone: poultry, of fowl, for vegetarians. */
export function isKeptFromKind(kind: Kind, group: GuestGroup, cupboard: Cupboard): boolean {
    return group.needs.some((need) => madeOfAgainst(kind, need, cupboard).length > 0);
}

/** What a kind is made of that the need leaves out, whatever a dish of that kind says. */
export function madeOfAgainst(kind: Kind, need: Need, cupboard: Cupboard): string[] {
    const madeOf = new Set(kind.of.map(({ name }) => name));
    return conflictsWith({ carrier: kind.name, suits: [], kind }, need, cupboard)
        .map(({ substance }) => substance)
        .filter((substance) => madeOf.has(substance));
}

/** What the group may not have of an accompaniment that is not left off for them. */
export function accompanimentConflicts(beside: Accompaniment, group: GuestGroup, cupboard: Cupboard): Conflict[] {
    if (isLeftOff(beside.leftOffFor, group, cupboard)) {
        return [];
    }
    const carrier = beside.title ? `${beside.sort} \`${beside.title}\`` : beside.sort;
    // A sauce without a list of contents is a finding of its own; it is not held against a diet.
    return group.needs.flatMap((need) =>
        conflictsWith(
            {
                carrier,
                contains: beside.contains,
                suits: [],
                who: { sort: 'some', needs: [need], origin: need.origin },
            },
            need,
            cupboard,
        ),
    );
}

/** What the group may not have of a dish with all that comes on it. */
export function dishConflicts(dish: Dish, kind: Kind | undefined, group: GuestGroup, cupboard: Cupboard): Conflict[] {
    const served = {
        get carrier() {
            return `\`${dish.title}\``;
        },
        contains: dish.contains,
        suits: dish.suits,
        who: dish.who,
        kind,
        kindOrigin: dish.kind,
    };
    return [
        ...conflictsOf(served, group, cupboard),
        ...dish.accompaniments.flatMap((beside) => accompanimentConflicts(beside, group, cupboard)),
    ];
}

/**
 * What the group may not have of a drink, whether it is left off for them or not: what it contains, what its kind is made of, its
 * alcohol. What may be sold as free of alcohol is kept from nobody whose diet it says it suits.
 */
export function drinkConflicts(
    drink: Pick<PourFacts, 'pour' | 'kind' | 'strength'>,
    group: GuestGroup,
    cupboard: Cupboard,
): Conflict[] {
    const { pour, kind } = drink;
    const origin = (pour.strength ?? pour.kind ?? pour.glass)?.origin ?? pour.titleOrigin;
    const stated = pour.contains?.what ?? [];
    const isUnnamed = hasAlcohol(drink, cupboard) && namedAlcohol(stated, cupboard) === undefined;
    const alcohol = isUnnamed ? [{ name: ALCOHOL, origin }] : [];
    const isFree = isSoldAsFree(drink);
    const served: Served = {
        get carrier() {
            return `\`${pour.title}\``;
        },
        contains: { what: isFree ? stated : [...stated, ...alcohol] },
        suits: pour.suits,
        who: pour.who,
        kind: {
            of: [...(kind?.of ?? []).filter(({ name }) => !isAlcohol(name, cupboard)), ...(isFree ? alcohol : [])],
        },
        kindOrigin: { origin },
        isHarmlessUnsaid: true,
    };
    return conflictsOf(served, group, cupboard);
}

/** What the group may not have of the coffee, whatever comes beside it. */
export function coffeeItselfConflicts(coffee: Coffee, group: GuestGroup, cupboard: Cupboard): Conflict[] {
    const served: Served = {
        carrier: '`coffee`',
        contains: coffee.contains,
        suits: [],
        kind: cupboard.drinks.get('coffee'),
        kindOrigin: { origin: coffee.head },
        isHarmlessUnsaid: true,
    };
    return conflictsOf(served, group, cupboard);
}

/** What the group may not have of the coffee with all that comes beside it. */
export function coffeeConflicts(coffee: Coffee, group: GuestGroup, cupboard: Cupboard): Conflict[] {
    return [
        ...coffeeItselfConflicts(coffee, group, cupboard),
        ...coffee.accompaniments.flatMap((beside) => accompanimentConflicts(beside, group, cupboard)),
    ];
}
