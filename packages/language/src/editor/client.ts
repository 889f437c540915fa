import { MarkupKind, type ClientCapabilities, type InitializeParams } from 'vscode-languageserver';

/** What the client can do, as far as an answer depends on it. */
export interface Client {
    readonly takesVersionedEdits: boolean;
    readonly takesRelated: boolean;
    readonly takesSymbolTree: boolean;
    /** It shows texts that lie in no folder; see `virtual-texts.ts`. */
    readonly showsVirtualTexts: boolean;
    /** Its command that shows the page of a rule, where it has one; it takes the rule's id. */
    readonly ruleCommand: string | undefined;
    readonly registersWatchers: boolean;
    readonly tellsFolders: boolean;
    /** An edit may make files. */
    readonly takesNewFiles: boolean;
    /** It asks for a reason where one is wanted; see `BECAUSE_COMMAND`. */
    readonly asksReasons: boolean;
    /** It shows panels, and is told when their plans have changed; see `panels/requests.ts`. */
    readonly showsPanels: boolean;
    readonly takesSnippets: boolean;
    /** A row of proposals says a few words beside the name. */
    readonly takesRows: boolean;
    /** What is told at a word may be Markdown. */
    readonly takesMarkdown: boolean;
    /** It shows drawings in Markdown that stand in the text themselves. */
    readonly showsPictures: boolean;
    /** It can be asked for its settings, and tells when they change. */
    readonly hasSettings: boolean;
    /** It shows what can't be done, and why. */
    readonly takesDisabled: boolean;
    /** It can be led to a place in a text. */
    readonly goesToPlaces: boolean;
    /** It asks for hints and figures above lines again when it is told to. */
    readonly refreshes: boolean;
}

export function clientOf({ capabilities, initializationOptions }: InitializeParams): Client {
    const { textDocument, window, workspace }: ClientCapabilities = capabilities;
    const own = (initializationOptions ?? {}) as Readonly<Record<string, unknown>>;
    return {
        takesVersionedEdits: workspace?.workspaceEdit?.documentChanges === true,
        takesRelated: textDocument?.publishDiagnostics?.relatedInformation === true,
        takesSymbolTree: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
        showsVirtualTexts: own.virtualTexts === true,
        ruleCommand: typeof own.ruleCommand === 'string' ? own.ruleCommand : undefined,
        registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
        tellsFolders: workspace?.workspaceFolders === true,
        takesNewFiles:
            workspace?.workspaceEdit?.documentChanges === true &&
            workspace.workspaceEdit.resourceOperations?.includes('create') === true,
        asksReasons: own.reasons === true,
        showsPanels: own.panels === true,
        takesSnippets: textDocument?.completion?.completionItem?.snippetSupport === true,
        takesRows: textDocument?.completion?.completionItem?.labelDetailsSupport === true,
        takesMarkdown: textDocument?.hover?.contentFormat?.includes(MarkupKind.Markdown) === true,
        showsPictures: own.pictures === true,
        hasSettings: workspace?.configuration === true,
        takesDisabled: textDocument?.codeAction?.disabledSupport === true,
        goesToPlaces: window?.showDocument?.support === true,
        refreshes: workspace?.inlayHint?.refreshSupport === true && workspace.codeLens?.refreshSupport === true,
    };
}
