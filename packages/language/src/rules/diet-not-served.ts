import type { Need } from '../plan/types.js';
import type { Conflict, Unserved } from '../service/types.js';
import type { Fix } from './fixes.js';
import { guestsOf, isUnsaid, sayConflicts, sortOf, statedHere } from './guest-words.js';
import { defineRule } from './rule.js';
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
    title: 'A guest with a diet has no dish in a course',
    why: 'The guest sits before an empty place while the table eats, and the kitchen starts a plate it has not prepared.',
    source: ['quantities 11', 'common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [{ title: 'One portion short', text: EVENT + menu('for <|6 vegetarian|>') }],
        right: [{ text: EVENT + menu('for 7 vegetarian') }],
    },
    check({ service, report }) {
        const bread = service.bread ? [service.bread.serving] : [];
        for (const { course, unserved: left } of [...service.servings, ...bread]) {
            for (const unserved of left) {
                const { group, refused } = unserved;
                // Plain guests without a dish are `portions-do-not-add-up`; an allergen is `allergen-reaches-guest`.
                const isAllergen = service.reaches.some(
                    (each) => each.group === group && each.course === course.index && each.conflict.allergen,
                );
                if (group.needs.length === 0 || isAllergen) {
                    continue;
                }
                const short = runOut(unserved);
                const fixes = short ? [short.fix] : [...leaveOff(unserved), ...sayThatItSuits(unserved)];
                report({
                    at: short?.dish.who?.origin ?? course.head,
                    severity: course.index < 0 ? 'warning' : undefined,
                    message: `${guestsOf({ ...group, count: unserved.count })} ${agreeing(unserved.count, 'has', 'have')} ${course.index < 0 ? 'no bread' : `no dish in \`${course.title}\``}: ${listed(refused.map(({ dish, conflicts }) => why(dish.title, conflicts)))}.`,
                    hint: fixes[0]?.preferred
                        ? `${fixes[0].title}.`
                        : course.index < 0
                          ? `Give ${sortOf(group)} a bread of their own.`
                          : `Add a dish for ${sortOf(group)}, or change one so that they may have it.`,
                    related: [{ at: group.origin, message: statedHere(group) }],
                    fixes,
                });
            }
        }
    },
});

function why(title: string, conflicts: readonly Conflict[]): string {
    return conflicts.length === 0 ? `${quoted(title)} is all given out` : sayConflicts(title, conflicts);
}

function sayWho(need: Need): string {
    switch (need.sort) {
        case 'children':
            return 'children';
        case 'diet':
            return asName(need.diet.name);
        case 'without':
            return `without ${need.what.map((what) => asName(what.name)).join(' and ')}`;
    }
}

/** A dish they may have, of which too few are cooked. */
function runOut({
    count,
    refused,
}: Unserved): { readonly dish: Unserved['refused'][number]['dish']; readonly fix: Fix } | undefined {
    for (const { dish, conflicts } of refused) {
        const stated = dish.who?.sort === 'some' ? dish.who.count : undefined;
        if (conflicts.length === 0 && stated) {
            const wanted = stated.count + count;
            return {
                dish,
                fix: {
                    title: `Cook ${quoted(dish.title)} for ${wanted} instead of ${stated.count}`,
                    safety: 'unsafe',
                    preferred: true,
                    changes: [{ do: 'replace', at: stated.origin, words: String(wanted) }],
                },
            };
        }
    }
    return undefined;
}

/** A dish that only its sauce or garnish keeps from them. */
function leaveOff({ group, refused }: Unserved): Fix[] {
    return refused.flatMap(({ dish, conflicts }) => {
        const beside = dish.accompaniments.filter((each) =>
            conflicts.some(({ origin }) => each.contains?.what.some((what) => what.origin === origin)),
        );
        const isAll =
            conflicts.length > 0 &&
            conflicts.every(({ origin }) =>
                beside.some((each) => each.contains?.what.some((what) => what.origin === origin)),
            );
        const needs = [...new Set(conflicts.map(({ need }) => need))];
        if (!isAll || needs.length !== 1) {
            return [];
        }
        const names = listed(beside.map((each) => (each.title ? quoted(each.title) : `the ${each.sort}`)));
        return [
            {
                title: `Leave ${names} off for ${sortOf(group)}`,
                safety: 'unsafe' as const,
                preferred: true,
                changes: beside.map((each) => ({
                    do: 'append' as const,
                    at: each.head,
                    words: `left off for ${sayWho(needs[0]!)}`,
                })),
            },
        ];
    });
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
