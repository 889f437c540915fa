/** Dates, times and numbers as chefs write them: what each means, and the form the language keeps. */
import { toComputing } from './quantity.js';
import type { Written } from './types.js';

type Form = Written['form'];

export interface Understood<T> {
    /** Absent where the text names nothing real. */
    readonly value?: T;
    readonly form?: Form;
    readonly suggestions: readonly string[];
}

const plain = <T>(value: T): Understood<T> => ({ value, suggestions: [] });

/** Reads `12`, `-10`, `12.5`; also `12,5`, `5 1/2` and `1/2`, each with the form to keep. */
export function readNumber(text: string): Understood<number> {
    const written = text.replace('\u2212', '-');
    const fraction = /^(-?\d+(?:[.,]\d+)?)?[ \t]*(\d+)\/(\d+)$/.exec(written);
    if (fraction) {
        const [, whole = '0', top, bottom] = fraction;
        if (Number(bottom) === 0) {
            return { form: 'fraction', suggestions: [] };
        }
        const part = Number(top) / Number(bottom);
        const base = Number(whole.replace(',', '.'));
        const value = base < 0 ? base - part : base + part;
        return { value, form: 'fraction', suggestions: [String(Number(value.toFixed(3)))] };
    }
    if (written.includes(',')) {
        const value = Number(written.replace(',', '.'));
        // `1,200` may be twelve hundred or one and a fifth: offer both, take neither for granted.
        const asThousands = /^-?\d{1,3},\d{3}$/.test(written) ? [written.replace(',', '')] : [];
        return { value, form: 'decimal-comma', suggestions: [...asThousands, String(value)] };
    }
    return plain(Number(written));
}

const two = (number: number): string => String(number).padStart(2, '0');
const clock = (hours: number, minutes: number): string => `${two(hours)}:${two(minutes)}`;
const isClock = (hours: number, minutes: number): boolean => hours < 24 && minutes < 60;

/** Reads `19:00` as minutes since midnight; also `7:00 pm`, `7 pm`, `19h00`, `19.00` and a bare `19`. */
export function readClock(text: string): Understood<number> {
    const twelve = /^(\d{1,2})(?::(\d{2}))?[ \t]*([aApP])\.?[mM]$/.exec(text);
    if (twelve) {
        const hour = Number(twelve[1]);
        const minutes = Number(twelve[2] ?? 0);
        if (hour < 1 || hour > 12 || minutes > 59) {
            return { form: 'no-such-time', suggestions: [] };
        }
        const hours = (hour % 12) + (twelve[3]!.toLowerCase() === 'p' ? 12 : 0);
        return { value: hours * 60 + minutes, form: 'twelve-hour-time', suggestions: [clock(hours, minutes)] };
    }
    const parts = /^(\d{1,2})([:hH.])(\d{2})$/.exec(text);
    if (parts) {
        const hours = Number(parts[1]);
        const minutes = Number(parts[3]);
        if (!isClock(hours, minutes)) {
            return { form: 'no-such-time', suggestions: [] };
        }
        const value = hours * 60 + minutes;
        return parts[2] === ':' ? plain(value) : { value, form: 'time-with-h', suggestions: [clock(hours, minutes)] };
    }
    const hour = readNumber(text).value ?? NaN;
    if (!Number.isInteger(hour) || hour < 0 || hour > 23) {
        return { form: 'no-such-time', suggestions: [] };
    }
    const evening = hour > 0 && hour < 12 ? [clock(hour + 12, 0)] : [];
    return { value: hour * 60, form: 'bare-time', suggestions: [...evening, clock(hour, 0)] };
}

/** Reads a length of time: `15min`, `15 min`, `1.5 h`. @returns minutes, or `undefined` where it is none */
export function readMinutes(text: string): number | undefined {
    const [, amount, unit] = /^(\d+(?:\.\d+)?)[ \t]*(min|h)$/.exec(text) ?? [];
    return amount === undefined ? undefined : toComputing(Number(amount), unit === 'h' ? 'h' : 'min');
}

/** Reads a temperature: `26C`, `26 °C`, `79F`. @returns °C, or `undefined` where it is none */
export function readCelsius(text: string): number | undefined {
    const [, amount, unit] = /^(-?\d+(?:\.\d+)?)[ \t]*\u00B0?[ \t]*(C|F)$/i.exec(text) ?? [];
    return amount === undefined ? undefined : toComputing(Number(amount), unit!.toUpperCase() === 'F' ? '°F' : '°C');
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** The ISO form of a day of the Gregorian calendar, or `undefined` where there is no such day. */
function isoDay(year: number, month: number, day: number): string | undefined {
    const date = new Date(Date.UTC(year, month - 1, day));
    const isReal = date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
    return isReal ? `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}` : undefined;
}

function dated(form: Form | undefined, days: readonly (string | undefined)[]): Understood<string> {
    const real = [...new Set(days.filter((day) => day !== undefined))];
    if (real.length === 0) {
        return { form: 'no-such-day', suggestions: [] };
    }
    // A date that can be read in two ways has no value until the writer says which.
    return { value: real.length === 1 ? real[0] : undefined, form, suggestions: form ? real : [] };
}

/** Reads `2026-10-17`; also `17 October 2026`, `October 17, 2026`, `2026/10/17` and `17/10/2026`. */
export function readDate(text: string): Understood<string> {
    const yearFirst = /^(\d{4})([-/.])(\d{1,2})[-/.](\d{1,2})$/.exec(text);
    if (yearFirst) {
        const day = isoDay(Number(yearFirst[1]), Number(yearFirst[3]), Number(yearFirst[4]));
        return dated(day === text ? undefined : 'date-with-slashes', [day]);
    }
    const yearLast = /^(\d{1,2})[/.](\d{1,2})[/.](\d{2,4})$/.exec(text);
    if (yearLast) {
        const [first, second, last] = yearLast.slice(1).map(Number) as [number, number, number];
        const year = last < 100 ? 2000 + last : last;
        return dated('date-with-slashes', [isoDay(year, second, first), isoDay(year, first, second)]);
    }
    const words =
        /^(?:(\d{1,2})(?:st|nd|rd|th)?[ \t]+([A-Za-z]{3})[a-z]*|([A-Za-z]{3})[a-z]*[ \t]+(\d{1,2}))\.?,?[ \t]+(\d{4})$/.exec(
            text,
        );
    if (words) {
        const month = MONTHS.indexOf((words[2] ?? words[3]!).toLowerCase()) + 1;
        return dated('date-in-words', [isoDay(Number(words[5]), month, Number(words[1] ?? words[4]))]);
    }
    return { form: 'no-such-day', suggestions: [] };
}
