/** Pieces that could stand for one that is short: they suit, the house owns some, and the text has one place to say so. */
import type { Piece, PieceUse } from '../../plan/cupboard.js';
import { fromTo, type Origin } from '../../plan/origin.js';
import { mismatchedPair, suitsDrink, suitsKind } from '../../plan/suiting.js';
import type { Plan } from '../../plan/types.js';
import { flatwareOf } from '../cover.js';
import type { CoverPiece, DishFacts, Service, Variation } from '../types.js';
import { ownedOf, rentedOf } from './pull.js';
import type { Substitution, Writing } from './types.js';

type Served = Pick<Service, 'facts' | 'variations' | 'pours' | 'setFor' | 'guestCount'>;

/** Everything that changes when the words at one place do. */
interface Site {
    readonly key: string;
    readonly sort: Substitution['sort'];
    readonly how?: 'in' | 'on';
    readonly title: string;
    readonly courses: readonly number[];
    /** Guests' pieces. */
    readonly count: number;
    readonly overset: number;
    readonly accepts: (other: Piece) => boolean;
    readonly write: (other: string) => Writing;
}

/** A dish with the pieces that it is eaten with. */
interface EatenDish {
    readonly facts: DishFacts;
    readonly eaten: readonly CoverPiece[];
}

/**
 * Every substitution for some pieces, place by place in the order of the menu, each with the house's suiting pieces by how many of
 * them it has.
 */
export function substitutionsFor(plan: Plan, service: Served, names: readonly string[]): Substitution[] {
    const dishes =
        names.length > 0 ? service.facts.map((facts) => ({ facts, eaten: piecesAtCover(service, facts) })) : [];
    return names.flatMap((name) => substitutionsForOne(plan, service, dishes, name));
}

function substitutionsForOne(plan: Plan, service: Served, dishes: readonly EatenDish[], name: string): Substitution[] {
    const short = plan.cupboard.pieces.get(name);
    if (!short) {
        return [];
    }
    const others = [...new Set(plan.house.stock.map((stock) => stock.piece.name))]
        .flatMap((other) => plan.cupboard.pieces.get(other) ?? [])
        .filter((other) => other.family === short.family && other.name !== name)
        .map((other) => ({ other, onHand: (ownedOf(plan.house, other.name) ?? 0) + rentedOf(plan, other.name) }))
        .filter(({ onHand }) => onHand > 0)
        .toSorted((a, b) => b.onHand - a.onHand)
        .map(({ other }) => other);
    return gathered([
        ...vesselSites(plan, service, short),
        ...underlinerSites(service, short),
        ...flatwareSites(plan, service, dishes, short),
        ...glassSites(plan, service, short),
    ]).flatMap((site) => {
        const { sort, how, title, courses, count, overset } = site;
        return others
            .filter((other) => site.accepts(other))
            .map((other) => ({
                piece: name,
                by: other.name,
                count: count + overset,
                courses,
                title,
                sort,
                how,
                write: site.write(other.name),
            }));
    });
}

/** A clause that several dishes share is one place: what suits must suit all of them. */
function gathered(sites: readonly Site[]): Site[] {
    const byKey = new Map<string, Site>();
    for (const site of sites) {
        const known = byKey.get(site.key);
        byKey.set(
            site.key,
            known
                ? {
                      ...known,
                      courses: [...new Set([...known.courses, ...site.courses])],
                      count: known.count + site.count,
                      overset: known.overset + site.overset,
                      accepts: (other) => known.accepts(other) && site.accepts(other),
                  }
                : site,
        );
    }
    return [...byKey.values()].filter((site) => site.count > 0);
}

const at = (origin: Origin): string => `${origin.file} ${origin.start}`;

function replacing(origin: Origin): Site['write'] {
    return (other) => ({ do: 'replace', at: origin, before: '', pieces: [other], after: '' });
}

/** How many guests get a dish. */
function eaters({ variations }: Served, { dish }: DishFacts): number {
    return variations.reduce((sum, { dishes, count }) => sum + (dishes.includes(dish) ? count : 0), 0);
}

/** Covers set beyond the guests where the most frequent one has this lying on it. */
function oversetOf(service: Served, isAtCover: (variation: Variation) => boolean): number {
    const [common] = service.variations;
    return common && common.count > 0 && isAtCover(common) ? Math.max(0, service.setFor - service.guestCount) : 0;
}

// ---------------------------------------------------------------- what it is served in
/** A larger vessel crowds the cover and spills its portion less; a smaller one the other way round. mm and ml. */
const WIDER = 1.1;
/** Share of a bowl that can be carried without a spill. Common practice, no source. */
const CARRIED = 0.9;

function vesselSites(plan: Plan, service: Served, short: Piece): Site[] {
    return service.facts
        .filter((facts) => facts.vessel?.name === short.name)
        .map((facts): Site => {
            const { dish, kind, course } = facts;
            const { vessel, portion, origin } = dish.served;
            const how =
                vessel?.how ??
                kind?.vessels.find((each) => each.names.some((named) => named.name === short.name))?.how ??
                'on';
            const volume = portion?.dimension === 'volume' ? portion.value : 0;
            return {
                key: at(vessel?.piece.origin ?? dish.head),
                sort: 'vessel',
                how,
                title: dish.title,
                courses: [course.index],
                count: eaters(service, facts),
                overset: 0,
                accepts: (other) =>
                    kind !== undefined &&
                    suitsKind(plan.cupboard, other.name, kind) &&
                    needsNoOtherPlate(plan, other, facts) &&
                    across(other) <= Math.max(across(short), across(facts.underliner)) * WIDER &&
                    volume <= (other.measures.holds?.low ?? Infinity) * CARRIED,
                write: vessel
                    ? replacing(vessel.piece.origin)
                    : (other) => ({
                          do: origin ? 'append' : 'add-clause',
                          at: origin ?? dish.origin,
                          before: origin ? `${how} ` : `served ${how} `,
                          pieces: [other],
                          after: '',
                      }),
            };
        });
}

const across = (piece: Piece | undefined): number => piece?.measures.across?.high ?? 0;

/** True where the other vessel stands on the same plate, or on none where none is written. */
function needsNoOtherPlate({ house }: Plan, { on }: Piece, { dish, underliner }: DishFacts): boolean {
    if (on.length === 0) {
        return dish.served.under === undefined;
    }
    const under = on.find((named) => house.stock.length === 0 || (ownedOf(house, named.name) ?? 0) > 0)?.name;
    return under === underliner?.name;
}

function underlinerSites(service: Served, short: Piece): Site[] {
    return service.facts.flatMap((facts): Site[] => {
        const { dish, vessel, underliner, course } = facts;
        const { under, vessel: stated } = dish.served;
        if (underliner?.name !== short.name || !vessel || !(under ?? stated)) {
            return [];
        }
        return [
            {
                key: at(under?.piece.origin ?? stated!.origin),
                sort: 'underliner',
                how: 'on',
                title: dish.title,
                courses: [course.index],
                count: eaters(service, facts),
                overset: 0,
                accepts: (other) => vessel.on.some((named) => named.name === other.name),
                write: under
                    ? replacing(under.piece.origin)
                    : (other) => ({ do: 'append', at: stated!.origin, before: 'on ', pieces: [other], after: '' }),
            },
        ];
    });
}

// ---------------------------------------------------------------- what it is eaten with
function flatwareSites(plan: Plan, service: Served, dishes: readonly EatenDish[], short: Piece): Site[] {
    return dishes.flatMap(({ facts, eaten }): Site[] => {
        const { dish, kind, course } = facts;
        const mine = eaten.filter((piece) => piece.piece.name === short.name);
        const [piece] = mine;
        if (!kind || mine.length !== 1 || !piece || piece.from === 'lay') {
            return [];
        }
        const { cupboard } = plan;
        const site = {
            sort: 'flatware' as const,
            title: dish.title,
            courses: [course.index],
            count: eaters(service, facts),
            overset: piece.when === 'laid' ? oversetOf(service, ({ dishes }) => dishes.includes(dish)) : 0,
            accepts: (other: Piece) =>
                suitsKind(cupboard, other.name, kind) &&
                !eaten.some((each) => each.piece.name === other.name) &&
                mismatchedPair(
                    cupboard,
                    eaten.map((each) => [useOf(each === piece ? other.name : each.piece.name, each.origin)]),
                    kind,
                ) === undefined,
        };
        if (piece.from === 'stated') {
            const group = dish.eaten?.find((uses) => uses.some((use) => use.piece.name === short.name));
            return group
                ? [{ ...site, key: at(group[0]!.piece.origin), write: replacingOneOf(group, short.name) }]
                : [];
        }
        // What a kind is eaten with is written out, which it can be where nothing of it is warmed, chilled or brought.
        const isPlain = eaten.every((each) => each.from === 'kind' && !each.state && each.broughtBecause !== 'stated');
        const names = (other: string): string[] => eaten.map((each) => (each === piece ? other : each.piece.name));
        return isPlain && dish.eaten === undefined
            ? [
                  {
                      ...site,
                      key: at(dish.head),
                      write: (other) => ({
                          do: 'add-clause',
                          at: dish.origin,
                          before: 'eaten with ',
                          pieces: names(other),
                          after: '',
                      }),
                  },
              ]
            : [];
    });
}

/** The pieces of one dish at the first cover that has it. */
function piecesAtCover({ variations }: Served, { dish }: DishFacts): CoverPiece[] {
    const cover = variations.find(({ dishes }) => dishes.includes(dish))?.cover;
    return cover ? flatwareOf(cover).filter((each) => each.dish === dish && each.purpose === 'eating') : [];
}

function useOf(name: string, origin: Origin): PieceUse {
    return { piece: { name, origin }, brought: false, laid: false, origin };
}

/** A piece by itself is replaced; one of several that would do gives way to the other, with all that was said of it. */
function replacingOneOf(group: readonly PieceUse[], name: string): Site['write'] {
    const use = group.find((each) => each.piece.name === name)!;
    if (group.length === 1) {
        return replacing(use.piece.origin);
    }
    const { state, to, brought, laid } = use;
    const warmth = state ? ` ${state}${to ? ` to ${to.written}` : ''}` : '';
    const comes = brought ? ', brought with the course' : laid ? ', laid' : '';
    const first = group[0]!.origin;
    const whole = fromTo(first, group.at(-1)!.origin);
    return (other) => ({ do: 'replace', at: whole, before: '', pieces: [other], after: warmth + comes });
}

// ---------------------------------------------------------------- what is drunk from
function glassSites(plan: Plan, service: Served, short: Piece): Site[] {
    const { cupboard, customs } = plan;
    return service.pours
        .filter((facts) => facts.glass?.name === short.name)
        .map(({ pour, kind, course }): Site => {
            const covers = service.variations.filter(({ cover }) =>
                [...cover.glasses, ...cover.broughtGlasses].some((glass) => glass.pour === pour),
            );
            const isTaken = (other: Piece): boolean =>
                covers.some(({ cover }) =>
                    [...cover.glasses, ...cover.broughtGlasses].some(({ piece }) => piece.name === other.name),
                );
            return {
                key: at(pour.glass?.origin ?? pour.head),
                sort: 'glass',
                title: pour.title,
                courses: [course],
                count: covers.reduce((sum, variation) => sum + variation.count, 0),
                overset: pour.brought ? 0 : oversetOf(service, (variation) => covers.includes(variation)),
                accepts: (other) =>
                    kind !== undefined &&
                    suitsDrink(cupboard, other, kind) === true &&
                    !isTaken(other) &&
                    (pour.amount?.value ?? 0) <= (other.measures.holds?.low ?? 0) * customs['wine-fill'].value,
                write: pour.glass
                    ? replacing(pour.glass.origin)
                    : (other) => ({ do: 'append', at: pour.head, before: 'into ', pieces: [other], after: '' }),
            };
        });
}
