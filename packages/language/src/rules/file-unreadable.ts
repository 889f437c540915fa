import { defineRule } from './rule.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'file-unreadable',
    group: 'text',
    since: '0.1.0',
    title: 'A file that is used is there and can’t be read',
    why: 'What stands in it is missing from the plan, though the plan seems to have it.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'The file itself has to be put right.',
    scope: 'file',
    examples: {
        wrong: [
            {
                title: 'A recipe that is not what its name says',
                text: `//- poached-pear.json
name: Poached pear
//- menu.cover
menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
        recipe <|"poached-pear.json"|>
    }
}
`,
            },
        ],
        right: [
            {
                text: `//- poached-pear.md
---
yield: 40
---
Poach the pears.
//- menu.cover
menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
        recipe "poached-pear.md"
    }
}
`,
            },
        ],
    },
    check({ plan, report }) {
        for (const { sort, path, why, origin } of plan.useProblems) {
            if (sort === 'unreadable') {
                report({
                    at: origin,
                    message: `${quoted(path)} can’t be read${why ? `: ${why}` : ''}.`,
                    hint: 'A plan is a text file in UTF-8.',
                });
            }
        }
        for (const { state, path, origin } of plan.recipes) {
            if (state === 'unreadable') {
                report({
                    at: origin,
                    message: `The recipe ${quoted(path)} can’t be read.`,
                    hint: 'A recipe is a Markdown file whose front matter gives its `yield`, or a schema.org Recipe in JSON-LD.',
                });
            }
        }
    },
});
