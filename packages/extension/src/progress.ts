import { CancellationTokenSource, ProgressLocation, window } from 'vscode';
import { WorkDoneProgress, type BaseLanguageClient } from 'vscode-languageclient';

/** Long enough that nothing flickers where the answer comes at once. */
const PATIENCE_MILLISECONDS = 400;
let requests = 0;

/**
 * Asks the server something that can take a while: then it shows how far the answer is, and lets it be stopped.
 * @returns nothing where it was stopped; `null` where there is nothing to answer about
 */
export async function requestWithProgress<Answer>(
    client: BaseLanguageClient,
    title: string,
    request: string,
    asked: object,
): Promise<Answer | null | undefined> {
    const source = new CancellationTokenSource();
    const workDoneToken = `underliner-${++requests}`;
    let onPercentage = (_: number): void => undefined;
    const progress = client.onProgress(WorkDoneProgress.type, workDoneToken, (told) => {
        if (told.kind === 'report' && told.percentage !== undefined) {
            onPercentage(told.percentage);
        }
    });
    const answering = client
        .sendRequest<Answer | null>(request, { ...asked, workDoneToken }, source.token)
        .then((answer) => (source.token.isCancellationRequested ? undefined : answer))
        .catch((failure: unknown) => {
            if (!source.token.isCancellationRequested) {
                throw failure;
            }
            return undefined;
        })
        .finally(() => {
            progress.dispose();
        });
    const patience = new Promise<'late'>((resolve) => setTimeout(() => resolve('late'), PATIENCE_MILLISECONDS));
    if ((await Promise.race([answering, patience])) === 'late') {
        const options = { location: ProgressLocation.Notification, title, cancellable: true };
        await window.withProgress(options, (shown, token) => {
            token.onCancellationRequested(() => source.cancel());
            let last = 0;
            onPercentage = (percentage) => {
                shown.report({ increment: percentage - last, message: `${percentage} %` });
                last = percentage;
            };
            return answering;
        });
    }
    return answering;
}
