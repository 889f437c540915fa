import { parseText } from '../plan/read-text.js';
import { cursorAt } from './cursor.js';
import { nextAfter } from './next-words.js';
import type { CoverServices } from './services.js';

/** What most is written in, each cut off where a word, a name, a figure or a unit is to come. */
const BEGUN = [
    '',
    'menu {\n    course soup "Broth" {\n        ',
    'menu {\n    course soup "Broth" {\n        served in ',
    'menu {\n    course soup "Broth" {\n        served in soup-bowl at ',
    'menu {\n    course soup "Broth" {\n        served in soup-bowl at 64 ',
    'menu {\n    course main {\n        dish "Duck" is ',
    'house "Hall" {\n    own 12 ',
    'room "Hall" 18 m by 11 m {\n    table T1: ',
    'seating {\n    "A. Reed" at ',
];

/**
 * The framework builds its parsers when they are first asked: here, once the first findings are told and before anybody has
 * typed a word, instead of behind the first key.
 */
export function warmUp(services: CoverServices): void {
    for (const text of BEGUN) {
        nextAfter(cursorAt(text, text.length).near, services);
        parseText(text);
    }
}
