import type { Otherwise } from 'underliner-language';
import { CannotRun } from './cannot-run.js';

/** How far a running evening has come, from `--at` and `--done`; nothing where neither is given. @throws CannotRun where one is */
export function runningEvening(at: number | undefined, done: string | undefined): Otherwise['underway'] {
    if (at === undefined && done === undefined) {
        return undefined;
    }
    if (at === undefined || done === undefined) {
        throw new CannotRun('A running evening wants both: `--at 20:10 --done soup`.');
    }
    return { minutes: at, done };
}
