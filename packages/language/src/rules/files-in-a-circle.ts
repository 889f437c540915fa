import { defineRule } from './rule.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'files-in-a-circle',
    group: 'text',
    since: '0.1.0',
    title: 'Files that use each other in a circle',
    why: 'The nearer file’s word wins over the farther one’s. In a circle none is nearer.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only the writer knows which of the files should stand on its own.',
    scope: 'file',
    examples: {
        wrong: [
            {
                text: '//- house.cover\nuse <|"room.cover"|>\n\nhouse "Saltmarsh Hall" { spare 5 % }\n//- room.cover\nuse "house.cover"\n\nroom "Long gallery" { at 21 °C }\n',
            },
        ],
        right: [
            {
                text: '//- house.cover\nhouse "Saltmarsh Hall" { spare 5 % }\n//- room.cover\nuse "house.cover"\n\nroom "Long gallery" { at 21 °C }\n',
            },
        ],
    },
    check({ plan, report }) {
        for (const { sort, path, chain, origin } of plan.useProblems) {
            if (sort === 'cycle') {
                const isItself = chain === undefined || chain.length <= 2;
                report({
                    at: origin,
                    message: isItself
                        ? `${quoted(path)} uses itself.`
                        : `These files use each other in a circle: ${chain.map(quoted).join(', then ')}.`,
                    hint: isItself
                        ? 'Take this line out.'
                        : 'Take one of the `use` lines out; what two files need belongs in a third.',
                });
            }
        }
    },
});
