import type { Origin } from '../plan/origin.js';
import type { Reading } from '../plan/types.js';
import { swallows } from './doubt.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'unreadable-text',
    group: 'text',
    since: '0.1.0',
    title: 'Words that can’t be read as part of a plan',
    why: 'What can’t be read is in no count and on no sheet. The rest of the plan is checked all the same.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    noFix: 'Where only the writer knows what was meant, the message says what can stand there.',
    scope: 'file',
    examples: {
        wrong: [
            { text: 'room "Long gallery" {\n    at <|about|> 21 °C\n}\n' },
            { text: 'room "Long gallery" {\n    <|aisel|> 1.2 m\n}\n' },
        ],
        right: [{ text: 'room "Long gallery" {\n    at 21 °C\n}\n' }],
    },
    check({ plan, report }) {
        for (const reading of plan.readings) {
            for (const { message, hint, suggestion, origin } of reading.syntax) {
                if (!followsFromAnother(reading, origin)) {
                    report({
                        at: origin,
                        message,
                        hint,
                        fixes: suggestion === undefined ? [] : [write(suggestion, origin)],
                    });
                }
            }
        }
    },
});

function write(words: string, at: Origin): Fix {
    return {
        title: `Write ${quoted(words)}`,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'replace', at, words }],
    };
}

/** True where the reader only stumbles because of something that is already a finding: an unclosed text, a mistyped first word. */
function followsFromAnother(reading: Reading, at: Origin): boolean {
    const before = reading.syntax.filter(({ origin }) => origin.start < at.start);
    const unclosed = reading.written.filter(swallows);
    const afterUnclosed = unclosed.some(
        ({ origin }) => origin.start <= at.start && !before.some((earlier) => earlier.origin.start >= origin.start),
    );
    const blocks: readonly { readonly origin: Origin }[] = [...reading.events, ...reading.menus, ...reading.pieces];
    const inMisspelt = reading.misspelt.some(({ origin }) =>
        blocks.some(
            (block) =>
                block.origin.start === origin.start && block.origin.start <= at.start && at.end <= block.origin.end,
        ),
    );
    return afterUnclosed || inMisspelt;
}
