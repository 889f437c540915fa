/** Who drinks what: the guests a pour is for, and those who take what is offered in its place. */
import { lazilyOfEach } from '../../plan/lazily.js';
import type { Plan, Pour } from '../../plan/types.js';
import { drinkConflicts, isLeftOff, sameNeed } from '../diets.js';
import { pourFacts } from '../facts.js';
import type { CourseServing, GuestGroup, PourFacts } from '../types.js';
import { hasAlcohol } from './alcohol.js';

/** A share of guests is rounded up: 20 % of 5 is one, not 1.0000000000000002. */
const upTo = (guests: number): number => Math.max(0, Math.ceil(guests - 1e-9));

/** Guests by group; for a dish's own pour only those who get the dish. */
export type Guests = ReadonlyMap<GuestGroup, number>;

export interface Drinkers {
    /** How many take the pour itself. */
    readonly pour: number;
    /** In the order offered. */
    readonly instead: readonly {
        readonly facts: PourFacts;
        readonly count: number;
        /** Of these, how many may not have the pour. */
        readonly keptFrom: number;
    }[];
}

/** True where a group may have a drink: it is not left off for them, holds nothing they may not have, and, with alcohol, is not for children. */
export function mayDrink(plan: Plan, facts: PourFacts, group: GuestGroup): boolean {
    return whoMayDrink(plan)(facts)(group);
}

/** Asked again and again in one look at a plan. */
const whoMayDrink = lazilyOfEach(({ cupboard }: Plan) =>
    lazilyOfEach((facts: PourFacts) =>
        lazilyOfEach(
            (group: GuestGroup) =>
                !isLeftOff(facts.pour.leftOffFor, group, cupboard) &&
                !(group.children && hasAlcohol(facts, cupboard)) &&
                drinkConflicts(facts, group, cupboard).length === 0,
        ),
    ),
);

/**
 * Counts the drinkers of a pour and of what is offered in its place.
 *
 * The pour goes to everyone who may have it, or to the number, share or needs it states. What is offered in its place goes, to
 * each guest the first they may have, to those who may not have the pour; and beside them to those who are free to take it and
 * rather don't: the rest where the pour is for some only, else the house's share (`alternative-share`).
 * The pour is never counted down by that share: who takes which is not known before the evening.
 */
export function countDrinkers(plan: Plan, facts: PourFacts, guests: Guests): Drinkers {
    const { who } = facts.pour;
    const may = [...guests].filter(([group]) => mayDrink(plan, facts, group));
    const mayNot = [...guests].filter(([group]) => !mayDrink(plan, facts, group));
    const able = total(may);
    const pour = who?.sort === 'some' ? countSome(plan, who, may) : able;
    const wouldRather = who?.sort === 'some' ? able - pour : upTo(plan.customs['alternative-share'].value * able);
    const offers = insteadOf(plan, facts).map((each) => ({ facts: each, count: 0, keptFrom: 0 }));
    const firstFor = (group: GuestGroup) => offers.find((offer) => mayDrink(plan, offer.facts, group));
    for (const [group, count] of mayNot) {
        const offer = firstFor(group);
        if (offer) {
            offer.count += count;
            offer.keptFrom += count;
        }
    }
    let left = wouldRather;
    for (const [group, count] of may.toReversed()) {
        // The plain guests are the last group and the largest: a share is theirs before it is anyone's with a need.
        const offer = firstFor(group);
        const taken = offer ? Math.min(left, count) : 0;
        if (offer) {
            offer.count += taken;
        }
        left -= taken;
    }
    return { pour, instead: offers };
}

function countSome(
    plan: Plan,
    who: Extract<Pour['who'], { readonly sort: 'some' }>,
    may: readonly (readonly [GuestGroup, number])[],
): number {
    const meant = total(may.filter(([group]) => isMeantFor(who, group, plan)));
    if (who.count) {
        return Math.min(who.count.count, meant);
    }
    return who.share ? upTo(who.share.value * meant) : meant;
}

/** True where a drink is for the group: for everybody, or for guests of a need that they have. */
export function isMeantFor(who: Pour['who'], group: GuestGroup, { cupboard }: Plan): boolean {
    const needs = who?.sort === 'some' ? who.needs : [];
    return needs.every((wanted) => group.needs.some((need) => sameNeed(wanted, need, cupboard)));
}

/** What is offered in the place of a pour, and in the place of that, in the order written. */
export function insteadOf(plan: Plan, facts: PourFacts): readonly PourFacts[] {
    return offersOf(plan)(facts);
}

const offersOf = lazilyOfEach((plan: Plan) =>
    lazilyOfEach((facts: PourFacts) => flattened(facts.pour).map((each) => insteadFacts(plan, facts, each))),
);

function flattened({ instead }: Pour): Pour[] {
    return instead.flatMap((each) => [each, ...flattened(each)]);
}

/** It goes into the glass of the pour unless it names its own; a cordial in a wine glass is no wine. */
function insteadFacts(plan: Plan, facts: PourFacts, instead: Pour): PourFacts {
    const { glass, ...own } = pourFacts(plan, instead, facts.course, facts.dish);
    const kind = instead.kind && own.kind;
    return {
        ...own,
        glass: instead.glass ? glass : facts.glass,
        kind,
        strength: instead.strength?.value ?? kind?.strength?.value,
    };
}

/** For a dish's own pour, how many of each group get the dish; else all guests. */
export function guestsOffered(
    { dish, course }: PourFacts,
    groups: readonly GuestGroup[],
    servings: readonly CourseServing[],
): Guests {
    const portion = dish && servings[course]?.portions.find((each) => each.dish === dish);
    return dish
        ? new Map(portion?.groups.map(({ group, count }) => [group, count]))
        : new Map(groups.map((group) => [group, group.count]));
}

const total = (guests: readonly (readonly [unknown, number])[]): number =>
    guests.reduce((sum, [, count]) => sum + count, 0);
