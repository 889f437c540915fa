import { readText } from './plan/read-text.js';
import type { Reading } from './plan/types.js';

/**
 * Reads one text as plain data, without the files it uses and without judging it. Never throws: what can't be read is told in
 * `syntax`, and everything beside it is read all the same.
 * @param file the name that every `Origin` of the reading carries, such as `events/supper.cover`
 */
export function parse(file: string, text: string): Reading {
    return readText(file, text);
}
