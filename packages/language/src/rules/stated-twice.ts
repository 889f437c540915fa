import type { Origin } from '../plan/origin.js';
import type { Plan, Repeat } from '../plan/types.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { asName, quoted } from './wording.js';

export default defineRule({
    id: 'stated-twice',
    group: 'text',
    since: '0.1.0',
    title: 'A clause that may stand once and stands again',
    why: 'Two answers to one question leave the team to choose. The first is the one that counts.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'file',
    examples: {
        wrong: [
            {
                title: 'Two room temperatures',
                text: 'room "Long gallery" {\n    at 21 °C\n    aisle 1.2 m\n    <|at 19 °C|>\n}\n',
            },
            {
                title: 'A custom declared twice',
                text: 'house "Saltmarsh Hall" {\n    laying {\n        limit: 3 per side\n        <|limit: 4 per side|>\n    }\n}\n',
            },
        ],
        right: [{ text: 'room "Long gallery" {\n    at 21 °C\n    aisle 1.2 m\n}\n' }],
    },
    check({ plan, report }) {
        for (const repeat of plan.readings.flatMap((reading) => reading.repeats)) {
            const fix = fixFor(plan, repeat);
            report({
                at: repeat.again,
                message: `${quoted(repeat.clause)} stands here a second time; ${repeat.clause === 'contains' ? 'one clause has to say it all' : 'only the first counts'}.`,
                hint: fix
                    ? `${fix.title}.`
                    : repeat.clause === 'contains'
                      ? 'State everything in the first and take this one out.'
                      : 'Keep one of the two.',
                related: [{ at: repeat.first, message: 'It stands here first.' }],
                fixes: fix ? [fix] : [],
            });
        }
    },
});

function fixFor(plan: Plan, { clause, first, again }: Repeat): Fix | undefined {
    // Guests and what a dish contains are never taken out by a fix.
    if (clause === 'guests') {
        return undefined;
    }
    if (clause !== 'contains') {
        return {
            title: `Take out the second ${quoted(clause)}`,
            safety: 'unsafe',
            preferred: true,
            changes: [{ do: 'remove', at: again }],
        };
    }
    // What stands in the second has to be known before one clause can say it all; an allergen must never fall out.
    const others = substancesIn(plan, again);
    if (others.length === 0) {
        return undefined;
    }
    const words = `contains ${[...new Set([...substancesIn(plan, first), ...others])].map(asName).join(', ')}`;
    return {
        title: `State both in one: ${quoted(words)}`,
        safety: 'unsafe',
        preferred: true,
        changes: [
            { do: 'replace', at: first, words },
            { do: 'remove', at: again },
        ],
    };
}

function substancesIn(plan: Plan, clause: Origin): string[] {
    return plan.readings
        .filter((reading) => reading.file === clause.file)
        .flatMap((reading) => reading.occurrences)
        .filter(({ sort, origin }) => sort === 'substance' && origin.start >= clause.start && origin.end <= clause.end)
        .map((each) => each.name);
}
