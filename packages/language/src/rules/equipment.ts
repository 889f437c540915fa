/** What the rules about equipment share: gear that holds plates, and renting more of it. */
import type { Plan } from '../plan/types.js';
import { lotsOf } from '../service/stock/lots.js';
import { plateHolders } from '../service/stock/equipment.js';
import type { EquipmentUse } from '../service/stock/types.js';
import type { Fix } from './fixes.js';
import { rentMore } from './stock-remedies.js';
import { counted, quoted } from './wording.js';

/** `2 of them hold 120 plates`. */
export function whatItHolds({ count, capacity, gear }: EquipmentUse): string {
    return `${count} ${quoted(gear)} ${count === 1 ? 'holds' : 'hold'} ${counted(capacity, 'plate')}`;
}

/**
 * Rents as many more of the gear as are wanted for all plates at once.
 * @param atLeast so many in any case
 */
export function rentGear(
    plan: Plan,
    { gear, plates, capacity }: Pick<EquipmentUse, 'gear' | 'plates' | 'capacity'>,
    atLeast = 1,
): Fix[] {
    const holder = plateHolders(plan).find((each) => each.gear === gear);
    if (!holder) {
        return [];
    }
    const count = Math.max(atLeast, lotsOf(plates - capacity, holder.each));
    const what = holder.stated.holds[0]?.what ?? 'plates';
    const changes = rentMore(plan, [{ piece: gear, count, holds: `${holder.each} ${what}` }]);
    return changes ? [{ title: `Rent ${count} ${quoted(gear)}`, safety: 'unsafe', changes }] : [];
}
