import type { CancellationToken, WorkDoneProgressReporter } from 'vscode-languageserver';
import { askNextRule, type Checked } from '../check.js';
import { rules } from '../rules/index.js';
import { replicatingService } from '../service/run/run.js';
import type { Folder } from './folder.js';
import { nextTurn } from './next-turn.js';

/** Who waits for an answer: may want no more of it, and be told how far it is. */
export interface Asker {
    readonly token: CancellationToken;
    readonly progress: WorkDoneProgressReporter;
}

/** Work in steps: after each, the share that is done, 0 … 1. */
export type Steps = Iterable<number>;

/**
 * Takes one step a turn, so that nothing else has to wait for them all, telling how far they are.
 * @returns whether they were all taken; false where the asker has stopped them
 */
export async function inSteps(title: string, steps: Steps, { token, progress }: Asker): Promise<boolean> {
    progress.begin(title, 0, undefined, true);
    try {
        for (const share of steps) {
            progress.report(Math.round(share * 100));
            await nextTurn();
            if (token.isCancellationRequested) {
                return false;
            }
        }
        return true;
    } finally {
        progress.done();
    }
}

/** Everything that plans say, one plan when the other is done: the evenings that they ask to be run again, then every rule. */
export function* workingOut(...plans: readonly Checked[]): Steps {
    const works = plans.flatMap((checked) => [
        ...(checked.plan.event?.replications ? [() => replicating(checked)] : []),
        () => judging(checked),
    ]);
    for (const [index, work] of works.entries()) {
        for (const share of work()) {
            yield (index + share) / works.length;
        }
    }
}

function replicating({ plan, service }: Checked): Steps {
    return replicatingService(plan, service) ?? [];
}

function* judging(checked: Checked): Steps {
    for (let asked = 1; !askNextRule(checked); asked++) {
        yield Math.min(1, asked / rules.length);
    }
}

/** Whether a plan that was worked out in steps is still what its texts say. */
export function isCurrent(folder: Folder, checked: Checked): boolean {
    return folder.isKnown(checked.file) && folder.checked(checked.file) === checked;
}

/** What is answered where it is not. */
export const CHANGED_MEANWHILE = { refused: 'The plan was changed while this was worked out. Ask again.' };
