/** Temperatures in the scale a chef writes in, compared as trade tables print them: in whole degrees. */
import type { Figure } from './cupboard.js';
import { fromComputing, show, type Quantity } from './quantity.js';
import type { Plan, Pour } from './types.js';

export type Scale = '°C' | '°F';

export function scaleOf(quantity: Quantity): Scale {
    return quantity.unit === '°F' ? '°F' : '°C';
}

/** The scale that most temperatures of the menu are written in: °C where there are as many of either. */
export function scaleOfMenu({ menu }: Pick<Plan, 'menu'>): Scale {
    const pours = (all: readonly Pour[]): (Quantity | undefined)[] =>
        all.flatMap(({ temperature, instead }) => [temperature, ...pours(instead)]);
    const written = (menu?.courses ?? []).flatMap((course) => [
        ...course.dishes.flatMap(({ served, heldAt, leavesPass, cookTo, reheat, pours: own }) => [
            served.temperature,
            ...[heldAt, leavesPass, cookTo, reheat].map((each) => each?.temperature),
            ...pours(own),
        ]),
        ...pours(course.pours),
    ]);
    const fahrenheit = written.filter((each) => each?.unit === '°F').length;
    return fahrenheit > written.filter((each) => each?.unit === '°C').length ? '°F' : '°C';
}

/** In whole degrees of a scale. */
export function degreesIn(scale: Scale, celsius: number): string {
    return `${Math.round(fromComputing(celsius, scale))} ${scale}`;
}

/** In whole degrees of the scale that the menu is written in. */
export function degreesOf(plan: Pick<Plan, 'menu'>, celsius: number): string {
    return degreesIn(scaleOfMenu(plan), celsius);
}

/** `7 to 10 °C`, in that scale. */
export function rangeOf(plan: Pick<Plan, 'menu'>, low: number, high: number): string {
    return `${Number.parseInt(degreesOf(plan, low), 10)} to ${degreesOf(plan, high)}`;
}

/** A limit in the scale of `like`, in whole degrees, such as `57 °C` for a limit of 135 °F. */
export function degreesLike(like: Quantity, celsius: number): string {
    return show(celsius, scaleOf(like));
}

/** `7 to 10 °C`, in the scale of `like`. */
export function rangeLike(like: Quantity, low: number, high: number): string {
    return `${Number.parseFloat(degreesLike(like, low))} to ${degreesLike(like, high)}`;
}

function compared(quantity: Quantity, celsius: number): readonly [value: number, limit: number] {
    const scale = scaleOf(quantity);
    return [fromComputing(quantity.value, scale), Number(fromComputing(celsius, scale).toFixed(0))];
}

/** Whether the figure lies below a limit of good service; 48 °F is not below 9 °C. */
export function isBelow(quantity: Quantity, celsius: number): boolean {
    const [value, limit] = compared(quantity, celsius);
    return value < limit;
}

/** Whether the figure lies above a limit of good service; 48 °F is not above 9 °C. */
export function isAbove(quantity: Quantity, celsius: number): boolean {
    const [value, limit] = compared(quantity, celsius);
    return value > limit;
}

type Bound = 'least' | 'most';

/** A food code's limit in the scale of a figure that is judged by it. */
export interface CodeLimit {
    /** In the scale of the figure judged. */
    readonly limit: number;
    /** The nearest whole degree that keeps it, such as `57 °C`. */
    readonly words: string;
    readonly isBroken: boolean;
}

/**
 * A limit of the local food code in a scale.
 * @param bound whether it is the least or the most allowed
 *
 * A code written in °F prints its limit in whole °C as well (135 °F is 57 °C there): that printed figure counts for who
 * measures in °C. A code written in °C is kept exactly, so 145 °F (62.8 °C) does not keep 63 °C. Source: temperature §9.
 */
export function limitIn(scale: Scale, figure: Figure, bound: Bound): Pick<CodeLimit, 'limit' | 'words'> {
    const exact = fromComputing(bound === 'least' ? figure.low : figure.high, scale);
    const printsOther = figure.size.unit === '°F' && scale === '°C';
    const limit = printsOther ? Math.round(exact) : exact;
    const whole = bound === 'least' ? Math.ceil(limit) : Math.floor(limit);
    return { limit, words: `${whole} ${scale}` };
}

/** Judges a holding temperature by a limit of the local food code. */
export function judgeByCode(quantity: Quantity, figure: Figure, bound: Bound): CodeLimit {
    const scale = scaleOf(quantity);
    const { limit, words } = limitIn(scale, figure, bound);
    const value = fromComputing(quantity.value, scale);
    return { limit, words, isBroken: bound === 'least' ? value < limit : value > limit };
}
