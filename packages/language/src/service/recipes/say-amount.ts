import { containerWord } from '../../plan/container-words.js';
import type { Amount, MeasureName } from '../../plan/kitchen-measures.js';
import { measurable, type Portioned } from './rounding.js';

/**
 * An amount as a cook reads it, rounded as `measurable` does: `4 lb 5 1/2 oz`, `1.2 to 1.5 kg`, `27 cans`.
 * @param container what is counted, where that has a word of its own
 */
export function sayAmount({ low, high, system, measure }: Amount, container?: string): string {
    const [from, to] = [measurable(low, system, measure), measurable(high, system, measure)];
    const upper = sayPortioned(to, container);
    if (sayPortioned(from, container) === upper) {
        return upper;
    }
    const isOneUnit = from.length === 1 && to.length === 1 && from[0]!.measure === to[0]!.measure;
    return `${isOneUnit ? figure(from[0]!.count, from[0]!.measure) : sayPortioned(from, container)} to ${upper}`;
}

const LONG_NAMES: Partial<Record<MeasureName, string>> = { cup: 'cups' };

/** Parts that are rounded already: `4 lb 5 1/2 oz`, `11.8 kg`, `27 cans`, `17`. */
export function sayPortioned(parts: Portioned, container?: string): string {
    return parts
        .map(({ count, measure }) => {
            const word = measure ?? (container === undefined ? undefined : containerWord(container, count));
            const unit = measure !== undefined && count > 1 ? (LONG_NAMES[measure] ?? word) : word;
            return [figure(count, measure), unit].filter((each) => each !== undefined).join(' ');
        })
        .join(' ');
}

const METRIC: readonly (MeasureName | undefined)[] = ['g', 'kg', 'ml', 'l'];
const QUARTERS = ['', '1/4', '1/2', '3/4'];

/** Quarters as fractions, but decimals where scales have them. */
function figure(count: number, measure: MeasureName | undefined): string {
    const quarters = count * 4;
    if (METRIC.includes(measure) || !Number.isInteger(quarters) || Number.isInteger(count)) {
        // Never `1e-7`.
        return count < 1e-6 ? count.toFixed(12).replace(/0+$/, '') : String(count);
    }
    const whole = Math.floor(count);
    return [whole === 0 ? '' : String(whole), QUARTERS[quarters % 4]].filter((part) => part !== '').join(' ');
}
