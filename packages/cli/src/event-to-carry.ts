import { check, type Checked } from 'underliner-language';
import { CannotRun } from './cannot-run.js';
import type { ColorChoice } from './colors.js';
import { CANNOT_RUN, tellFaults } from './faults.js';
import type { Input } from './inputs.js';
import { mustNotReplace, type MadeOptions } from './made.js';
import { writeTalk } from './output.js';
import { tellErrors } from './report/errors.js';

export interface CarryOptions extends MadeOptions {
    readonly despiteErrors?: boolean;
    readonly color: ColorChoice;
}

/**
 * Checks the plan of an event that something is to be made of, and tells the errors in it.
 * @param thing what is made, in a sentence: `list`
 * @returns the exit code where it is not to be made
 * @throws CannotRun where the file holds no event, or where the thing would be written over the plan
 */
export function eventToCarry(input: Input, options: CarryOptions, thing: string): Checked | number {
    mustNotReplace(input, options, thing);
    const checked = check(input.file, input.files);
    if (tellFaults(input.shown, checked) > 0) {
        return CANNOT_RUN;
    }
    if (!checked.plan.event) {
        throw new CannotRun(`\`${input.shown}\` holds no event. A ${thing} is made of the file of an event.`);
    }
    const errors = tellErrors(input, checked, options.color);
    if (errors === undefined) {
        return checked;
    }
    writeTalk(
        options.despiteErrors
            ? `\n${errors}: the ${thing} was made despite them.\n`
            : `\n${errors}: no ${thing} was made. \`--despite-errors\` makes it all the same.\n`,
    );
    return options.despiteErrors ? checked : 1;
}
