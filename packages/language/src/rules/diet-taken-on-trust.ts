import type { Cupboard, Diet, Kind } from '../plan/cupboard.js';
import type { Dish } from '../plan/types.js';
import type { GuestGroup } from '../service/types.js';
import { guestsOf, statedHere } from './guest-words.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const PLAN = (dish: string): string => `event "Harvest home" {
    date 2026-09-26
    zone America/Halifax
    seated 18:00
    guests 40 { 5 vegetarian }
}

menu {
    course soup "Pumpkin soup" {
        served in soup-bowl warmed to 60 °C at 66 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
${dish}    }
}
`;

export default defineRule({
    id: 'diet-taken-on-trust',
    group: 'guests',
    severity: 'info',
    since: '0.1.0',
    title: 'Nothing says that a dish suits the diet of those who get it',
    why: 'A list of allergens shows no meat, and a soup may stand on a meat stock. Guests who keep a diet are fed by what the kitchen says, not by what it leaves out.',
    source: ['quantities 11', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A soup whose stock nobody names',
                text: PLAN('').replace('course soup "Pumpkin soup"', '<|course soup "Pumpkin soup"|>'),
            },
        ],
        right: [{ text: PLAN('        suits vegetarian\n') }],
    },
    check({ plan, service, report }) {
        for (const { portions } of service.servings) {
            for (const { dish, groups } of portions) {
                const kind = plan.cupboard.kinds.get(dish.kind.name);
                if (!kind || !mayHoldAnything(kind) || !dish.contains) {
                    continue;
                }
                for (const { group } of groups) {
                    const diet = dietsOf(group, plan.cupboard).find(
                        (each) => leavesOutIngredients(each, plan.cupboard) && !isSaidToSuit(dish, each),
                    );
                    if (diet) {
                        const title = `Say that ${quoted(dish.title)} suits ${quoted(diet.name)}`;
                        report({
                            at: dish.head,
                            message: `${guestsOf(group)} would get ${quoted(dish.title)}, and nothing says that it suits them.`,
                            hint: `Ask the kitchen, stock and fat included; then write \`suits ${diet.name}\`, or what it contains.`,
                            related: [{ at: group.origin, message: statedHere(group) }],
                            fixes: [
                                {
                                    title,
                                    safety: 'show',
                                    changes: [{ do: 'add-clause', to: dish.origin, clause: `suits ${diet.name}` }],
                                },
                            ],
                        });
                        // One question a dish is enough: the answer tells of the other diets as well.
                        break;
                    }
                }
            }
        }
    },
});

/** Courses that may stand on meat or fish without a word of it: their kind does not say what it is made of. */
function mayHoldAnything(kind: Kind): boolean {
    return kind.of.length === 0 && ['soup', 'main', 'entree'].some((name) => kind.lineage.includes(name));
}

function dietsOf(group: GuestGroup, cupboard: Cupboard): Diet[] {
    return group.needs.flatMap((need) => (need.sort === 'diet' ? (cupboard.diets.get(need.diet.name) ?? []) : []));
}

/** Diets that only a list of allergens would not show: `stated only` ones are `diet-not-served`'s matter. */
function leavesOutIngredients(diet: Diet, cupboard: Cupboard): boolean {
    return (
        !diet.statedOnly &&
        diet.excludes.some(
            (what) => cupboard.substances.get(what.name)?.sort === 'ingredient' && what.name !== 'alcohol',
        )
    );
}

function isSaidToSuit(dish: Dish, diet: Diet): boolean {
    const isFor =
        dish.who?.sort === 'some' &&
        dish.who.needs.some((need) => need.sort === 'diet' && need.diet.name === diet.name);
    return isFor || dish.suits.some((named) => named.name === diet.name);
}
