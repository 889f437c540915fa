import type { Accompaniment, Plan } from '../plan/types.js';
import { isAlcohol } from '../service/drinks/alcohol.js';
import type { RefusedPour } from '../service/drinks/types.js';
import type { Conflict, GuestGroup, Service } from '../service/types.js';
import { lacksAlcoholFreeChoice, lastPhrase } from './drinks.js';
import type { Fix } from './fixes.js';
import { guestsOf, needAsWritten, sayConflicts, sayEach, sortOf, statedHere } from './guest-words.js';
import type { Report } from './rule.js';
import { agreeing, listed, quoted } from './wording.js';

/**
 * Pours, what is offered in their place, and coffee for guests whose diet leaves them out. Allergens are
 * `allergen-reaches-guest`'s matter; that nothing without alcohol is offered is `no-alcohol-free-choice`'s.
 */
export function refusedDrinks(plan: Plan, service: Service): Report[] {
    const pours = service.refusedPours.filter((refused) => isByDiet(refused) && !isToldOtherwise(refused, plan));
    const coffee = service.refusedCoffee.filter(({ conflicts }) => !conflicts.some(({ allergen }) => allergen));
    return [
        ...alike(pours, ({ facts }) => facts.pour).map(reportPour),
        ...alike(coffee, (refused) => refused.coffee).map(reportCoffee),
    ];
}

function isByDiet({ offered }: RefusedPour): boolean {
    return !offered.some(({ conflicts }) => conflicts.some(({ allergen }) => allergen));
}

/** A drink for so many that nothing stands in for goes to those who ask for it. */
function isToldOtherwise({ facts, offered }: RefusedPour, { cupboard }: Plan): boolean {
    const { who } = facts.pour;
    const isAskedFor =
        who?.sort === 'some' && (who.count ?? who.share) !== undefined && facts.pour.instead.length === 0;
    const isForAlcohol = offered.every(({ conflicts }) =>
        conflicts.every(({ substance }) => isAlcohol(substance, cupboard)),
    );
    return isAskedFor || (isForAlcohol && lacksAlcoholFreeChoice(facts, cupboard));
}

/** Guests of the same needs who are refused the same: what one of them is refused, and where all of them are stated. */
type Alike<Refused> = Refused & { readonly groups: readonly GuestGroup[] };

function alike<Refused extends { readonly group: GuestGroup; readonly count: number }>(
    all: readonly Refused[],
    of: (refused: Refused) => object,
): Alike<Refused>[] {
    const found: Alike<Refused>[] = [];
    for (const refused of all) {
        const at = found.findIndex((each) => of(each) === of(refused) && sortOf(each.group) === sortOf(refused.group));
        const same = found[at];
        if (same) {
            found[at] = { ...same, count: same.count + refused.count, groups: [...same.groups, refused.group] };
        } else {
            found.push({ ...refused, groups: [refused.group] });
        }
    }
    return found;
}

/** `1 vegan guest at T3 seat 5`, `6 vegan guests`. */
function sayGuests({ groups, group, count }: Alike<{ readonly group: GuestGroup; readonly count: number }>): string {
    return guestsOf({ ...group, count, seat: groups.length === 1 ? group.seat : undefined });
}

const whereStated = (groups: readonly GuestGroup[]) =>
    groups.slice(0, MOST_RELATED).map((group) => ({ at: group.origin, message: statedHere(group) }));

const MOST_RELATED = 6;

function reportPour(refused: Alike<RefusedPour>): Report {
    const { facts, group, count, offered, groups } = refused;
    const sort = sortOf(group);
    const titles = listed(offered.map(({ drink }) => quoted(drink.pour.title)));
    return {
        at: offered[0]!.drink.pour.titleOrigin,
        severity: 'warning',
        message: `${sayGuests(refused)} ${agreeing(count, 'has', 'have')} nothing to drink in place of ${quoted(facts.pour.title)}: ${sayEach(offered.map(({ drink, conflicts }) => sayConflicts(drink.pour.title, conflicts)))}.`,
        hint: `Offer one that ${sort} may have with \`instead "…"\`, or leave ${titles} off for them.`,
        related: whereStated(groups),
        fixes: [
            {
                title: `Leave ${titles} off for ${sort}`,
                safety: 'unsafe',
                preferred: true,
                changes: offered.map(({ drink, conflicts }) => ({
                    do: 'append',
                    at: lastPhrase(drink.pour),
                    words: leftOffFor(conflicts),
                })),
            },
        ],
    };
}

function reportCoffee(refused: Alike<Service['refusedCoffee'][number]>): Report {
    const { coffee, group, count, conflicts, groups } = refused;
    const fixes = leaveBesidesOff(coffee.accompaniments, conflicts, group);
    const own = conflicts.find(({ origin }) => coffee.contains?.what.some((what) => what.origin === origin));
    return {
        at: own?.origin ?? conflicts[0]!.origin,
        severity: 'warning',
        message: `${sayGuests(refused)} ${own ? `${agreeing(count, 'has', 'have')} no coffee` : 'may not have what comes with the coffee'}: ${sayConflicts('coffee', conflicts)}.`,
        hint: fixes[0]
            ? `${fixes[0].title}.`
            : `Bring it beside the cup, as in \`garnish "…" ${leftOffFor(conflicts)} { contains … }\`, or make theirs without.`,
        related: whereStated(groups),
        fixes,
    };
}

function leftOffFor([conflict]: readonly Conflict[]): string {
    return `left off for ${needAsWritten(conflict!.need)}`;
}

/** Where only what comes beside a dish or coffee keeps it from them. */
export function leaveBesidesOff(
    besides: readonly Accompaniment[],
    conflicts: readonly Conflict[],
    group: GuestGroup,
): Fix[] {
    const isIn = ({ contains }: Accompaniment, { origin }: Conflict): boolean =>
        contains?.what.some((what) => what.origin === origin) === true;
    const carriers = besides.filter((each) => conflicts.some((conflict) => isIn(each, conflict)));
    const isAll = conflicts.length > 0 && conflicts.every((conflict) => carriers.some((each) => isIn(each, conflict)));
    const needs = [...new Set(conflicts.map(({ need }) => need))];
    if (!isAll || needs.length !== 1) {
        return [];
    }
    const names = listed(carriers.map((each) => (each.title ? quoted(each.title) : `the ${each.sort}`)));
    return [
        {
            title: `Leave ${names} off for ${sortOf(group)}`,
            safety: 'unsafe',
            preferred: true,
            changes: carriers.map((each) => ({ do: 'append', at: each.head, words: leftOffFor(conflicts) })),
        },
    ];
}
