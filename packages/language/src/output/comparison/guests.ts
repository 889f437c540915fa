import { counted } from '../../rules/wording.js';
import type { GuestGroup } from '../../service/types.js';
import { more, paired, type Change, type Compared } from './change.js';
import { changedSeats } from './seats.js';

/** The four numbers, the needs of guests, and who is to be found at which seat. */
export function changedGuests(before: Compared, after: Compared): Change[] {
    return [...changedNumbers(before, after), ...changedNeeds(before, after), ...changedSeats(before, after)];
}

function changedNumbers(before: Compared, after: Compared): Change[] {
    const numbers = ({ plan, service }: Compared) => ({
        expected: service.guestCount,
        'set for': service.setFor,
        guaranteed: plan.event?.guests?.guaranteed?.count,
    });
    const was = numbers(before);
    const is = numbers(after);
    const said = { expected: 'cover', 'set for': 'place set', guaranteed: 'guest guaranteed' } as const;
    return (Object.keys(said) as (keyof typeof said)[]).flatMap((key): Change[] => {
        const [old, now] = [was[key], is[key]];
        // Places follow the guests unless the plan sets more.
        if (old === now || (key === 'set for' && old === was.expected && now === is.expected)) {
            return [];
        }
        const change = { subject: 'guests', key, before: old, after: now, unit: 'guests' } as const;
        if (old === undefined || now === undefined) {
            return [{ ...change, text: `${plural(said[key])}: ${now ?? 'no longer stated'}` }];
        }
        const nouns = counted(Math.abs(now - old), said[key], plural(said[key])).replace(/^\d+ /, '');
        return [{ ...change, text: `${more(old, now)} ${nouns}, ${now} in all` }];
    });
}

const plural = (noun: string): string => noun.replace(/^(\w+)/, '$1s');

/** Groups by what they need; a seat makes a group of its own. */
function changedNeeds(before: Compared, after: Compared): Change[] {
    const groups = ({ service }: Compared): Totals[] => {
        const totals = new Map<string, Totals>();
        for (const group of service.groups.filter((each) => each.needs.length > 0 || each.children)) {
            const key = `${group.label}${placeOf(group)}`;
            const known = totals.get(key);
            totals.set(key, {
                key,
                label: group.label,
                place: placeOf(group),
                count: (known?.count ?? 0) + group.count,
            });
        }
        return [...totals.values()];
    };
    return paired(groups(before), groups(after), ({ key }) => key).flatMap(({ key, was, is }): Change[] => {
        const [old, now] = [was?.count ?? 0, is?.count ?? 0];
        const { label, place } = (is ?? was)!;
        const change = { subject: 'guests', key, before: old, after: now, unit: 'guests' } as const;
        if (old === now) {
            return [];
        }
        if (old === 0) {
            return [{ ...change, text: `new: ${counted(now, 'guest')}, ${label}${place}` }];
        }
        return now === 0
            ? [{ ...change, text: `no longer: ${counted(old, 'guest')}, ${label}${place}` }]
            : [{ ...change, text: `${more(old, now)} ${label}${place}, ${now} in all` }];
    });
}

interface Totals {
    readonly key: string;
    readonly label: string;
    readonly place: string;
    readonly count: number;
}

function placeOf({ seat }: GuestGroup): string {
    return seat ? ` at ${seat.table.name}${seat.seat ? ` seat ${seat.seat.count}` : ''}` : '';
}
