import type { Cupboard, Kind } from '../plan/cupboard.js';
import type { Dish, Need } from '../plan/types.js';
import { madeOfAgainst } from '../service/diets.js';
import { isCookingTold } from '../service/cooked-through.js';
import { kindsOfTitle } from '../service/kinds-of-title.js';
import { defineRule } from './rule.js';
import { saysItsKind, stateKind } from './state-kind.js';
import { asName, listed, quoted } from './wording.js';

const PLAN = (dish: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
}

menu {
    course main "Main" {
        served on dinner-plate warmed to 60 °C at 62 °C
        lasts 30 min
        contains fish, celery
        ${dish}
    }
}
`;

export default defineRule({
    id: 'kind-not-stated',
    group: 'cover',
    severity: 'info',
    since: '0.2.0',
    title: 'A title tells of a kind of dish that the plan does not state',
    why: 'The kind says what a dish is eaten with and how hot its middle gets. A halibut that is just a main is laid for like a roast.',
    source: ['table-service §7b', 'temperature S11', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            { text: PLAN('<|dish "Baked halibut" for everyone|> {}') },
            {
                title: 'Cooked to a figure that the kind would judge',
                text: PLAN('<|dish "Chicken breast" for everyone|> { contains celery  cook to 74 °C }'),
            },
        ],
        right: [
            { text: PLAN('dish "Baked halibut" is fish for everyone {}') },
            { title: 'Said to be just a main', text: PLAN('dish "Fish pie" is main for everyone {}') },
        ],
    },
    check({ plan, service, report }) {
        for (const { dish, kind, course } of service.facts) {
            if (!kind || saysItsKind(dish, course) || dish.title === kind.name) {
                continue;
            }
            const told = kindsOfTitle(dish.title, kind, plan.cupboard).filter(
                (each) => !isAgainst(each, dish, plan.cupboard),
            );
            // An almond tart with ice cream is fine as it is where the tart is.
            if (told.length > 0 && told.every((each) => matters(each, kind, dish, plan.cupboard))) {
                const kinds = listed(
                    told.map(({ name }) => quoted(name)),
                    'or',
                );
                report({
                    at: dish.head,
                    message: `The title ${quoted(dish.title)} tells of ${kinds}, and nothing says what kind of dish it is.`,
                    hint: `Write ${quoted(`is ${asName(told[0]!.name)}`)} behind its title, or ${quoted(`is ${asName(kind.name)}`)} where the title misleads.`,
                    fixes: () => told.flatMap((each) => stateKind(dish, each.name, plan)),
                });
            }
        }
    },
});

/** Whether the plan would be another: in what it is eaten with, or in how its cooking is judged. */
function matters(told: Kind, kind: Kind, dish: Dish, cupboard: Cupboard): boolean {
    const isEatenOtherwise = !dish.eaten && lacksAPiece(told, kind);
    const isJudged = dish.cookTo !== undefined && told.cookTo !== undefined && !isCookingTold(dish, kind, cupboard);
    return isEatenOtherwise || isJudged;
}

/** Whether something is missing where the cover is laid by the wider kind: a steak knife; a spoon will do for any soup. */
function lacksAPiece(told: Kind, kind: Kind): boolean {
    const laid = (kind.eaten ?? []).flatMap((group) => group.slice(0, 1)).map(({ piece }) => piece.name);
    return (told.eaten ?? []).some((group) => group.every(({ piece }) => !laid.includes(piece.name)));
}

/** Whether it is said to suit, or is for, guests who must not have what the kind is made of: a steak of celeriac. */
function isAgainst(told: Kind, { suits, who }: Dish, cupboard: Cupboard): boolean {
    const needs: readonly Need[] = [
        ...suits.map((diet) => ({ sort: 'diet' as const, diet, origin: diet.origin })),
        ...(who?.sort === 'some' ? who.needs : []),
    ];
    return needs.some((need) => madeOfAgainst(told, need, cupboard).length > 0);
}
