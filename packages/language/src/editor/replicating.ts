import type { CancellationToken, WorkDoneProgressReporter } from 'vscode-languageserver';
import type { Checked } from '../check.js';
import { replicatingService } from '../service/run/run.js';

/** The next turn of the event loop, when what has arrived meanwhile has been read: an edit, or the wish to stop. */
const nextTurn = (): Promise<void> =>
    new Promise((resolve) => {
        if ('setImmediate' in globalThis) {
            setImmediate(resolve);
        } else {
            setTimeout(resolve, 0);
        }
    });

/**
 * Runs the evenings that a plan asks for one in a turn, so that nothing else has to wait for them, telling how far they are.
 * @returns whether they were all run; false where the client has stopped them
 */
export async function replicate(
    { plan, service }: Checked,
    token: CancellationToken,
    progress: WorkDoneProgressReporter,
): Promise<boolean> {
    const steps = replicatingService(plan, service);
    if (!steps) {
        return true;
    }
    progress.begin('Running the evening again', 0, undefined, true);
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
