import type { Cupboard, Kind, Piece } from '../plan/cupboard.js';
import type { CustomName } from '../plan/customs.js';
import { isKindOf } from '../plan/names.js';
import type { Origin } from '../plan/origin.js';
import type { Quantity } from '../plan/quantity.js';
import { suitsDrink, vesselsOf } from '../plan/suiting.js';
import type { Plan, Pour } from '../plan/types.js';
import { hasAlcohol, isSoldAsFree, namedAlcohol } from '../service/drinks/alcohol.js';
import { insteadOf } from '../service/drinks/drinkers.js';
import type { PourFacts, Service } from '../service/types.js';
import { quoted } from './wording.js';

/** What the rules about drinks ask of a pour: is it wine, is there alcohol in it, which glasses suit it, how full they may be. */

export function isWine(kind: Kind | undefined): boolean {
    return isKindOf(kind, 'wine');
}

/** Share by volume, 0–1: what the pour states, else its kind's; `undefined` where neither says. */
export function strengthOf({ pour, kind }: Pick<PourFacts, 'pour' | 'kind'>): number | undefined {
    return pour.strength?.value ?? kind?.strength?.value;
}

/** The strongest that a drink of the kind can be, share by volume; a fortified wine has 22 % at most. Common practice, no source. */
export function mostStrength(kind: Kind | undefined): number {
    return isWine(kind) ? 0.25 : 1;
}

/** True for a strength that can only be a slip, and that says nothing of what a guest drinks. */
export function isBeyondStrength(strength: Quantity, kind: Kind | undefined): boolean {
    return strength.value > mostStrength(kind);
}

/** Why a pour counts as having alcohol where neither its kind nor its strength says so: the glass it goes into. */
export function takenFor({ pour, kind, glass }: Pick<PourFacts, 'pour' | 'kind' | 'glass'>): string | undefined {
    return pour.strength || pour.kind || !kind || !glass
        ? undefined
        : `taken for ${quoted(kind.name)} by its ${quoted(glass.name)}`;
}

/** False for a drink that may be sold as free of alcohol, and for one of which nobody says anything. */
export function isAlcoholic(drink: Pick<PourFacts, 'pour' | 'kind'>, cupboard: Cupboard): boolean {
    const facts = { ...drink, strength: strengthOf(drink) };
    const isNamed = namedAlcohol(drink.pour.contains?.what ?? [], cupboard) !== undefined;
    return isNamed || (hasAlcohol(facts, cupboard) && !isSoldAsFree(facts));
}

/** The drinks offered in a pour's place that have no alcohol in them, as far as anybody says. */
export function alcoholFree(pours: readonly Pour[], cupboard: Cupboard): readonly Pour[] {
    return pours.filter((pour) => !isAlcoholic({ pour, kind: cupboard.drinks.get(pour.kind?.name ?? '') }, cupboard));
}

/** True for a drink with alcohol that nothing without it is offered in place of. */
export function lacksAlcoholFreeChoice(drink: Pick<PourFacts, 'pour' | 'kind'>, cupboard: Cupboard): boolean {
    return isAlcoholic(drink, cupboard) && alcoholFree(drink.pour.instead, cupboard).length === 0;
}

/** Every drink of the evening: the pours, what is offered in their place in the glass it comes in, and the water. */
export function everyDrink(plan: Plan, service: Service): readonly Omit<PourFacts, 'strength'>[] {
    const { cupboard, menu } = plan;
    const water = menu?.water?.pour;
    return [
        ...service.pours.flatMap((facts) => [facts, ...insteadOf(plan, facts)]),
        ...(water
            ? [
                  {
                      pour: water,
                      kind: cupboard.drinks.get(water.kind?.name ?? 'water'),
                      glass: cupboard.pieces.get(water.glass?.name ?? 'water-glass'),
                      course: -1,
                  },
              ]
            : []),
    ];
}

/** Glasses that suit a drink and hold the pour: what its kind names, then the nearest kind's, the house's own first. */
export function glassesFor(plan: Plan, kind: Kind, amount: Quantity | undefined): readonly Piece[] {
    const { cupboard, house } = plan;
    const owned = new Set(house.stock.map(({ piece }) => piece.name));
    const named = vesselsOf(kind);
    const distance = (glass: Piece): number => {
        const nearest = glass.suits.map(({ name }) => kind.lineage.indexOf(name)).filter((at) => at >= 0);
        const away = named.includes(glass.name) ? 0 : Math.min(kind.lineage.length, ...nearest);
        return 2 * away + (owned.has(glass.name) ? 0 : 1);
    };
    return [...cupboard.pieces.values()]
        .filter((piece) => suitsDrink(cupboard, piece, kind) && !fillOf(plan, kind, piece, amount)?.isOver)
        .toSorted((a, b) => distance(a) - distance(b));
}

/** How full a glass gets and how full it may get. */
export interface Fill {
    /** Share of the glass, 0–1 and above. */
    readonly share: number;
    /** Share of the glass, 0–1. */
    readonly limit: number;
    /** ml. */
    readonly most: number;
    /** The custom that sets the limit; absent where it is the brim. */
    readonly custom?: CustomName;
    readonly isOver: boolean;
}

/** Where only the brim sets a limit, a glass is filled to this share of it: common practice, no source. */
export const BELOW_BRIM = 0.9;

const FILL_CUSTOMS = [
    ['sparkling-wine', 'sparkling-fill'],
    ['wine', 'wine-fill'],
    ['water', 'water-fill'],
] as const;

/**
 * How full the pour makes the glass. Where the cupboard gives a range of what the glass holds, its upper end counts, so that
 * an overfull glass is surely one. `undefined` where the amount or what the glass holds is not known.
 */
export function fillOf(
    plan: Plan,
    kind: Kind | undefined,
    glass: Piece,
    amount: Quantity | undefined,
): Fill | undefined {
    const holds = glass.measures.holds?.high;
    if (!amount || !holds) {
        return undefined;
    }
    const custom = FILL_CUSTOMS.find(([drink]) => isKindOf(kind, drink))?.[1];
    const limit = custom ? plan.customs[custom].value : 1;
    const share = amount.value / holds;
    // A hair more than two thirds is two thirds: figures in ml and fl oz seldom meet exactly. A brim is a brim.
    const isOver = custom ? share > limit + 0.005 : share >= 1;
    return { share, limit, most: limit * holds, ...(custom && { custom }), isOver };
}

/** The end of what a pour says before its block, where a further phrase can be written. */
export function lastPhrase(pour: Pour): Origin {
    const phrases = [
        pour.titleOrigin,
        pour.amount?.origin,
        pour.glass?.origin,
        pour.temperature?.origin,
        pour.kind?.origin,
        pour.who?.origin,
        pour.refills?.origin,
        pour.toppedUpUntil?.origin,
        ...pour.leftOffFor.map((need) => need.origin),
    ].filter((origin) => origin !== undefined);
    return phrases.reduce((last, origin) => (origin.end > last.end ? origin : last));
}
