import type { Contains } from '../plan/cupboard.js';
import type { Origin } from '../plan/origin.js';
import type { Accompaniment, Plan, Pour, Severity } from '../plan/types.js';
import { recipeOf } from '../service/recipes/batches.js';
import { contentsOf } from '../service/recipes/contents.js';
import type { Service } from '../service/types.js';
import { firstSight } from './first-sight.js';
import { defineRule, type Report } from './rule.js';
import { asName, listed, quoted } from './wording.js';

/** Something a guest eats or drinks. */
interface Eaten {
    /** `\`Roast squash soup\``, `The sauce \`Cider cream\``. */
    readonly said: string;
    readonly contains?: Contains;
    readonly at: Origin;
    readonly block: Origin;
    /** What such a thing usually contains; only a proposal. */
    readonly usually?: Contains;
    /** What its recipe says it contains. */
    readonly byRecipe?: readonly string[];
    readonly severity: Severity;
}

export default defineRule({
    id: 'allergens-not-stated',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'Something served does not say what allergens it contains',
    why: 'A dish that says nothing is not a dish without allergens: nobody has asked the recipe yet. `contains nothing` is the answer where there are none.',
    source: ['temperature 3.1', 'temperature 3.2', 'common practice, no source'],
    fix: 'sometimes',
    noFix: 'Only the recipe knows. Where the cupboard knows what such a dish usually contains, that is offered to be checked against the recipe.',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
}

menu {
    course dessert {
        lasts 20 min
        <|dish "Burnt honey custard" is custard|> {
            served on dessert-plate at 6 °C
        }
    }
}
`,
            },
        ],
        right: [
            {
                text: `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
}

menu {
    course dessert {
        lasts 20 min
        dish "Burnt honey custard" is custard {
            served on dessert-plate at 6 °C
            contains egg, milk
        }
    }
}
`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const eaten of everythingServed(plan, service)) {
            if (eaten.contains === undefined && isNew(eaten.at)) {
                report(finding(eaten));
            }
        }
    },
});

function finding({ said, at, block, usually, byRecipe, severity }: Eaten): Report {
    const names = byRecipe ?? usually?.what.map((what) => what.name) ?? [];
    const told = names.length > 0 ? listed(names.map(quoted)) : 'none';
    const clause = `contains ${names.length > 0 ? names.map(asName).join(', ') : 'nothing'}`;
    const changes = [{ do: 'add-clause', to: block, clause } as const];
    const message = `${said} does not say what allergens it contains.`;
    if (byRecipe) {
        return {
            at,
            severity,
            message,
            hint: `Its recipe states ${told}; check every label, then state it.`,
            fixes: [{ title: `State what the recipe states: ${quoted(clause)}`, safety: 'unsafe', changes }],
        };
    }
    return {
        at,
        severity,
        message,
        hint: usually
            ? `Its kind usually contains ${told}; check the recipe and every label, then state it.`
            : 'Check the recipe and every label, then write `contains …`, or `contains nothing` where there are none.',
        fixes: usually
            ? [{ title: `State the usual and check the recipe: ${quoted(clause)}`, safety: 'show', changes }]
            : [],
    };
}

function everythingServed(plan: Plan, service: Service): Eaten[] {
    const { menu, cupboard } = plan;
    if (!menu) {
        return [];
    }
    const dish = (each: (typeof menu.courses)[number]['dishes'][number], said: string): Eaten[] => [
        {
            said,
            contains: each.contains,
            at: each.head,
            block: each.origin,
            usually: cupboard.kinds.get(each.kind.name)?.usually,
            byRecipe: contentsOf(recipeOf(plan, each.recipe), cupboard),
            severity: 'error',
        },
        ...each.accompaniments.map((beside) => accompaniment(beside, each.title)),
        ...each.pours.flatMap(drink),
    ];
    const accompaniment = (beside: Accompaniment, of: string): Eaten => ({
        said: `The ${beside.sort} ${beside.title ? quoted(beside.title) : `of ${of}`}`,
        contains: beside.contains,
        at: beside.head,
        block: beside.origin,
        severity: 'error',
    });
    const drink = (pour: Pour): Eaten[] => [
        {
            said: quoted(pour.title),
            contains: pour.contains,
            at: pour.titleOrigin,
            block: pour.origin,
            usually: pour.kind
                ? cupboard.drinks.get(pour.kind.name)?.usually
                : service.pours.find((each) => each.pour === pour)?.kind?.usually,
            severity: 'warning',
        },
        ...pour.instead.flatMap(drink),
    ];
    const { bread, coffee } = menu;
    return [
        ...menu.courses.flatMap((course) => [
            ...course.dishes.flatMap((each) => dish(each, quoted(each.title))),
            ...course.pours.flatMap(drink),
        ]),
        ...(bread
            ? [
                  {
                      said: 'The bread',
                      contains: bread.contains,
                      at: bread.head,
                      block: bread.origin,
                      usually: cupboard.kinds.get('bread')?.usually,
                      byRecipe: contentsOf(recipeOf(plan, bread.recipe), cupboard),
                      severity: 'error' as const,
                  },
                  ...bread.accompaniments.map((beside) => accompaniment(beside, 'the bread')),
                  ...bread.dishes.flatMap((each) => dish(each, `The bread ${quoted(each.title)}`)),
              ]
            : []),
        ...(coffee
            ? [
                  {
                      said: 'The coffee',
                      contains: coffee.contains,
                      at: coffee.head,
                      block: coffee.origin,
                      usually: cupboard.drinks.get('coffee')?.usually,
                      severity: 'warning' as const,
                  },
                  ...coffee.accompaniments.map((beside) => accompaniment(beside, 'the coffee')),
              ]
            : []),
    ];
}
