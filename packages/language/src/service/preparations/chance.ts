/** Whether tasks of uncertain length are done in time: PERT, which takes their sum as normal (quantities §9). */
import { chanceWithin } from '../run/three-point.js';
import type { Chain } from './task-network.js';
import type { Chance } from './types.js';

/** Halvings of the interval that the answer lies in: to less than a second in any evening. */
const HALVINGS = 50;

/** Time beyond the mean that is wanted for a chance, min; 0 where nothing is uncertain, or even odds will do. @param chance 0–1 */
export function timeToSpare(chance: number, variance: number): number {
    let [low, high] = [0, 10 * Math.sqrt(variance)];
    if (high === 0 || chanceWithin(0, 0, variance) >= chance) {
        return 0;
    }
    for (let halving = 0; halving < HALVINGS; halving++) {
        const middle = (low + high) / 2;
        if (chanceWithin(middle, 0, variance) < chance) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return high;
}

/** The chance that a chain of tasks is done in the time there is. */
export function chanceOf(chain: Chain, available?: number): Chance {
    const { mean, variance } = chain;
    const inTime = available === undefined ? undefined : chanceWithin(available + NOISE, mean, variance);
    return { mean, variance, available, inTime };
}

/** Minutes that binary fractions lose. */
const NOISE = 1e-6;
