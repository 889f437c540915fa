import type { Contains } from '../plan/cupboard.js';
import type { Named, Origin, Text } from '../plan/origin.js';
import type { Accompaniment, Plan, Pour, Severity } from '../plan/types.js';
import { titledFoods, unstatedInTitle } from '../service/allergens/titles.js';
import { unstatedOf } from '../service/allergens/unstated.js';
import { recipeOf } from '../service/recipes/batches.js';
import { contentsOf } from '../service/recipes/contents.js';
import { contentsListed } from '../service/recipes/listed-contents.js';
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
    /** What its recipe says it contains, and what else the ingredients tell that it lists. */
    readonly byRecipe?: { readonly stated?: readonly string[]; readonly listed: readonly string[] };
    /** What its title names. */
    readonly byTitle?: readonly string[];
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
        const inTitles = new Map(
            titledFoods(plan, service)
                .filter(({ contains }) => contains === undefined)
                .map((food) => [food.block, unstatedInTitle(food, { plan, groups: service.groups })]),
        );
        for (const eaten of everythingServed(plan, service)) {
            if (eaten.contains === undefined && isNew(eaten.at)) {
                report(finding({ ...eaten, byTitle: inTitles.get(eaten.block) }));
            }
        }
    },
});

function finding({ said, at, block, usually, byRecipe, byTitle = [], severity }: Eaten): Report {
    const { stated, listed: inList } = byRecipe ?? { listed: [] };
    const isByRecipe = stated !== undefined || inList.length > 0;
    const usual = isByRecipe ? undefined : usually?.what.map(({ name }) => name);
    const inTitle = byTitle.filter((name) => ![...(stated ?? []), ...inList, ...(usual ?? [])].includes(name));
    const told = (words: readonly string[]): string => (words.length > 0 ? listed(words.map(quoted)) : 'none');
    const tellers = [
        ...(stated ? [`its recipe states ${told(stated)}`] : []),
        ...(inList.length > 0
            ? [`the ingredients that ${stated ? 'it' : 'its recipe'} lists tell of ${told(inList)}`]
            : []),
        ...(usual ? [`its kind usually contains ${told(usual)}`] : []),
        ...(inTitle.length > 0 ? [`its title tells of ${told(inTitle)}`] : []),
    ];
    if (tellers.length === 0) {
        return {
            at,
            severity,
            message: `${said} does not say what allergens it contains.`,
            hint: 'Check the recipe and every label, then write `contains …`, or `contains nothing` where there are none.',
            fixes: [],
        };
    }
    const names = [...(stated ?? []), ...inList, ...(usual ?? []), ...inTitle];
    const clause = `contains ${names.length > 0 ? names.map(asName).join(', ') : 'nothing'}`;
    const isStatedAlone = stated !== undefined && tellers.length === 1;
    const title = isStatedAlone
        ? 'State what the recipe states'
        : isByRecipe
          ? 'State what the recipe tells and check every label'
          : usual
            ? 'State the usual and check the recipe'
            : 'State what the title tells and check the recipe';
    const hint = [tellers.slice(0, -1).join(', '), tellers.at(-1)!].filter((part) => part !== '').join(', and ');
    return {
        at,
        severity,
        message: `${said} does not say what allergens it contains.`,
        hint: `${hint[0]!.toUpperCase()}${hint.slice(1)}; check ${isByRecipe ? '' : 'the recipe and '}every label, then state it.`,
        // A list and a title are read word by word: what they call by another name is not in it.
        fixes: [
            {
                title: `${title}: ${quoted(clause)}`,
                safety: isStatedAlone ? 'unsafe' : 'show',
                changes: [{ do: 'add-clause', to: block, clause }],
            },
        ],
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
        return (
            recipe && {
                stated,
                listed: unstatedOf(contentsListed(recipe, cupboard), stated ?? [], {
                    plan,
                    groups: service.groups,
                    suits: suits.map(({ name }) => name),
                    keptBy: [],
                }).contents,
            }
        );
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
