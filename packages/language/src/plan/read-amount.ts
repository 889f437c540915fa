/** Amounts as cooks write them: `1 lb 4 oz`, `2 1/2 cups`, `500g`, `2-3`, `1½ tbsp`. */
import { MEASURES, tidy, type Amount, type MeasureName } from './kitchen-measures.js';
import { readNumber } from './read-written.js';

/** An amount at the beginning of a text, and what comes after it. */
export interface ReadAmount {
    readonly amount: Amount;
    readonly rest: string;
}

const NUMBER = /^(?:\d{1,6}[ -]\d{1,3}\/\d{1,3}|\d{1,3}\/\d{1,3}|\d{1,6}(?:[.,]\d{1,4})?)(?![\d/])/;
const RANGE = /^ ?(?:-|–|—|to) ?(?=\d)/;
const VULGAR_FRACTION = /[\u00BC-\u00BE\u2150-\u215E]/g;

const MEASURE_CALLED = new Map(
    (Object.keys(MEASURES) as MeasureName[]).flatMap((name) =>
        MEASURES[name].spelt.split(', ').map((words) => [words, name] as const),
    ),
);
/** A measure has three words at most: `imp fl. oz`. */
const WORDS = /^( ?[a-z]+\.?)( ?[a-z]+\.?)?( ?[a-z]+\.?)?/i;
/** Rather more than letters; knowing each of them takes longer than reading a recipe does. */
const LETTER = /^[a-z\d\u00AA-\uFFFF]/i;

/** One space between words, and `½` as ` 1/2`. */
export function plainAmounts(text: string): string {
    return text
        .replace(VULGAR_FRACTION, (sign) => ` ${sign.normalize('NFKD')}`)
        .replaceAll('\u2044', '/')
        .replace(/(\d) ?\/ ?(\d)/g, '$1/$2')
        .replace(/\s+/g, ' ')
        .trim();
}

/**
 * Reads the amount a text begins with: figures of one system added up, or a range.
 * @param text as `plainAmounts` leaves it
 * @returns nothing where the text begins with no amount, with zero, or with a figure that can be read in two ways (`1,200`)
 */
export function readAmount(text: string): ReadAmount | undefined {
    const first = figureAt(text);
    if (!first) {
        return undefined;
    }
    const range = RANGE.exec(first.rest);
    const upper = range && figureAt(first.rest.slice(range[0].length));
    if (upper && upper.value > first.value) {
        const measured = measureAt(upper.rest);
        return amountOf(first.value, upper.value, measured?.name, measured?.rest ?? upper.rest);
    }
    const measured = measureAt(first.rest);
    if (!measured) {
        return amountOf(first.value, first.value, undefined, first.rest);
    }
    const ranged = rangeWithUnits(first.value, measured);
    return ranged ?? added(first.value, measured);
}

/** The whole text, or nothing. */
export function readWholeAmount(text: string): Amount | undefined {
    const read = readAmount(plainAmounts(text));
    return read?.rest.trim() === '' ? read.amount : undefined;
}

interface Measured {
    readonly name: MeasureName;
    readonly rest: string;
}

/** `1.5 kg to 2 kg`, `750 g - 1 kg`. */
function rangeWithUnits(low: number, measured: Measured): ReadAmount | undefined {
    const range = RANGE.exec(measured.rest);
    const upper = range && figureAt(measured.rest.slice(range[0].length));
    const unit = upper && measureAt(upper.rest);
    if (!upper || !unit || MEASURES[unit.name].system !== MEASURES[measured.name].system) {
        return undefined;
    }
    const [from, to] = [tidy(low * MEASURES[measured.name].size), tidy(upper.value * MEASURES[unit.name].size)];
    return to > from
        ? { amount: { low: from, high: to, system: MEASURES[unit.name].system, measure: unit.name }, rest: unit.rest }
        : undefined;
}

/** `1 lb 4 oz`, `1 cup plus 2 tbsp`: smaller measures of the same system are added. */
function added(value: number, measured: Measured): ReadAmount {
    const { system } = MEASURES[measured.name];
    let total = value * MEASURES[measured.name].size;
    let { name, rest } = measured;
    for (;;) {
        const joint = /^(?: ?\+ ?|,? (?:and |plus )?)(?=\d)/.exec(rest);
        const figure = joint && figureAt(rest.slice(joint[0].length));
        const next = figure && measureAt(figure.rest);
        if (
            !figure ||
            !next ||
            MEASURES[next.name].system !== system ||
            MEASURES[next.name].size >= MEASURES[name].size
        ) {
            break;
        }
        total += figure.value * MEASURES[next.name].size;
        ({ name, rest } = next);
    }
    return { amount: { low: tidy(total), high: tidy(total), system, measure: measured.name }, rest };
}

function amountOf(low: number, high: number, measure: MeasureName | undefined, rest: string): ReadAmount {
    const { system, size } = measure ? MEASURES[measure] : { system: 'count' as const, size: 1 };
    return { amount: { low: tidy(low * size), high: tidy(high * size), system, measure }, rest };
}

function figureAt(text: string): { readonly value: number; readonly rest: string } | undefined {
    const written = NUMBER.exec(text)?.[0];
    if (written === undefined) {
        return undefined;
    }
    const { value = 0, suggestions } = readNumber(written.replace(/(\d)-(\d)/, '$1 $2'));
    return value > 0 && suggestions.length < 2 ? { value, rest: text.slice(written.length) } : undefined;
}

function measureAt(text: string): Measured | undefined {
    const words = WORDS.exec(text)?.slice(1) ?? [];
    for (let count = words.length; count > 0; count -= 1) {
        const taken = words.slice(0, count).join('');
        const name = MEASURE_CALLED.get(taken.toLowerCase().replace(/[. ]+/g, ' ').trim());
        if (name !== undefined && !LETTER.test(text.slice(taken.length))) {
            return { name, rest: text.slice(taken.length) };
        }
    }
    return undefined;
}
