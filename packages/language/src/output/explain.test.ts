import { describe, expect, it } from 'vitest';
import { defineRule } from '../rules/rule.js';
import { asMarkdown, asText, explanation } from './explain.js';

const rule = defineRule({
    id: 'fork-is-upside-down',
    group: 'cover',
    since: '0.1.0',
    title: 'A fork with its tines below',
    why: 'Tines * below _ scratch the table.',
    source: ['table-service 1.1', 'common practice, no source'],
    fix: 'always',
    customs: ['limit'],
    scope: 'file',
    examples: {
        wrong: [
            {
                title: 'A fork lies wrong',
                text: '//- house.cover\nhouse "Hall" { }\n//- event.cover\nlay left <|salad-fork|>\n',
            },
        ],
        right: [{ text: 'lay left dinner-fork\n' }],
    },
    check: () => undefined,
});

const outcomes = [
    [
        {
            file: 'event.cover',
            line: 1,
            words: 'salad-fork',
            message: '`salad-fork` lies wrong.',
            hint: 'Turn it.',
            fixes: [{ title: 'Turn `salad-fork`', safety: 'safe' as const }],
        },
    ],
];

describe('the explanation of a rule', () => {
    it('is a page of Markdown, with marks of Markdown only where it means them', () => {
        expect(asMarkdown(explanation(rule, outcomes))).toBe(`# fork-is-upside-down: a fork with its tines below

This is a warning unless the house sets it otherwise.

## Why

Tines \\* below \\_ scratch the table.

## Wrong

A fork lies wrong:

\`house.cover\`:

\`\`\`cover
house "Hall" { }
\`\`\`

\`event.cover\`:

\`\`\`cover
lay left salad-fork
\`\`\`

Line 1 of \`event.cover\`, \`salad-fork\`:

- \`salad-fork\` lies wrong. Turn it.
- Fix: Turn \`salad-fork\` (also with \`check --fix\`).

## Right

\`\`\`cover
lay left dinner-fork
\`\`\`

## Fix

Every finding comes with a fix.

## Setting it

In the house, for every event; or in the block it concerns, for that block. Both need a reason.

\`\`\`cover
rule fork-is-upside-down is off because "…"
waive fork-is-upside-down because "…"
\`\`\`

## Customs it reads

\`limit\`: declared by the house in \`laying { … }\`.

## Sources

table-service 1.1; common practice, no source.
`);
    });

    it('says the same in plain text', () => {
        const text = asText(explanation(rule, outcomes));
        expect(text).toContain('Why\n\n  Tines * below _ scratch the table.\n');
        expect(text).toContain('\n    lay left salad-fork\n');
        expect(text).toContain('  - `salad-fork` lies wrong. Turn it.\n');
        expect(text).not.toContain('```');
    });

    it('says what may be done about a safety rule', () => {
        const said = (safety: 'fixed' | 'floor') =>
            asText(explanation({ ...rule, safety, fix: 'never', noFix: 'A cook decides.' }));
        expect(said('fixed')).toContain('This is always a warning.');
        expect(said('fixed')).not.toContain('is off because');
        expect(said('floor')).toContain('rule fork-is-upside-down is warning because');
        expect(said('floor')).not.toContain('is off because');
        expect(said('floor')).toContain('There is no fix. A cook decides.');
    });
});
