import type { UnitName } from '../plan/quantity.js';
import type { UnitProblem } from '../plan/types.js';
import { defineRule } from './rule.js';
import { listed, quoted } from './wording.js';

export default defineRule({
    id: 'missing-unit',
    group: 'text',
    since: '0.1.0',
    title: 'A figure without its unit',
    why: 'A soup at 60 is scalding in one kitchen and cold in the next. Units are written and never guessed.',
    source: ['temperature §9', 'common practice, no source'],
    fix: 'always',
    scope: 'file',
    examples: {
        wrong: [
            { title: 'A temperature that may be °C or °F', text: 'room "Long gallery" {\n    at <|21|>\n}\n' },
            { title: 'A share', text: 'house "Saltmarsh Hall" {\n    spare <|5|>\n}\n' },
        ],
        right: [{ text: 'room "Long gallery" {\n    at 21 °C\n}\n\nhouse "Saltmarsh Hall" {\n    spare 5 %\n}\n' }],
    },
    check({ plan, report }) {
        for (const problem of plan.readings.flatMap((reading) => reading.unitProblems)) {
            if (problem.unit !== undefined) {
                continue;
            }
            report({
                at: problem.origin,
                message: `${quoted(problem.written)} needs a unit: ${listed(problem.likely, 'or')}.`,
                hint: 'Write the unit after the figure.',
                fixes: problem.likely.map((unit) => ({
                    title: `Write ${quoted(`${problem.written} ${unit}`)}`,
                    safety: 'unsafe',
                    preferred: unit === surest(problem),
                    changes: [{ do: 'append', at: problem.origin, words: unit }],
                })),
            });
        }
    },
});

/** The one unit there is; of minutes and hours the minutes, where as many hours would outlast any evening. */
function surest({ likely, value }: UnitProblem): UnitName | undefined {
    return likely.length === 1 ? likely[0] : likely.includes('min') && value >= 10 ? 'min' : undefined;
}
