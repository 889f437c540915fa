import type { Origin } from '../plan/origin.js';
import type { Plan } from '../plan/types.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'declared-twice',
    group: 'text',
    since: '0.1.0',
    title: 'A thing declared twice at one level',
    why: 'A file’s own word wins over the files it uses, and theirs over the standard cupboard. Two words at one level leave it open which one holds.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'file',
    examples: {
        wrong: [
            { text: 'fork crab-fork { length 150 mm }\nfork <|crab-fork|> { length 160 mm }\n' },
            {
                title: 'An event in two rooms',
                text: 'room "Long gallery" 18 m by 11 m {\n    table T1 to T6: round 60 inch, 8 seats\n}\n\n<|room "Boathouse" 9 m by 6 m|> {\n    table T7 to T8: round 60 inch, 8 seats\n}\n',
            },
        ],
        right: [{ text: 'fork crab-fork { length 150 mm }\n' }],
    },
    check({ plan, report }) {
        for (const { what, name, first, again } of plan.twice) {
            if (what === 'event' || what === 'menu') {
                continue;
            }
            const thing = name === undefined ? what : `${what} ${quoted(name)}`;
            const block = blockOf(plan, again);
            report({
                at: headOf(plan, again) ?? again,
                message:
                    name === undefined
                        ? `There is a second ${thing} here; only the first counts.`
                        : `The ${thing} is declared a second time here; only the first counts.`,
                hint: what === 'room' ? TWO_ROOMS : 'Keep one of the two.',
                related: [{ at: headOf(plan, first) ?? first, message: 'It is declared here first.' }],
                fixes: block
                    ? [
                          {
                              title: `Take out the second ${thing}`,
                              safety: 'unsafe',
                              preferred: true,
                              changes: [{ do: 'remove', at: block }],
                          },
                      ]
                    : [],
            });
        }
    },
});

const TWO_ROOMS =
    'Keep one of the two. For an event in two rooms put the tables of both into one `room` without a size: the custom `pass-distance` is then the way to each of them.';

/** The whole declaration whose name stands there. */
function blockOf(plan: Plan, name: Origin): Origin | undefined {
    const declarations = plan.readings.flatMap(({ pieces, kinds, substances, diets, codes }) => [
        ...pieces,
        ...kinds,
        ...substances,
        ...diets,
        ...codes,
    ]);
    return declarations.find(({ nameOrigin }) => nameOrigin === name)?.origin;
}

/** The heading of a whole house or room. */
function headOf(plan: Plan, block: Origin): Origin | undefined {
    return plan.readings.flatMap(({ houses, rooms }) => [...houses, ...rooms]).find(({ origin }) => origin === block)
        ?.head;
}
