import { Uri, type ExtensionContext } from 'vscode';
import {
    BaseLanguageClient,
    BrowserMessageReader,
    BrowserMessageWriter,
    type MessageTransports,
    type LanguageClientOptions,
} from 'vscode-languageclient/browser';
import { activateWith, deactivateClient } from './activation.js';

/** The page's own; the types of a page are not those of this program. */
declare const Worker: new (address: string) => never;

/** A client whose server is a worker of the page, a new one at each start. */
class WorkerClient extends BaseLanguageClient {
    constructor(
        private readonly address: string,
        options: LanguageClientOptions,
    ) {
        super('underliner', 'Underliner', options);
    }

    protected override createMessageTransports(): Promise<MessageTransports> {
        const worker = new Worker(this.address);
        return Promise.resolve({ reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) });
    }
}

/** The extension in a browser. */
export function activate(context: ExtensionContext): void {
    const address = Uri.joinPath(context.extensionUri, 'dist', 'server.js').toString(true);
    activateWith(context, (options) => new WorkerClient(address, options));
}

export const deactivate = deactivateClient;
