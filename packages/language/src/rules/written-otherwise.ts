import { beginningOf } from '../plan/origin.js';
import type { Written } from '../plan/types.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { listed, quoted } from './wording.js';

/** What is said of each form; the hint says what to write. */
const MESSAGE: Record<Written['form'], (written: Written) => string> = {
    'decimal-comma': ({ written, suggestions }) =>
        suggestions.length > 1
            ? `${quoted(written)} can be read as ${listed(suggestions, 'or')}.`
            : `${quoted(written)} has a comma; decimals are written with a point.`,
    fraction: ({ written, suggestions }) =>
        suggestions.length > 0
            ? `${quoted(written)} is a fraction; figures are written as decimals.`
            : `${quoted(written)} is no figure: nothing can be divided by 0.`,
    'twelve-hour-time': ({ written }) =>
        `${quoted(written)} is on the twelve-hour clock; times here run from 00:00 to 23:59.`,
    'time-with-h': ({ written }) => `${quoted(written)} has no colon; a time is written as hours, a colon and minutes.`,
    'bare-time': ({ written }) =>
        `${quoted(written)} is an hour without its minutes; a time is written as hours, a colon and minutes.`,
    'date-in-words': ({ written }) =>
        `${quoted(written)} is a date in words; a date is written year first, in figures.`,
    'date-with-slashes': ({ written, suggestions }) =>
        suggestions.length > 1
            ? `${quoted(written)} can be two days.`
            : `${quoted(written)} is a date in another order; a date is written year first, with hyphens.`,
    'table-hyphen': ({ written }) => `${quoted(written)} is one name; a range of tables is written with \`to\`.`,
    'unit-spelling': ({ written, suggestions }) =>
        suggestions.length > 1
            ? `${quoted(written)} may be ${listed(suggestions, 'or')}.`
            : `The unit ${quoted(written)} is written ${listed(suggestions, 'or')}.`,
    'preposition-as-unit': () => '`in` says where something is served and is never a unit; the unit is `inch`.',
    'no-such-day': ({ written }) => `There is no day ${quoted(written)}.`,
    'no-such-time': ({ written }) => `There is no time ${quoted(written)}.`,
    'unclosed-text': () => 'This text has no closing quote.',
    'unclosed-comment': () => 'This comment has no closing `*/`, so that everything after it is left out of the plan.',
    'not-whole': ({ written }) => `${quoted(written)} is not a whole number; a count such as 8 is wanted here.`,
};

const HINT: Partial<Record<Written['form'], string>> = {
    'no-such-day': 'Write a day of the calendar, year first, such as `2026-10-17`.',
    'no-such-time': 'Write a time from 00:00 to 23:59, such as `19:00`.',
    'unclosed-text': 'Close it on the same line.',
    'unclosed-comment': 'Close it with `*/`.',
    'not-whole': 'Write a whole number.',
};

export default defineRule({
    id: 'written-otherwise',
    group: 'text',
    since: '0.1.0',
    title: 'A date, time, figure or range in another form than the language keeps',
    why: 'One form for each thing means that nobody on the floor reads 10/11 as another day. What is meant is read all the same wherever it is plain.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'file',
    examples: {
        wrong: [
            { title: 'A decimal comma', text: 'room "Long gallery" {\n    aisle <|1,2|> m\n}\n' },
            { title: 'A unit spelt otherwise', text: 'room "Long gallery" {\n    at 21 <|C|>\n}\n' },
            {
                title: 'A range of tables',
                text: 'room "Long gallery" {\n    table <|T1-T9|>: round 60 inch, 8 seats\n}\n',
            },
            {
                title: 'A preposition for a unit',
                text: 'room "Long gallery" {\n    table T1 to T9: round 60 <|in|>, 8 seats\n}\n',
            },
        ],
        right: [
            {
                text: 'room "Long gallery" {\n    aisle 1.2 m\n    at 21 °C\n    table T1 to T9: round 60 inch, 8 seats\n}\n',
            },
        ],
    },
    check({ plan, report }) {
        for (const written of plan.readings.flatMap((reading) => reading.written)) {
            const { form, origin } = written;
            const words = form === 'unclosed-text' ? [closed(written.written)] : written.suggestions;
            // Where only one thing can be meant it is understood; where two can, or none, the plan lacks a figure.
            const isUnderstood = written.suggestions.length === 1;
            report({
                // A comment that does not close runs to the end of the file; where it opens is the place to look.
                at: form === 'unclosed-comment' ? beginningOf(origin, written.written.length) : origin,
                severity: isUnderstood ? 'warning' : 'error',
                message: MESSAGE[form](written),
                hint: HINT[form] ?? (words.length > 0 ? `Write ${listed(words.map(quoted), 'or')}.` : undefined),
                fixes: words.map((each): Fix => ({
                    title: form === 'unclosed-text' ? 'Close the text' : `Write ${quoted(each)}`,
                    safety: isUnderstood ? 'safe' : 'unsafe',
                    preferred: words.length === 1,
                    changes: [{ do: 'replace', at: origin, words: each }],
                })),
            });
        }
    },
});

/** A text that runs to the end of its line, closed where it most likely ends: before a brace that opens a block. */
function closed(written: string): string {
    const quote = /^[\u201C\u201D\u201E]/.test(written) ? '\u201D' : '"';
    return written.trimEnd().replace(/(\s*\{)?$/, (brace) => quote + brace);
}
