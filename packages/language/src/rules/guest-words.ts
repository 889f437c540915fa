import type { Conflict, GuestGroup } from '../service/types.js';
import { counted, listed, quoted } from './wording.js';

/** How messages speak of guests, and of what keeps a dish from them. */

/** `2 guests without milk`, `1 vegetarian guest at T3 seat 5`, as a message speaks of them. */
export function guestsOf(group: GuestGroup): string {
    const diets = group.needs.flatMap((need) => (need.sort === 'diet' ? [need.diet.name] : []));
    const without = group.needs.flatMap((need) => (need.sort === 'without' ? need.what.map((what) => what.name) : []));
    const who = group.children
        ? counted(group.count, 'child', 'children')
        : counted(group.count, [...diets, 'guest'].join(' '), [...diets, 'guests'].join(' '));
    const lacking = without.length > 0 ? ` without ${without.join(' and ')}` : '';
    const seat = group.seat
        ? ` at ${group.seat.table.name}${group.seat.seat ? ` seat ${group.seat.seat.count}` : ''}`
        : '';
    return `${who}${lacking}${seat}`;
}

/** `\`Grilled sirloin\` has \`beef\``; a diet that has to be stated is not fed by a dish that is silent. */
export function sayConflicts(title: string, conflicts: readonly Conflict[]): string {
    const diets = conflicts.filter(isUnsaid).map(({ excluded }) => quoted(excluded));
    if (diets.length > 0) {
        return `${quoted(title)} does not say that it suits ${listed([...new Set(diets)])}`;
    }
    const contents = conflicts.map(({ substance, carrier }) =>
        carrier === quoted(title) ? quoted(substance) : `${quoted(substance)} in the ${carrier}`,
    );
    return `${quoted(title)} has ${listed([...new Set(contents)])}`;
}

/** A diet that only a dish which says so feeds. */
export function isUnsaid({ need, substance }: Conflict): boolean {
    return need.sort === 'diet' && need.diet.name === substance;
}
