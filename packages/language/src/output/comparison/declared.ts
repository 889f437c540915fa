import type { Plan, Reading } from '../../plan/types.js';
import { quoted } from '../../rules/wording.js';
import type { Thing } from './facts.js';

/** What the files of a plan declare of one sort, the standard cupboard's left out: nobody changes that. */
export function declared<T extends { readonly name: string }>(
    { readings }: Plan,
    of: (reading: Reading) => readonly T[],
    sort: string | ((each: T) => string),
): Thing<T>[] {
    return readings.flatMap(of).map((each) => {
        const what = typeof sort === 'string' ? sort : sort(each);
        return { key: `${what} ${each.name}`, called: `${what} ${quoted(each.name)}`, of: each };
    });
}
