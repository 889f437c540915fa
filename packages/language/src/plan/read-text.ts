import { parseText } from '../grammar/parse.js';
import { readFile } from './read.js';
import type { Reading } from './types.js';

export { parseText } from '../grammar/parse.js';
export { readFile } from './read.js';

/** Parses and reads one file. */
export function readText(file: string, text: string): Reading {
    return readFile(file, text, parseText(text));
}
