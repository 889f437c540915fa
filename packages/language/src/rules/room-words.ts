import { show, type Quantity, type UnitName } from '../plan/quantity.js';
import type { Tables } from '../plan/types.js';

/** How messages speak of tables, and of lengths in the units in which a room is written. */

const DIGITS: Partial<Record<UnitName, number>> = { inch: 2, ft: 2, m: 2, cm: 1, mm: 0 };

/** A length in the unit of another figure, as fine as that unit is used: `18.85 inch`, `479 mm`. */
export function lengthLike(millimetres: number, { unit, dimension }: Quantity): string {
    const shown = unit !== undefined && dimension === 'length' ? unit : 'mm';
    return show(millimetres, shown, DIGITS[shown] ?? 1);
}

/** `T1 to T9`, or one table's name. */
export function nameOfTables({ first, last }: Tables): string {
    return last ? `${first.name} to ${last.name}` : first.name;
}

/** `At each of \`T1 to T9\``, `At \`K\``. */
export function atTables(tables: Tables): string {
    return `At ${tables.names.length > 1 ? 'each of ' : ''}\`${nameOfTables(tables)}\``;
}
