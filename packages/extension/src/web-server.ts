import { clientDisk, startLanguageServer } from 'underliner-language/editor';
import {
    BrowserMessageReader,
    BrowserMessageWriter,
    createConnection,
    ProposedFeatures,
} from 'vscode-languageserver/browser';

/** Written in by the build from package.json. */
declare const UNDERLINER_VERSION: string;

// The language server as a worker: the page's messages are the connection.
const page = globalThis as never;
const connection = createConnection(
    ProposedFeatures.all,
    new BrowserMessageReader(page),
    new BrowserMessageWriter(page),
);
startLanguageServer(connection, clientDisk(connection), { name: 'underliner', version: UNDERLINER_VERSION });
