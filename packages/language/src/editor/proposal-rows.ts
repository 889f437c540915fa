import type { Checked } from '../check.js';
import type { Kind, Piece } from '../plan/cupboard.js';
import { customSpecs } from '../plan/customs.js';
import { DISPLAY_UNIT, show } from '../plan/quantity.js';
import { figureText, valueText } from './about-figure.js';

// The few words with which each row of the proposals tells its name from the others: a size, a figure, a source.

/** Of the measures of a piece, the one it is told by. */
const TOLD_BY = ['holds', 'across', 'length', 'width'];

/** `240 ml, 40 owned`. @param more what else matters where it is wanted */
export function pieceRow({ measures }: Piece, more: readonly string[]): string | undefined {
    const measure = TOLD_BY.find((each) => measures[each] !== undefined);
    return joined([...(measure === undefined ? [] : [figureText(measures[measure]!)]), ...more]);
}

/** How warm the guest wants it, and how much: `60 to 70 °C, 240 ml`. */
export function kindRow(kind: Kind | undefined): string | undefined {
    const { range, portion } = kind ?? {};
    const degrees = (celsius: number): string => show(celsius, DISPLAY_UNIT.temperature, 0);
    return joined([
        ...(range ? [span(degrees(range.low), degrees(range.high))] : []),
        ...(portion ? [span(portion.low.written, portion.high.written)] : []),
    ]);
}

/** What the house lays: `60 °C`, `left`. */
export function customRow(name: string, { plan }: Checked): string | undefined {
    const spec = customSpecs.find((each) => each.name === name);
    return spec && valueText(spec, plan.customs[spec.name].value);
}

/** `60 to 70 °C`: a unit that both have is said once. */
function span(low: string, high: string): string {
    const [figure, unit] = [low.slice(0, low.indexOf(' ')), low.slice(low.indexOf(' '))];
    return low === high ? low : `${high.endsWith(unit) ? figure : low} to ${high}`;
}

function joined(parts: readonly string[]): string | undefined {
    return parts.length > 0 ? parts.join(', ') : undefined;
}
