import type { Checked } from 'underliner-language';
import { writeTalk } from './output.js';

/** Exit code for wrong usage, an unreadable file, or a fault of ours. Findings are 1. */
export const CANNOT_RUN = 2;

/** Says that something broke which the user can't mend, in two lines; the trace is for who looks into it. */
export function tellFault(where: string, failure: unknown): void {
    const what = failure instanceof Error ? failure.message : String(failure);
    writeTalk(`underliner: ${where}This is a fault in Underliner, not in your files: ${what}\n`);
    if (process.env.UNDERLINER_TRACE && failure instanceof Error) {
        writeTalk(`${failure.stack}\n`);
    } else {
        writeTalk('Please report it, with what it says when UNDERLINER_TRACE=1 is set.\n');
    }
}

/** A rule that broke has not been checked: its silence must not pass for a clean plan. @returns how many there are */
export function tellFaults(shown: string, { broken }: Checked): number {
    for (const { rule, error } of broken) {
        tellFault(`The rule \`${rule}\` did not get through \`${shown}\`. `, error);
    }
    return broken.length;
}
