import { listed } from '../rules/wording.js';
import type { GuestGroup } from '../service/types.js';

/** So many guests of each sort, each sort once: `2 without gluten, 4 vegetarian and 78 with no special needs`. */
export function guestWords(groups: readonly { readonly group: GuestGroup; readonly count: number }[]): string {
    const counts = new Map<string, number>();
    for (const { group, count } of groups) {
        const sort = group.needs.length > 0 ? group.label : `with ${group.label}`;
        counts.set(sort, (counts.get(sort) ?? 0) + count);
    }
    return listed([...counts].map(([sort, count]) => `${count} ${sort}`));
}
