import type { Dish, Need, Plan } from '../plan/types.js';
import { dishConflicts, sameNeed } from '../service/diets.js';
import type { GuestGroup } from '../service/types.js';
import { guestsOf, sayConflicts, sortOf, statedHere } from './guest-words.js';
import { defineRule, type Report } from './rule.js';
import { listed, quoted } from './wording.js';

const PLAN = (guests: string, contains: string): string => `event "Harvest home" {
    date 2026-09-26
    zone America/Halifax
    seated 18:00
    guests 40${guests}
}

menu {
    course main "Main" {
        served on dinner-plate warmed to 60 °C at 62 °C
        eaten with dinner-fork and dinner-knife
        lasts 25 min
        dish "Roast celeriac" is vegetable-main for the rest { contains nothing  cook to 74 °C }
        <|dish "Cauliflower cheese" is vegetable-main for guests without egg|> { contains ${contains}  cook to 74 °C }
    }
}
`;

export default defineRule({
    id: 'dish-for-nobody',
    group: 'guests',
    severity: 'info',
    since: '0.1.0',
    title: 'A dish that nobody gets',
    why: 'A dish on the menu that no plate is counted for is neither ordered nor cooked. Where it was meant for guests who come and holds what they may not have, they quietly get another.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Whether guests, the dish or the menu is meant to change only the chef knows.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'Meant for a guest who may not have it', text: PLAN(' { 1 without egg }', 'milk, egg') },
            { title: 'Meant for guests who do not come', text: PLAN('', 'milk') },
        ],
        right: [
            { text: PLAN(' { 1 without egg }', 'milk') },
            { title: 'Some in reserve', text: PLAN('', 'milk  cook 2 extra') },
        ],
    },
    check({ plan, service, report }) {
        const { groups, guestCount, servings } = service;
        const named = groups.reduce((sum, { count }) => sum + count, 0);
        // No guests yet, more in the rows than come, a need that nobody knows: findings of their own, or none.
        if (guestCount === 0 || named > guestCount || groups.some(({ needs }) => !areKnown(needs, plan))) {
            return;
        }
        for (const { portions, unserved } of servings) {
            // Guests who get nothing at all are told of by other rules.
            const isFed = (group: GuestGroup): boolean => unserved.every((each) => each.group !== group);
            const forTheRest = portions.filter(({ dish }) => needsOf(dish).length === 0 && !isCounted(dish));
            for (const { dish, count } of portions) {
                // Portions stated by number that find no guests are `portions-do-not-add-up`; those in reserve are meant so.
                if (count > 0 || dish.extra || isCounted(dish)) {
                    continue;
                }
                const needs = needsOf(dish);
                if (!areKnown(needs, plan)) {
                    continue;
                }
                const why =
                    needs.length > 0
                        ? whyNotMeant(dish, needs, groups.filter(isFed), groups, plan)
                        : // Of several, guests choose, or `two-dishes-for-the-rest` tells it.
                          forTheRest.length === 1 && unserved.length === 0 && nobodyLeft(dish);
                if (why) {
                    report({ at: dish.head, ...why });
                }
            }
        }
    },
});

const needsOf = ({ who }: Dish): readonly Need[] => (who?.sort === 'some' ? who.needs : []);

const isCounted = ({ who }: Dish): boolean => who?.sort === 'some' && (who.count ?? who.share) !== undefined;

function areKnown(needs: readonly Need[], { cupboard }: Plan): boolean {
    return needs.every((need) =>
        need.sort === 'diet'
            ? cupboard.diets.has(need.diet.name)
            : need.sort !== 'without' || need.what.every(({ name }) => cupboard.substances.has(name)),
    );
}

type Why = Omit<Report, 'at'>;

const nobodyLeft = ({ title }: Dish): Why => ({
    message: `Nobody gets ${quoted(title)}: every guest gets another dish of the course.`,
    hint: 'Say how many it is for, or take it off the menu.',
});

/**
 * Why no guest of the needs that a dish is for gets it; nothing where those who come get no dish at all.
 * @param fed guests who get something in the course
 */
function whyNotMeant(
    dish: Dish,
    needs: readonly Need[],
    fed: readonly GuestGroup[],
    groups: readonly GuestGroup[],
    plan: Plan,
): Why | undefined {
    const { cupboard } = plan;
    const title = quoted(dish.title);
    const meant = groups.filter((group) =>
        needs.every((wanted) => group.needs.some((need) => sameNeed(wanted, need, cupboard))),
    );
    if (meant.length === 0) {
        const sort = sortOf({ needs, children: needs.some((need) => need.sort === 'children') });
        return {
            message: `Nobody gets ${title}: no ${sort} come.`,
            hint: 'Add them to the guests, cook some in reserve as in `cook 2 extra`, or take it off the menu.',
        };
    }
    const guests = meant
        .filter((group) => fed.includes(group))
        .map((group) => ({
            group,
            conflicts: dishConflicts(dish, cupboard.kinds.get(dish.kind.name), group, cupboard),
        }));
    const kept = guests.filter(({ conflicts }) => conflicts.length > 0);
    if (guests.length === 0) {
        return undefined;
    }
    if (kept.length < guests.length) {
        return {
            message: `Nobody gets ${title}: the guests it is meant for get another dish of the course.`,
            hint: 'Say whom it is for, or take it off the menu.',
        };
    }
    return {
        severity: 'warning',
        message: `${listed(kept.map(({ group }) => guestsOf(group)))} may not have ${title}, which is meant for them: ${sayConflicts(
            dish.title,
            kept.flatMap(({ conflicts }) => conflicts),
        )}.`,
        hint: 'They get another dish, and nobody gets this one. Make it without, or say whom it is for.',
        related: kept.map(({ group }) => ({ at: group.origin, message: statedHere(group) })),
    };
}
