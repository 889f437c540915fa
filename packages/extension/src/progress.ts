import { CancellationTokenSource, ProgressLocation, window, type CancellationToken } from 'vscode';

/** Long enough that nothing flickers where the answer comes at once. */
const PATIENCE_MILLISECONDS = 400;

/**
 * Shows that something is being worked out, where it takes a while, and lets it be stopped.
 * @returns nothing where it was stopped
 */
export async function withProgress<Answer>(
    title: string,
    work: (token: CancellationToken) => Promise<Answer>,
): Promise<Answer | undefined> {
    const source = new CancellationTokenSource();
    const working = work(source.token).catch((failure: unknown) => {
        if (source.token.isCancellationRequested) {
            return undefined;
        }
        throw failure;
    });
    const patience = new Promise<'late'>((resolve) => setTimeout(() => resolve('late'), PATIENCE_MILLISECONDS));
    if ((await Promise.race([working, patience])) === 'late') {
        await window.withProgress({ location: ProgressLocation.Notification, title, cancellable: true }, (_, token) => {
            token.onCancellationRequested(() => source.cancel());
            return working;
        });
    }
    return working;
}
