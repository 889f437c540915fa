import { compile } from 'underliner-language';
import { CannotRun } from './cannot-run.js';
import type { ColorChoice } from './colors.js';
import { CANNOT_RUN, tellFaults } from './faults.js';
import { oneInput } from './inputs.js';
import { mustNotReplace, writeMade, type MadeOptions } from './made.js';
import { writeTalk } from './output.js';
import { tellErrors } from './report/errors.js';

export interface CompileOptions extends MadeOptions {
    readonly despiteErrors?: boolean;
    readonly stdinName?: string;
    readonly root?: string;
    readonly color: ColorChoice;
}

/** `underliner compile`: the service plan of one event as JSON. Writes nothing while something is wrong. */
export function runCompile(path: string, options: CompileOptions): number {
    const input = oneInput(path, options);
    mustNotReplace(input, options, 'plan');
    const { checked, text } = compile(input.file, input.files, { despiteErrors: options.despiteErrors ?? false });
    if (tellFaults(input.shown, checked) > 0) {
        return CANNOT_RUN;
    }
    if (!checked.plan.event) {
        throw new CannotRun(
            `\`${input.shown}\` holds no event. Compile the file of an event; a house, a room or a cupboard is used by one.`,
        );
    }
    const errors = tellErrors(input, checked, options.color);
    if (errors !== undefined) {
        writeTalk(
            text === undefined
                ? `\n${errors}: no plan was written. \`--despite-errors\` writes one that says so.\n`
                : `\n${errors}: the plan is marked as made despite them.\n`,
        );
    }
    if (text === undefined) {
        return 1;
    }
    writeMade(text, options);
    return 0;
}
