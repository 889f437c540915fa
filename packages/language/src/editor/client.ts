import type { ClientCapabilities, InitializeParams } from 'vscode-languageserver';

/** What the client can do, as far as an answer depends on it. */
export interface Client {
    readonly takesVersionedEdits: boolean;
    readonly takesRelated: boolean;
    readonly takesSymbolTree: boolean;
    /** It shows texts that lie in no folder; see `virtual-texts.ts`. */
    readonly showsVirtualTexts: boolean;
    readonly registersWatchers: boolean;
    readonly tellsFolders: boolean;
}

export function clientOf({ capabilities, initializationOptions }: InitializeParams): Client {
    const { textDocument, workspace }: ClientCapabilities = capabilities;
    return {
        takesVersionedEdits: workspace?.workspaceEdit?.documentChanges === true,
        takesRelated: textDocument?.publishDiagnostics?.relatedInformation === true,
        takesSymbolTree: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
        showsVirtualTexts: (initializationOptions as { virtualTexts?: unknown } | undefined)?.virtualTexts === true,
        registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
        tellsFolders: workspace?.workspaceFolders === true,
    };
}
