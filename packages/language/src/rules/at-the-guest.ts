/** How the rules about temperatures at the guest speak of them. */
import { degreesLike, rangeLike, scaleOf } from '../plan/degrees.js';
import { fromComputing, show, type Quantity } from '../plan/quantity.js';
import type { Dish } from '../plan/types.js';
import type { Band } from '../service/heat/band.js';
import type { AtGuest } from '../service/heat/types.js';
import { quoted } from './wording.js';

/** `61 °C (57 to 66 °C)`; the range alone where the source gives no middle. */
export function bandLike(like: Quantity, { low, celsius, high }: Band): string {
    const range = rangeLike(like, low, high);
    return celsius === undefined ? range : `${degreesLike(like, celsius)} (${range})`;
}

/** `at \`T9\` 4 min after it is plated`. */
export function whereAndWhen({ journey, minutes }: AtGuest): string {
    return `at ${quoted(journey.table)} ${minutesWords(minutes)} after it is plated`;
}

/** `4.5 min`; whole minutes from ten on. */
export function minutesWords(minutes: number): string {
    return show(minutes, 'min', minutes < 10 ? 1 : 0);
}

/** `3 h`, `2 h 30 min`, `45 min`. */
export function hoursWords(minutes: number): string {
    const [whole, rest] = [Math.floor(Math.round(minutes) / 60), Math.round(minutes) % 60];
    return [...(whole > 0 ? [`${whole} h`] : []), ...(rest > 0 || whole === 0 ? [`${rest} min`] : [])].join(' ');
}

/** `20 to 49 min`, `45 min to 1 h 20 min`. */
export function hoursRange(least: number, most: number): string {
    return most < 60 ? `${Math.round(least)} to ${hoursWords(most)}` : `${hoursWords(least)} to ${hoursWords(most)}`;
}

/** Whether a computed temperature, told in whole degrees, misses what is wanted on its side. */
export function misses(wanted: Quantity, celsius: number, side: 'hot' | 'cold'): boolean {
    const told = Number.parseFloat(degreesLike(wanted, celsius));
    const asked = fromComputing(wanted.value, scaleOf(wanted));
    return side === 'hot' ? told < asked : told > asked;
}

/** The next whole degree on the safe side: up for what is to be hot, down for what is to be cold. */
export function degreesBeyond(like: Quantity, celsius: number, side: 'hot' | 'cold'): string {
    const value = fromComputing(celsius, scaleOf(like));
    const whole = side === 'hot' ? Math.ceil(value - 1e-6) : Math.floor(value + 1e-6);
    return `${whole} ${scaleOf(like)}`;
}

/** The figure that says what a dish starts from. */
export function startOf(dish: Dish): { readonly temperature: Quantity; readonly verb: string } | undefined {
    if (dish.leavesPass) {
        return { temperature: dish.leavesPass.temperature, verb: 'leaves the pass' };
    }
    return dish.heldAt && { temperature: dish.heldAt.temperature, verb: 'is held' };
}
