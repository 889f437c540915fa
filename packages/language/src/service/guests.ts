import { itself, saysAsMuch } from '../plan/alike.js';
import type { Origin } from '../plan/origin.js';
import type { Need, Plan } from '../plan/types.js';
import type { GuestGroup } from './types.js';

/** Words of one need as a chef would say them: `vegetarian`, `without milk and egg`. */
export function sayNeed(need: Need): string {
    switch (need.sort) {
        case 'children':
            return 'children';
        case 'diet':
            return need.diet.name;
        case 'without':
            return `without ${need.what.map((what) => what.name).join(' and ')}`;
    }
}

function label(needs: readonly Need[]): string {
    return needs.length === 0 ? 'no special needs' : needs.map(sayNeed).join(', ');
}

const seatKey = (table: string, seat: number | undefined): string => `${table}/${seat ?? ''}`;

/**
 * The guests in disjoint groups: one for each row, one for each named guest with needs whose seat no row speaks of, and the
 * plain rest last. A named guest at a row's seat is that row's guest and adds their needs to it.
 */
export function groupGuests(plan: Plan): GuestGroup[] {
    const guests = plan.event?.guests;
    const rows = guests?.rows ?? [];
    const seatedRows = new Map(
        rows.flatMap((row) =>
            row.seat?.seat ? [[seatKey(row.seat.table.name, row.seat.seat.count), row] as const] : [],
        ),
    );
    const groups: Omit<GuestGroup, 'index'>[] = [];
    const add = (group: { count: number; needs: readonly Need[]; origin: Origin } & Partial<GuestGroup>): void => {
        const children = group.needs.some((need) => need.sort === 'children');
        groups.push({ ...group, children, label: label(group.needs) });
    };
    for (const row of rows) {
        const named =
            row.seat?.seat &&
            plan.seating.find(
                (guest) =>
                    guest.seat?.seat && seatedRows.get(seatKey(guest.seat.table.name, guest.seat.seat.count)) === row,
            );
        add({
            count: row.count.count,
            needs: [...row.needs, ...(named?.needs ?? [])],
            seat: row.seat,
            row,
            named,
            origin: row.origin,
        });
    }
    for (const guest of plan.seating) {
        const isInRow = guest.seat?.seat && seatedRows.has(seatKey(guest.seat.table.name, guest.seat.seat.count));
        if (!isInRow && (guest.needs.length > 0 || guest.chooses.length > 0)) {
            add({ count: 1, needs: guest.needs, seat: guest.seat, named: guest, origin: guest.origin });
        }
    }
    const special = groups.reduce((sum, group) => sum + group.count, 0);
    const plain = Math.max(0, (guests?.expected.count ?? 0) - special);
    const everyone = guests?.origin ?? plan.event?.titleOrigin ?? plan.menu?.origin;
    if (everyone && (plain > 0 || groups.length === 0)) {
        add({ count: plain, needs: [], origin: guests?.expected.origin ?? everyone });
    }
    return groups.map((group, index) => itself({ ...group, index }));
}

/** Whether two groups say the same of the same guests. */
export function isSameGroup(one: GuestGroup, other: GuestGroup): boolean {
    return one.row === other.row && one.named === other.named && saysAsMuch(one, other);
}
