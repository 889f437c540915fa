import { clientDisk, startLanguageServer } from 'underliner-language/editor';
import { clearEarly } from 'underliner-language/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';

/** Written in by the build from package.json. */
declare const UNDERLINER_VERSION: string;

// The language server as a process. It reads files through the editor, as the worker does, for a folder may lie elsewhere.
clearEarly();
const connection = createConnection(ProposedFeatures.all);
startLanguageServer(connection, clientDisk(connection), { name: 'underliner', version: UNDERLINER_VERSION });
