import { clientDisk, startLanguageServer } from 'underliner-language/editor';
import {
    BrowserMessageReader,
    BrowserMessageWriter,
    createConnection,
    ProposedFeatures,
} from 'vscode-languageserver/browser';

/** Written in by the build from package.json. */
declare const UNDERLINER_VERSION: string;

/** What a worker has: the messages of the page that made it, and how it ends. */
declare const self: { close(): void };

// The language server as a worker, in a browser a real one; `desktop-server.ts` makes a process into one.
const connection = createConnection(
    ProposedFeatures.all,
    new BrowserMessageReader(self as never),
    new BrowserMessageWriter(self as never),
);
connection.onExit(() => self.close());
startLanguageServer(connection, clientDisk(connection), { name: 'underliner', version: UNDERLINER_VERSION });
