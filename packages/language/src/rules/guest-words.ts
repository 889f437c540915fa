import type { Need } from '../plan/types.js';
import type { Conflict, GuestGroup } from '../service/types.js';
import { asName, listed, quoted } from './wording.js';

/** How messages speak of guests, and of what keeps a dish from them. */

/** `2 guests without milk`, `1 vegetarian guest at T3 seat 5`. */
export function guestsOf(group: GuestGroup): string {
    const seat = group.seat
        ? ` at ${group.seat.table.name}${group.seat.seat ? ` seat ${group.seat.seat.count}` : ''}`
        : '';
    return `${group.count} ${sortOf(group, group.count === 1)}${seat}`;
}

/** `vegetarian guests`, `guests without milk`, `children`: one of them or many. */
export function sortOf({ needs, children }: Pick<GuestGroup, 'needs' | 'children'>, isOne = false): string {
    const diets = needs.flatMap((need) => (need.sort === 'diet' ? [need.diet.name] : []));
    const without = needs.flatMap((need) => (need.sort === 'without' ? need.what.map((what) => what.name) : []));
    const noun = children ? (isOne ? 'child' : 'children') : isOne ? 'guest' : 'guests';
    return [...diets, noun, ...(without.length > 0 ? [`without ${without.join(' and ')}`] : [])].join(' ');
}

/** What the place where a group is stated says beside a finding. */
export function statedHere({ count }: GuestGroup): string {
    return count === 1 ? 'This guest is stated here.' : 'These guests are stated here.';
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

/** Of several dishes or drinks; each may itself be a list. */
export const sayEach = (clauses: readonly string[]): string => clauses.join(', and ');

/** A diet that only a dish which says so feeds. */
export function isUnsaid({ need, substance }: Conflict): boolean {
    return need.sort === 'diet' && need.diet.name === substance;
}

/** A need as the text says it: `vegan`, `without milk and egg`. */
export function needAsWritten(need: Need): string {
    switch (need.sort) {
        case 'children':
            return 'children';
        case 'diet':
            return asName(need.diet.name);
        case 'without':
            return `without ${need.what.map((what) => asName(what.name)).join(' and ')}`;
    }
}
