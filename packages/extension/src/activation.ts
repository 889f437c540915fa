import type { ExtensionContext } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { provideAnswers } from './answers.js';
import { answerFileRequests } from './files-for-server.js';
import { crashHandler } from './crashes.js';
import { registerCommands } from './commands/index.js';
import { servedDocumentsOnly } from './served-documents.js';
import { showStatus } from './status-item.js';
import { provideTasks } from './tasks.js';
import { providePanels } from './panels/index.js';
import { provideVirtualTexts } from './virtual-texts.js';

/** How a place starts the server: a process, or a worker. */
export type StartClient = (options: LanguageClientOptions) => BaseLanguageClient;

/** Links to a rule's page open it laid out, not as text. */
const RULE_COMMAND = 'underliner.explainRule';

let running: BaseLanguageClient | undefined;

/** What the extension does wherever it runs. Everything about plans is asked of the server. */
export function activateWith(context: ExtensionContext, start: StartClient): void {
    const client: BaseLanguageClient = start({
        // By language, with no scheme: untitled files and folders that lie elsewhere are plans too.
        documentSelector: [{ language: 'cover' }],
        initializationOptions: {
            virtualTexts: true,
            reasons: true,
            panels: true,
            pictures: true,
            ruleCommand: RULE_COMMAND,
        },
        markdown: { isTrusted: { enabledCommands: [RULE_COMMAND] } },
        middleware: servedDocumentsOnly(),
        errorHandler: crashHandler(() => client),
    });
    running = client;
    context.subscriptions.push(
        answerFileRequests(client),
        provideVirtualTexts(client),
        provideAnswers(),
        registerCommands(client),
        showStatus(client),
        providePanels(client, context.extensionUri),
        provideTasks(),
    );
    // Not waited for: what needs the server waits by itself.
    void client.start();
}

export function deactivateClient(): Thenable<void> | undefined {
    return running?.stop();
}
