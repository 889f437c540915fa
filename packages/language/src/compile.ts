import { check, type Checked, type CheckOptions } from './check.js';
import type { Files } from './plan/files.js';
import { planText } from './output/plan-json.js';

/** A plan compiled, or refused. */
export interface Compiled {
    readonly checked: Checked;
    /** The JSON service plan; absent where findings of error severity stand in the way. */
    readonly text?: string;
}

/** How a plan is compiled. */
export interface CompileOptions extends CheckOptions {
    /** Compile all the same, and mark the plan. */
    readonly despiteErrors?: boolean;
}

/**
 * Compiles one file, with the files it uses, to its JSON service plan. Refuses a plan with errors unless told otherwise.
 * @param file workspace-relative path; the caller has made sure that it can be read
 * @param files where it and what it uses, its recipes among them, are read
 */
export function compile(file: string, files: Files, options: CompileOptions = {}): Compiled {
    const checked = check(file, files, options);
    const hasErrors = checked.findings.some((finding) => finding.severity === 'error');
    if (hasErrors && !options.despiteErrors) {
        return { checked };
    }
    return { checked, text: planText(checked, hasErrors) };
}
