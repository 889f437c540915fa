import type { Contains } from '../plan/cupboard.js';
import type { Named, Origin, Text } from '../plan/origin.js';
import type { Accompaniment, Plan, Pour, Severity } from '../plan/types.js';
import { recipeOf } from '../service/recipes/batches.js';
import { contentsOf } from '../service/recipes/contents.js';
import { unstatedOf } from '../service/recipes/listed-contents.js';
import type { Service } from '../service/types.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
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
    /** What its recipe says it contains, and what else the ingredients tell that it lists. */
    readonly byRecipe?: { readonly stated?: readonly string[]; readonly listed: readonly string[] };
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
    const { stated, listed: inList } = byRecipe ?? { listed: [] };
    const isByRecipe = stated !== undefined || inList.length > 0;
    const names = isByRecipe ? [...(stated ?? []), ...inList] : (usually?.what.map(({ name }) => name) ?? []);
    const clause = `contains ${names.length > 0 ? names.map(asName).join(', ') : 'nothing'}`;
    const state = (what: string, safety: Fix['safety']): Fix[] => [
        { title: `${what}: ${quoted(clause)}`, safety, changes: [{ do: 'add-clause', to: block, clause }] },
    ];
    const told = (words: readonly string[]): string => (words.length > 0 ? listed(words.map(quoted)) : 'none');
    const message = `${said} does not say what allergens it contains.`;
    if (stated && inList.length === 0) {
        return {
            at,
            severity,
            message,
            hint: `Its recipe states ${told(stated)}; check every label, then state it.`,
            fixes: state('State what the recipe states', 'unsafe'),
        };
    }
    if (isByRecipe) {
        const also = stated ? `Its recipe states ${told(stated)}, and the` : 'The';
        return {
            at,
            severity,
            message,
            hint: `${also} ingredients that ${stated ? 'it' : 'its recipe'} lists tell of ${told(inList)}; check every label, then state it.`,
            // A list is read word by word: what it calls by another name is not in it.
            fixes: state('State what the recipe tells and check every label', 'show'),
        };
    }
    return {
        at,
        severity,
        message,
        hint: usually
            ? `Its kind usually contains ${told(names)}; check the recipe and every label, then state it.`
            : 'Check the recipe and every label, then write `contains …`, or `contains nothing` where there are none.',
        fixes: usually ? state('State the usual and check the recipe', 'show') : [],
    };
}

function everythingServed(plan: Plan, service: Service): Eaten[] {
    const { menu, cupboard } = plan;
    if (!menu) {
        return [];
    }
    const byRecipe = (link: Text | undefined, suits: readonly Named[] = []): Eaten['byRecipe'] => {
        const recipe = recipeOf(plan, link);
        const stated = contentsOf(recipe, cupboard);
        const held = { plan, groups: service.groups, suits: suits.map(({ name }) => name) };
        return recipe && { stated, listed: unstatedOf(recipe, stated ?? [], held).contents };
    };
    const dish = (each: (typeof menu.courses)[number]['dishes'][number], said: string): Eaten[] => [
        {
            said,
            contains: each.contains,
            at: each.head,
            block: each.origin,
            usually: cupboard.kinds.get(each.kind.name)?.usually,
            byRecipe: byRecipe(each.recipe, each.suits),
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
                      byRecipe: byRecipe(bread.recipe),
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
