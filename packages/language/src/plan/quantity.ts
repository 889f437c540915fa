import convert, { type Unit as ConvertUnit } from 'convert';
import type { Origin } from './origin.js';

/** What a figure measures. The computing unit of each: °C, mm, m², ml, g, min, share (0–1), a bare count. */
export type Dimension = 'temperature' | 'length' | 'area' | 'volume' | 'mass' | 'time' | 'share' | 'count';

/** A figure with its unit. `value` is in the computing unit of its dimension; `written` is what the user typed. */
export interface Quantity {
    readonly value: number;
    readonly dimension: Dimension;
    readonly written: string;
    /** The unit word as the language spells it; absent where none was written (a finding of its own). */
    readonly unit?: UnitName;
    readonly origin: Origin;
}

/** A unit as the language spells it: `°C`, `fl oz`, `kg`. */
export type UnitName = keyof typeof UNITS;

interface UnitSpec {
    readonly dimension: Dimension;
    /** Name in the conversion library; absent where the computing unit itself is meant. */
    readonly library?: ConvertUnit;
}

/** Every unit of the language. Factors come from the library `convert` (checked against NIST Handbook 44 in the tests). */
export const UNITS = {
    '°C': { dimension: 'temperature', library: 'C' },
    '°F': { dimension: 'temperature', library: 'F' },
    mm: { dimension: 'length', library: 'mm' },
    cm: { dimension: 'length', library: 'cm' },
    m: { dimension: 'length', library: 'm' },
    inch: { dimension: 'length', library: 'inch' },
    ft: { dimension: 'length', library: 'ft' },
    'sq ft': { dimension: 'area', library: 'ft2' },
    'sq m': { dimension: 'area', library: 'm2' },
    ml: { dimension: 'volume', library: 'ml' },
    cl: { dimension: 'volume', library: 'cl' },
    l: { dimension: 'volume', library: 'l' },
    'fl oz': { dimension: 'volume', library: 'fl oz' },
    'imp fl oz': { dimension: 'volume', library: 'imp fl oz' },
    g: { dimension: 'mass', library: 'g' },
    kg: { dimension: 'mass', library: 'kg' },
    oz: { dimension: 'mass', library: 'oz' },
    lb: { dimension: 'mass', library: 'lb' },
    s: { dimension: 'time', library: 's' },
    min: { dimension: 'time', library: 'min' },
    h: { dimension: 'time', library: 'h' },
    '%': { dimension: 'share' },
} as const satisfies Record<string, UnitSpec>;

const COMPUTING_UNIT = { temperature: 'C', length: 'mm', area: 'm2', volume: 'ml', mass: 'g', time: 'min' } as const;

/** Twelve significant digits, and zero where only the noise of binary fractions is left: 32 °F are 0 °C. */
function tidy(value: number): number {
    return Math.abs(value) < 1e-12 ? 0 : Number(value.toPrecision(12));
}

/** @returns `value` in the computing unit of the unit's dimension (°C, mm, m², ml, g, min, share 0–1). */
export function toComputing(value: number, unit: UnitName): number {
    const spec: UnitSpec = UNITS[unit];
    if (spec.dimension === 'share') {
        return tidy(value / 100);
    }
    return tidy(convertBetween(value, spec.library!, COMPUTING_UNIT[spec.dimension as keyof typeof COMPUTING_UNIT]));
}

/** @returns a figure of the unit's dimension, given in its computing unit, in `unit`. */
export function fromComputing(value: number, unit: UnitName): number {
    const spec: UnitSpec = UNITS[unit];
    if (spec.dimension === 'share') {
        return tidy(value * 100);
    }
    return tidy(convertBetween(value, COMPUTING_UNIT[spec.dimension as keyof typeof COMPUTING_UNIT], spec.library!));
}

function convertBetween(value: number, from: string, to: string): number {
    // The two units always measure the same thing here; the library's types can't see that.
    return (convert as (value: number, unit: string) => { to(unit: string): number })(value, from).to(to);
}

/** The unit a figure is shown in when the chef wrote none nearby. */
export const DISPLAY_UNIT: Record<Exclude<Dimension, 'count'>, UnitName> = {
    temperature: '°C',
    length: 'mm',
    area: 'sq m',
    volume: 'ml',
    mass: 'g',
    time: 'min',
    share: '%',
};

/**
 * A figure for a message or a fix, in `unit` and rounded to `digits` decimals (none by default), such as `74 °C`.
 * @param value in the computing unit of the unit's dimension
 */
export function show(value: number, unit: UnitName, digits = 0): string {
    const shown = Number(fromComputing(value, unit).toFixed(digits));
    return `${Object.is(shown, -0) ? 0 : shown} ${unit}`;
}
