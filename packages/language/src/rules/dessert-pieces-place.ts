import type { Customs, Plan } from '../plan/types.js';
import { isDessert } from '../service/facts.js';
import { writeUse } from './eaten-with.js';
import { firstSight } from './first-sight.js';
import { withoutNames, type LaySide } from './lay-clauses.js';
import { judgeLayClauses, type Match } from './lay-judgement.js';
import { movePieces } from './mend-lay.js';
import { defineRule } from './rule.js';
import { agreeing, listed, quoted } from './wording.js';

const EVENT = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }`;
const COURSES = `    course main "Roast duck" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
    }`;

export default defineRule({
    id: 'dessert-pieces-place',
    group: 'cover',
    since: '0.1.0',
    title: 'Dessert pieces where the house does not lay them',
    why: 'Houses lay them above the plate, beside it or not at all, and the table is cleared for dessert by that habit. Laid another way they leave with the main course.',
    source: [
        'table-service 1.18',
        'table-service 1.20',
        'table-service 1.21',
        'table-service 1.22',
        'table-service 5.25',
    ],
    fix: 'always',
    customs: ['dessert'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Beside the plate, in a house that lays them above',
                text: `${EVENT}
menu {
${COURSES}
    course dessert "Burnt honey custard" {
        served on dessert-plate at 6 °C
        eaten with dessert-spoon
        lasts 20 min
        contains egg, milk
    }
    lay left dinner-fork   right <|dessert-spoon|>, dinner-knife
}`,
            },
            {
                title: 'Laid, in a house that brings them',
                text: `${EVENT}
house "Saltmarsh Hall" { laying { dessert: brought } }
menu {
${COURSES}
    course dessert "Burnt honey custard" {
        served on dessert-plate at 6 °C
        eaten with <|dessert-spoon laid|>
        lasts 20 min
        contains egg, milk
    }
}`,
            },
        ],
        right: [
            {
                text: `${EVENT}
menu {
${COURSES}
    course dessert "Burnt honey custard" {
        served on dessert-plate at 6 °C
        eaten with dessert-spoon
        lasts 20 min
        contains egg, milk
    }
    lay left dinner-fork   right dinner-knife   above dessert-spoon
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const { customs } = plan;
        const isNew = firstSight();
        const related = customs.dessert.origin
            ? [{ at: customs.dessert.origin, message: 'The house says here where dessert pieces lie.' }]
            : [];
        for (const judged of judgeLayClauses(plan, service)) {
            const wrong = judged.matches
                .flat()
                .filter(
                    (match) => isForDessert(plan, match) && !isAtHome(customs, match.side) && isNew(match.named.origin),
                );
            const [first] = wrong;
            if (!first) {
                continue;
            }
            const out = wrong.map(({ named }) => named);
            const names = listed(out.map(({ name }) => quoted(name)));
            const fix =
                customs.dessert.value === 'brought'
                    ? {
                          title: `Leave ${names} to come with the dessert`,
                          safety: 'unsafe' as const,
                          preferred: true,
                          changes: [withoutNames(judged.clause.lay, out)],
                      }
                    : movePieces(
                          plan,
                          service,
                          judged,
                          out,
                          wrong.map(({ need }) => need),
                      );
            report({
                at: first.named.origin,
                message: `${names} ${agreeing(out.length, 'is', 'are')} for ${quoted(first.need.dish.title)}; this house ${HABIT[customs.dessert.value]} (custom \`dessert: ${customs.dessert.value}\`).`,
                hint: `${fix.title}.`,
                related,
                fixes: [fix],
            });
        }
        if (customs.dessert.value !== 'brought') {
            return;
        }
        for (const { dish } of service.facts.filter(({ kind }) => isDessert(kind))) {
            for (const use of (dish.eaten ?? []).flat().filter(({ laid, origin }) => laid && isNew(origin))) {
                const title = `Leave ${quoted(use.piece.name)} to come with the dessert`;
                report({
                    at: use.origin,
                    message: `${quoted(use.piece.name)} is laid for ${quoted(dish.title)}; this house ${HABIT.brought} (custom \`dessert: brought\`).`,
                    hint: `${title}.`,
                    related,
                    fixes: [
                        {
                            title,
                            safety: 'unsafe',
                            preferred: true,
                            changes: [
                                {
                                    do: 'replace',
                                    at: use.origin,
                                    words: writeUse({ ...use, name: use.piece.name, laid: false }),
                                },
                            ],
                        },
                    ],
                });
            }
        }
    },
});

const HABIT = {
    above: 'lays dessert pieces above the plate',
    laid: 'lays dessert pieces left and right of the plate',
    brought: 'brings dessert pieces with the dessert',
} as const;

function isForDessert(plan: Plan, { need }: Match): boolean {
    return isDessert(plan.cupboard.kinds.get(need.dish.kind.name));
}

function isAtHome(customs: Customs, side: LaySide): boolean {
    // On the dessert's own plate or saucer they come with it, whatever the custom.
    if (side === 'saucer') {
        return true;
    }
    switch (customs.dessert.value) {
        case 'above':
            return side === 'above';
        case 'laid':
            return side === 'left' || side === 'right';
        case 'brought':
            return false;
    }
}
