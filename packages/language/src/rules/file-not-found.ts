import { defineRule } from './rule.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'file-not-found',
    group: 'text',
    since: '0.1.0',
    title: 'A file that is used is not there',
    why: 'Without the house’s file its pieces, customs and room are missing from every count.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only the writer knows where the file is.',
    scope: 'file',
    examples: {
        wrong: [
            {
                text: '//- house.cover\nhouse "Saltmarsh Hall" { spare 5 % }\n//- room.cover\nuse <|"hose.cover"|>\n\nroom "Long gallery" { at 21 °C }\n',
            },
        ],
        right: [
            {
                text: '//- house.cover\nhouse "Saltmarsh Hall" { spare 5 % }\n//- room.cover\nuse "house.cover"\n\nroom "Long gallery" { at 21 °C }\n',
            },
        ],
    },
    check({ plan, report }) {
        for (const { sort, path, origin } of plan.useProblems) {
            if (sort === 'missing') {
                report({
                    at: origin,
                    message: `There is no file ${quoted(path)}.`,
                    hint: 'Paths start from the folder of the file they stand in.',
                });
            }
        }
    },
});
