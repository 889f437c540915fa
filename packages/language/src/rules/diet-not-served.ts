import type { CourseServing, Service, TooFew, Unserved } from '../service/types.js';
import type { Fix } from './fixes.js';
import { isUnsaid, sayConflicts, sayEach, sortOf } from './guest-words.js';
import { leaveBesidesOff, refusedDrinks } from './refused-drinks.js';
import { defineRule, type Report } from './rule.js';
import { cookInstead, sayMend, sayTakers, sayTooFew, sayWithout, whereStated } from './serving-conflicts.js';
import { agreeing, asName, listed, quoted } from './wording.js';

const EVENT = `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24 {
        7 vegetarian
    }
}
`;

const menu = (vegetarian: string): string => `
menu {
    course main {
        lasts 35 min
        dish "Grilled sirloin" is steak for the rest {
            served on dinner-plate warmed at 54 °C
            contains milk
        }
        dish "Barley-stuffed squash" ${vegetarian} {
            served on dinner-plate warmed at 63 °C
            contains gluten
        }
    }
}
`;

export default defineRule({
    id: 'diet-not-served',
    group: 'guests',
    since: '0.1.0',
    title: 'A guest with a diet has no dish in a course, or is offered no drink that they may have',
    why: 'The guest sits before an empty place while the table eats, and the kitchen starts a plate it has not prepared. A drink can be declined, so it is a warning: what is unsafe is to pour it without a word.',
    source: ['quantities 11', 'common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [{ title: 'One portion short', text: EVENT + menu('for <|6 vegetarian|>') }],
        right: [{ text: EVENT + menu('for 7 vegetarian') }],
    },
    check({ plan, service, report }) {
        const bread = service.bread ? [service.bread.serving] : [];
        for (const serving of [...service.servings, ...bread]) {
            for (const conflict of serving.tooFew.filter(hasNeeds)) {
                if (conflict.portions.length === 0) {
                    nothingForThem(service, serving, conflict, report);
                } else {
                    tooFewForThem(serving, conflict, report);
                }
            }
        }
        refusedDrinks(plan, service).forEach(report);
    },
});

/** Guests without needs are `portions-do-not-add-up`. */
function hasNeeds({ guests }: TooFew): boolean {
    return guests.some(({ groups }) => groups.some((group) => group.needs.length > 0));
}

const place = ({ course }: CourseServing): string =>
    course.index < 0 ? 'no bread' : `no dish in ${quoted(course.title)}`;

/** What they lack is not a number of portions: every dish is one they may not have. */
function nothingForThem(
    service: Service,
    serving: CourseServing,
    { guests }: TooFew,
    report: (report: Report) => void,
): void {
    const { course } = serving;
    const [takers] = guests;
    const unserved = serving.unserved.find(({ group }) => takers?.groups.includes(group));
    // An allergen is `allergen-reaches-guest`.
    const isAllergen = service.reaches.some(({ conflict }) =>
        unserved?.refused.some(({ conflicts }) => conflicts.includes(conflict)),
    );
    if (!takers || !unserved || isAllergen) {
        return;
    }
    const fixes = [...leaveOff(unserved), ...sayThatItSuits(unserved)];
    const sort = sortOf(unserved.group);
    report({
        at: course.head,
        severity: course.index < 0 ? 'warning' : undefined,
        message: `${sayTakers(takers)} ${agreeing(takers.count, 'has', 'have')} ${place(serving)}: ${sayEach(unserved.refused.map(({ dish, conflicts }) => sayConflicts(dish.title, conflicts)))}.`,
        hint: fixes[0]?.preferred
            ? `${fixes[0].title}.`
            : course.index < 0
              ? `Give ${sort} a bread of their own.`
              : `Add a dish for ${sort}, or change one so that they may have it.`,
        related: whereStated(guests),
        fixes,
    });
}

function tooFewForThem(serving: CourseServing, conflict: TooFew, report: (report: Report) => void): void {
    const { course, unserved } = serving;
    const { guests, portions, mends, short, others } = conflict;
    const [mend] = mends;
    const isChosen = guests.some(({ chose }) => chose.length > 0);
    const refusals =
        guests.length === 1 ? (unserved.find(({ group }) => guests[0]!.groups.includes(group))?.refused ?? []) : [];
    const refused = refusals.flatMap(({ dish, conflicts }) =>
        conflicts.length > 0 ? [sayConflicts(dish.title, conflicts)] : [],
    );
    const fixes = cookInstead(mends, 'instead');
    const { dish } = mend?.[0] ?? portions[0]!;
    report({
        at: dish.who?.origin ?? course.head,
        severity: course.index < 0 ? 'warning' : undefined,
        message: isChosen
            ? `In ${quoted(course.title)} ${sayTooFew(conflict, serving)}: ${short} too few.`
            : `${sayWithout(conflict)} ${agreeing(short, 'has', 'have')} ${place(serving)}: ${sayEach([sayTooFew(conflict, serving), ...refused])}.`,
        hint: mend
            ? `${sayMend(mend)}${others.length > 0 ? `: ${listed(others.map(sayTakers))} may have nothing else either` : ''}.`
            : 'Cook more of what they may have, or add a dish for some of them.',
        related: whereStated([...guests, ...others]),
        fixes,
    });
}

/** A dish that only its sauce or garnish keeps from them. */
function leaveOff({ group, refused }: Unserved): Fix[] {
    const fixes = refused.flatMap(({ dish, conflicts }) => leaveBesidesOff(dish.accompaniments, conflicts, group));
    // What comes on several dishes is left off once.
    return [...new Map(fixes.map((fix) => [fix.title, fix])).values()].map((fix, place) => ({
        ...fix,
        preferred: place === 0,
    }));
}

/** A dish that may suit the diet and does not say so: an idea for the chef, who alone knows. */
function sayThatItSuits({ refused }: Unserved): Fix[] {
    return refused.flatMap(({ dish, conflicts }) => {
        const diets = [...new Set(conflicts.map(({ excluded }) => excluded))];
        return conflicts.every(isUnsaid)
            ? diets.slice(0, 1).map((diet): Fix => {
                  const clause = `suits ${asName(diet)}`;
                  return {
                      title: `Say that ${quoted(dish.title)} suits ${quoted(diet)}, if it is prepared so`,
                      safety: 'show',
                      changes: [{ do: 'add-clause', to: dish.origin, clause }],
                  };
              })
            : [];
    });
}
