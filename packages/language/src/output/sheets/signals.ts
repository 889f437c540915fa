import { plainChoice } from './custom-words.js';
import type { Plan } from '../../plan/types.js';

/** What guests say without a word, by the house's customs, and what the server does then. */
export function guestSignals({ customs, menu }: Plan): string[] {
    const first =
        customs.clearing.value === 'whole-table' ? 'clear when everyone at the table has' : 'clear as each guest has';
    return [
        `Finished: knife and fork ${plainChoice('finished', customs)}; ${first}.`,
        `Back soon: napkin ${plainChoice('back-soon', customs)}; leave the plate.`,
        ...(menu?.coffee ? [`Coffee: ${plainChoice('coffee-sign', customs)}.`] : []),
    ];
}
