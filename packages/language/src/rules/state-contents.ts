import type { Contains } from '../plan/cupboard.js';
import { isWithin, type Origin } from '../plan/origin.js';
import type { Fix } from './fixes.js';
import { asName, listed, quoted } from './wording.js';

/** How contents are stated. */
interface HowStated {
    readonly safety: 'unsafe' | 'show';
    /** The block of what contains it. What it takes over from a course that speaks for all its dishes is said again in it. */
    readonly in: Origin;
}

/** Adds to what something is said to contain. */
export function stateThatItContains({ what, origin }: Contains, names: readonly string[], how: HowStated): Fix {
    const added = names.map(asName).join(', ');
    const last = what.at(-1);
    const clause = `contains ${[...what.map(({ name }) => asName(name)), added].join(', ')}`;
    return {
        title: `State that it contains ${listed(names.map(quoted))}`,
        safety: how.safety,
        changes: [
            !isWithin(origin, how.in)
                ? { do: 'add-clause', to: how.in, clause }
                : last
                  ? { do: 'append', at: last.origin, words: `, ${added}` }
                  : { do: 'replace', at: origin, words: clause },
        ],
    };
}
