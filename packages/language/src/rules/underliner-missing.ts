import { isWithin } from '../plan/origin.js';
import type { DishFacts } from '../service/types.js';
import { isDoubtful } from './doubt.js';
import type { Intention } from './fixes.js';
import { defineRule } from './rule.js';
import { pieceLineage } from '../plan/suiting.js';
import { asName, listed, quoted } from './wording.js';

const EVENT = `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

house "Saltmarsh Hall" {
    laying { underliner: stated }
}
`;

export default defineRule({
    id: 'underliner-missing',
    group: 'cover',
    since: '0.1.0',
    title: 'A bowl, cup or coupe with no plate under it',
    why: 'The underliner carries the spoon between bites and catches the drips, and a server can lift a hot or footed vessel only by the plate under it.',
    source: ['table-service 7.36', 'table-service 5.15', 'common practice, no source'],
    fix: 'sometimes',
    customs: ['underliner'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A house that lays only the underliners written in the plan',
                text: `${EVENT}
menu {
    course cold-soup "Chilled cucumber soup" {
        served in <|soup-bowl|> chilled at 6 °C
        lasts 15 min
        contains milk
    }
}
`,
            },
        ],
        right: [
            {
                text: `${EVENT}
menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-bowl chilled on salad-plate at 6 °C
        lasts 15 min
        contains milk
    }
}
`,
            },
        ],
    },
    check({ plan, service, report }) {
        for (const facts of service.facts) {
            const { dish, vessel } = facts;
            if (
                !facts.wantsUnderliner ||
                facts.underliner ||
                !vessel ||
                dish.served.under ||
                isDoubtful(plan, dish.origin)
            ) {
                continue;
            }
            const wanted = pieceLineage(plan.cupboard, vessel.name).find((piece) => piece.on.length > 0)?.on ?? [];
            const names = wanted.map(({ name }) => name).filter((name) => plan.cupboard.pieces.has(name));
            const title = names[0] && `Stand ${quoted(vessel.name)} on ${quoted(names[0])}`;
            report({
                at: dish.served.vessel?.piece.origin ?? dish.head,
                message: `${quoted(vessel.name)} of ${quoted(dish.title)} stands on no underliner.`,
                hint:
                    names.length > 0
                        ? `Stand it on ${listed(names.map(quoted), 'or')}.`
                        : 'Name the plate that it stands on.',
                fixes: title ? [{ title, safety: 'safe', preferred: true, changes: [standOn(facts, names[0]!)] }] : [],
            });
        }
    },
});

function standOn({ dish, kind, vessel }: DishFacts, plate: string): Intention {
    if (dish.served.vessel) {
        return { do: 'append', at: dish.served.vessel.origin, words: `on ${asName(plate)}` };
    }
    const how = kind?.vessels.find(({ names }) => names.some(({ name }) => name === vessel!.name))?.how ?? 'in';
    const words = `${how} ${asName(vessel!.name)} on ${asName(plate)}`;
    const served = dish.served.origin;
    return served && isWithin(served, dish.origin)
        ? { do: 'append', at: served, words }
        : { do: 'add-clause', to: dish.origin, clause: `served ${words}` };
}
