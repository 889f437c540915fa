import { CodeActionKind, TextDocumentSyncKind, type ServerCapabilities } from 'vscode-languageserver';
import type { Client } from './client.js';
import { FIX_ALL } from './code-actions.js';
import { TRIGGERS } from './completion.js';
import { LAYING_OUT } from './formatting.js';
import { legend } from './semantic-tokens.js';
import { GO_TO_COMMAND } from './withheld-fixes.js';

/** What the server can do for a client. */
export function capabilitiesFor({ goesToPlaces, tellsFolders }: Client): ServerCapabilities {
    return {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        completionProvider: { triggerCharacters: TRIGGERS },
        hoverProvider: true,
        definitionProvider: true,
        referencesProvider: true,
        documentHighlightProvider: true,
        renameProvider: { prepareProvider: true },
        documentSymbolProvider: true,
        workspaceSymbolProvider: true,
        foldingRangeProvider: true,
        selectionRangeProvider: true,
        documentLinkProvider: {},
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.Refactor, FIX_ALL] },
        ...(goesToPlaces ? { executeCommandProvider: { commands: [GO_TO_COMMAND] } } : {}),
        codeLensProvider: {},
        inlayHintProvider: true,
        documentFormattingProvider: true,
        documentRangeFormattingProvider: true,
        documentOnTypeFormattingProvider: {
            firstTriggerCharacter: LAYING_OUT.brace,
            moreTriggerCharacter: [LAYING_OUT.lineEnd],
        },
        semanticTokensProvider: { legend, full: true, range: true },
        workspace: {
            ...(tellsFolders ? { workspaceFolders: { supported: true, changeNotifications: true } } : {}),
            // Folders, plans and the recipes they link to.
            fileOperations: { willRename: { filters: [{ pattern: { glob: '**/*' } }] } },
        },
    };
}
