import { defineRule } from './rule.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'recipe-missing',
    group: 'text',
    since: '0.1.0',
    title: 'A recipe that is linked and not there',
    why: 'The cook who opens the plan on the day finds no recipe, and nobody has checked what it contains or how many it feeds.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only the writer knows where the recipe is.',
    scope: 'file',
    examples: {
        wrong: [
            {
                text: `menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
        recipe <|"recipes/poached-pear.md"|>
    }
}
`,
            },
        ],
        right: [
            {
                text: `//- recipes/poached-pear.md
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
        recipe "recipes/poached-pear.md"
    }
}
`,
            },
        ],
    },
    check({ plan, report }) {
        for (const { state, path, origin } of plan.recipes) {
            if (state === 'missing') {
                report({
                    at: origin,
                    message: `There is no recipe ${quoted(path)}.`,
                    hint: 'Paths start from the folder of the file they stand in.',
                });
            }
        }
    },
});
