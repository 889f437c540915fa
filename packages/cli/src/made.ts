import { resolve } from 'node:path';
import { CannotRun } from './cannot-run.js';
import type { Input } from './inputs.js';
import { writeResult } from './output.js';
import { writeWhole } from './write-file.js';

/** Where what was made is to be written: a file, or stdout where none is named or `-` is. */
export interface MadeOptions {
    readonly output?: string;
}

/**
 * @param thing what is made, in a sentence: `list`
 * @throws CannotRun where it would be written over the plan it is made of
 */
export function mustNotReplace(input: Input, { output }: MadeOptions, thing: string): void {
    if (output !== undefined && resolve(output) === input.path) {
        throw new CannotRun(
            `The ${thing} would take the place of its own text, \`${input.shown}\`. Give -o another name.`,
        );
    }
}

/** Writes what was made, to a file whole or not at all. @param made text, or the bytes of a picture */
export function writeMade(made: string | Uint8Array, { output = '-' }: MadeOptions): void {
    if (output === '-') {
        writeResult(made);
    } else {
        writeWhole(resolve(output), made, output);
    }
}
