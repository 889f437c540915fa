import { window } from 'vscode';
import {
    CloseAction,
    type BaseLanguageClient,
    type CloseHandlerResult,
    type ErrorHandler,
    type ErrorHandlerResult,
    type Message,
} from 'vscode-languageclient';

/** A server that broke is started again, but not for ever; then the chef is told once, with a way to the log. */
export function crashHandler(client: () => BaseLanguageClient): ErrorHandler {
    let usual: ErrorHandler | undefined;
    const handler = (): ErrorHandler => (usual ??= client().createDefaultErrorHandler(MOST_RESTARTS));
    return {
        // Written to the log, but no message of its own: a server that broke is told of once.
        async error(
            error: Error,
            message: Message | undefined,
            count: number | undefined,
        ): Promise<ErrorHandlerResult> {
            return { ...(await handler().error(error, message, count)), handled: true };
        },
        async closed(): Promise<CloseHandlerResult> {
            const result = await handler().closed();
            if (result.action === CloseAction.DoNotRestart) {
                void tell(client());
            }
            return { ...result, handled: true };
        },
    };
}

const MOST_RESTARTS = 4;

async function tell(client: BaseLanguageClient): Promise<void> {
    const showLog = 'Show the Log';
    const again = 'Start Again';
    const chosen = await window.showErrorMessage(
        'Underliner stopped working several times and was not started again. Your texts are untouched.',
        showLog,
        again,
    );
    if (chosen === showLog) {
        client.outputChannel.show();
    } else if (chosen === again) {
        await restart(client);
    }
}

export async function restart(client: BaseLanguageClient): Promise<void> {
    if (client.isRunning()) {
        await client.stop();
    }
    await client.start();
}
