import { parseText } from '../grammar/parse.js';
import { parsePlainly } from '../grammar/plain-parser.js';
import { readFile } from './read.js';
import type { Reading } from './types.js';

export { parseText } from '../grammar/parse.js';
export { readFile } from './read.js';

/** Parses and reads one file. */
export function readText(file: string, text: string): Reading {
    const tree = parsePlainly(text);
    return readFile(file, text, tree ? { tree, problems: [] } : parseText(text));
}
