import type { Contains } from '../plan/cupboard.js';
import type { Fix } from './fixes.js';
import { asName, listed, quoted } from './wording.js';

/** Adds to what something is said to contain. */
export function stateThatItContains(
    { what, origin }: Contains,
    names: readonly string[],
    safety: 'unsafe' | 'show',
): Fix {
    const added = names.map(asName).join(', ');
    const last = what.at(-1);
    return {
        title: `State that it contains ${listed(names.map(quoted))}`,
        safety,
        changes: [
            last
                ? { do: 'append', at: last.origin, words: `, ${added}` }
                : { do: 'replace', at: origin, words: `contains ${added}` },
        ],
    };
}
