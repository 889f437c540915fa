/**
 * The working factor of a recipe: how many times its batch is to be made. Source: AFRS (quantities 3.2), which takes a card for
 * about 100 portions and divides what is needed by it.
 */
import { tidy } from '../../plan/kitchen-measures.js';

/**
 * By portions: needed over yielded. 348 of a card for 100 are 3.48.
 * @param needed portions of the card's size, > 0; 348 of 3 oz from a card of 4 oz count as 261
 * @param yielded portions of one batch, > 0
 * @returns times the batch, never short: see `workingFactor`
 */
export function factorForPortions(needed: number, yielded: number): number {
    return workingFactor(tidy(needed / yielded));
}

/**
 * By what is in the house: 102 lb of an ingredient of which a batch takes 30 lb make it 3.4 times.
 * @param available of the ingredient, > 0
 * @param perBatch what one batch takes of it, in the same unit, > 0
 * @returns times the batch, rounded down to hundredths so that the ingredient lasts
 */
export function factorForStock(available: number, perBatch: number): number {
    return Math.floor(tidy((available / perBatch) * 100)) / 100;
}

/**
 * A factor a cook can work with: rounded up to hundredths, or to three figures where it is below one, so that the batch never
 * falls short and is at most one part in a hundred too large.
 */
export function workingFactor(exact: number): number {
    const steps = 10 ** Math.max(2, 2 - Math.floor(Math.log10(exact)));
    return tidy(Math.ceil(tidy(exact * steps)) / steps);
}
