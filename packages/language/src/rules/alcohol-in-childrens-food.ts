import type { Plan } from '../plan/types.js';
import { alcoholInFood, type AlcoholInFood } from '../service/alcohol-in-food.js';
import type { GuestGroup, Service } from '../service/types.js';
import type { Fix } from './fixes.js';
import { statedHere } from './guest-words.js';
import { defineRule } from './rule.js';
import { counted, quoted } from './wording.js';

const PLAN = (sauce: string): string => `event "Lantern supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40 { 4 children }
}
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        ${sauce}
    }
}
`;

export default defineRule({
    id: 'alcohol-in-childrens-food',
    group: 'guests',
    severity: 'warning',
    since: '0.2.0',
    title: 'A dish, sauce or garnish with alcohol for children',
    why: 'Cooking need not take all of it out, and few parents think to ask of a sauce. Whether children may have such a dish, the local code, licensed staff and their parents decide.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [{ text: PLAN('sauce "Port sauce" { contains <|alcohol|> }') }],
        right: [{ text: PLAN('sauce "Port sauce" left off for children { contains alcohol }') }],
    },
    check({ plan, service, report }) {
        for (const { title, carried, groups, count } of servedToChildren(plan, service)) {
            const { substance, at, beside } = carried;
            const carrier = beside && `${beside.sort}${beside.title ? ` ${quoted(beside.title)}` : ''}`;
            const fixes = beside ? [leaveOff(beside)] : [];
            report({
                at,
                message: `${carrier ? `The ${carrier} in ${quoted(title)}` : quoted(title)} contains ${quoted(substance)}, and ${counted(count, 'child', 'children')} would get it.`,
                hint: `${fixes[0] ? fixes[0].title : 'Cook theirs without it, or give them another dish'}; the local code and licensed staff decide.`,
                related: groups.map((group) => ({ at: group.origin, message: statedHere(group) })),
                fixes,
            });
        }
    },
});

interface Served {
    /** The dish, `bread` or `coffee`. */
    readonly title: string;
    readonly carried: AlcoholInFood;
    readonly groups: readonly GuestGroup[];
    readonly count: number;
}

/** Each carrier once, with the children of every group that would get it. The drink coffee is `alcohol-reaches-children`. */
function servedToChildren({ cupboard, menu }: Plan, service: Service): Served[] {
    const found = new Map<AlcoholInFood['at'], Served>();
    const note = (title: string, carried: readonly AlcoholInFood[], group: GuestGroup, count: number): void => {
        for (const each of carried) {
            const before = found.get(each.at);
            found.set(each.at, {
                title,
                carried: each,
                groups: [...(before?.groups ?? []), group],
                count: (before?.count ?? 0) + count,
            });
        }
    };
    const servings = [...service.servings, ...(service.bread ? [service.bread.serving] : [])];
    for (const { dish, groups } of servings.flatMap(({ portions }) => portions)) {
        for (const { group, count } of groups.filter((each) => each.group.children)) {
            note(dish.title, alcoholInFood(dish, cupboard.kinds.get(dish.kind.name), group, cupboard), group, count);
        }
    }
    const accompaniments = menu?.coffee?.accompaniments ?? [];
    for (const group of service.groups.filter(({ children, count }) => children && count > 0)) {
        note('coffee', alcoholInFood({ accompaniments }, undefined, group, cupboard), group, group.count);
    }
    return [...found.values()];
}

function leaveOff({ sort, title, head }: NonNullable<AlcoholInFood['beside']>): Fix {
    return {
        title: `Leave ${title ? quoted(title) : `the ${sort}`} off for children`,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'append', at: head, words: 'left off for children' }],
    };
}
