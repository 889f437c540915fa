import { fromComputing, type Quantity, type UnitName } from '../plan/quantity.js';

/** The step in which a server or a cook measures out. */
const STEP: Partial<Record<UnitName, number>> = { ml: 5, cl: 0.5, l: 0.01, 'fl oz': 0.5, 'imp fl oz': 0.5 };

/**
 * The largest amount up to `most` that can be measured out, in the unit of `like`, such as `6.5 fl oz`.
 * @param most ml
 */
export function measuredBelow(most: number, like: Quantity): string {
    const unit = like.unit ?? 'ml';
    const step = STEP[unit] ?? 1;
    const steps = Math.floor(fromComputing(most, unit) / step + 1e-9);
    return `${Number((Math.max(steps, 1) * step).toFixed(2))} ${unit}`;
}
