import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { activateWith, deactivateClient } from './activation.js';

/** The extension where the editor has a machine of its own: the server is a process beside it. */
export function activate(context: ExtensionContext): void {
    const module = context.asAbsolutePath('dist/desktop-server.js');
    const server = { module, transport: TransportKind.ipc };
    activateWith(context, (options) => new LanguageClient('underliner', 'Underliner', server, options));
}

export const deactivate = deactivateClient;
