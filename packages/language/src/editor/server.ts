import {
    DidChangeWatchedFilesNotification,
    ErrorCodes,
    ResponseError,
    type CancellationToken,
    type Connection,
    type InitializeResult,
    type Position,
    type TextDocumentIdentifier,
} from 'vscode-languageserver';
import { capabilitiesFor } from './capabilities.js';
import { clientOf, type Client } from './client.js';
import { ClientSettings } from './client-settings.js';
import { codeActions } from './code-actions.js';
import { codeLenses } from './code-lens.js';
import { completionAt } from './completion.js';
import { definitionAt } from './definition.js';
import type { Disk } from './disk.js';
import { documentLinks } from './document-links.js';
import { documentSymbols, flatSymbols, workspaceSymbols } from './document-symbols.js';
import { editsForRenames } from './file-renames.js';
import { readFolders } from './first-reading.js';
import { foldingRanges } from './folding.js';
import { formatBlock, formatDocument, formatRange } from './formatting.js';
import { hoverAt } from './hover.js';
import { inlayHints } from './inlay-hints.js';
import { readInNextTurn } from './next-turn.js';
import { answerOwnRequests } from './own-requests.js';
import { answerPanels } from './panels/answer-panels.js';
import { PLAN_CHANGED_NOTIFICATION } from './panels/requests.js';
import { Publisher } from './publisher.js';
import { highlightsAt, referencesAt } from './references.js';
import { renamableAt, renameAt } from './rename.js';
import { selectionRanges } from './selection-ranges.js';
import { semanticTokens } from './semantic-tokens.js';
import { createCoverServices } from './services.js';
import { whenTidied } from './tidied.js';
import { WarmUp } from './warm-up.js';
import { Words } from './words.js';
import { Workspace, type Place } from './workspace.js';

/** What the server says of itself in its first answer. */
export interface ServerInfo {
    readonly name: string;
    readonly version?: string;
}

interface AtDocument {
    readonly textDocument: TextDocumentIdentifier;
}

/**
 * Serves one client. Runs wherever the connection comes from: over stdio, or in a browser's worker.
 *
 * The framework gives the grammar, the lexer, the parser that completion asks and the open documents. Its document
 * builder is not used: it takes work up at each change, throws it away at the next, answers from the text of the last
 * finished build and publishes without versions. Here nothing is built ahead; see `folder.ts` and `publisher.ts`.
 */
export function startLanguageServer(
    connection: Connection,
    disk: Disk,
    info: ServerInfo = { name: 'underliner' },
): void {
    readInNextTurn();
    const services = createCoverServices(connection);
    const words = new Words(services.cover);
    const documents = services.shared.workspace.TextDocuments;
    const workspace = new Workspace(disk);
    let client: Client | undefined;
    let roots: readonly string[] = [];
    let isShutDown = false;
    let whenReady: () => void = () => undefined;
    const read = new Promise<void>((resolve) => (whenReady = resolve));
    /** Until the folders are read, between the client's greeting and its farewell (LSP 3.17, Lifecycle Messages). */
    const ready = async (): Promise<void> => {
        if (!client) {
            throw new ResponseError(ErrorCodes.ServerNotInitialized, 'The client has not said what it can do yet.');
        }
        if (isShutDown) {
            throw new ResponseError(ErrorCodes.InvalidRequest, 'The server is shutting down.');
        }
        await read;
    };
    const known = (): Client => client!;
    const settings = new ClientSettings(connection, known);
    let inSight: string | undefined;
    const publisher = new Publisher(
        connection,
        workspace,
        known,
        () => settings.refresh(),
        (uri) => {
            inSight = uri;
            if (known().showsPanels) {
                void connection.sendNotification(PLAN_CHANGED_NOTIFICATION, { uri });
            }
        },
        () => {
            if (inSight !== undefined) {
                warmUp.goOn();
            }
        },
    );
    const warmUp = new WarmUp(
        services,
        () => publisher.isBusy,
        () => {
            const { folder, path } = workspace.locate(inSight!);
            return folder.hasPlan(path) ? folder.checked(path) : undefined;
        },
    );

    whenTidied(() => {
        if (inSight !== undefined) {
            warmUp.tidied();
        }
    });

    connection.onInitialize((params): InitializeResult => {
        client = clientOf(params);
        roots = params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri ? [params.rootUri] : []);
        return { capabilities: capabilitiesFor(client), serverInfo: info };
    });
    connection.onInitialized(() => {
        const { registersWatchers, tellsFolders } = known();
        if (registersWatchers) {
            // Folders too: a client reports a deleted folder, not what was in it.
            void connection.client.register(DidChangeWatchedFilesNotification.type, {
                watchers: [{ globPattern: '**/*' }],
            });
        }
        if (tellsFolders) {
            connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
                removed.forEach(({ uri }) => workspace.removeFolder(uri));
                void readFolders(
                    added.map(({ uri }) => uri),
                    workspace,
                    connection,
                );
            });
        }
        void settings.listen();
        void readFolders(roots, workspace, connection).then(whenReady);
    });

    connection.onShutdown(() => {
        isShutDown = true;
    });
    documents.onDidOpen(({ document }) => {
        if (client) {
            workspace.open(document);
        }
    });
    documents.onDidChangeContent(({ document }) => {
        if (client) {
            workspace.change(document);
        }
    });
    documents.onDidClose(({ document }) => workspace.close(document.uri));
    connection.onDidChangeWatchedFiles(({ changes }) => {
        for (const { uri, type } of changes) {
            if (type === DELETED) {
                workspace.deletedOnDisk(uri);
            } else {
                void workspace.changedOnDisk(uri);
            }
        }
    });

    /** Answers from the texts as they are when the answer is given. */
    const about =
        <Params extends AtDocument, Answer>(answer: (place: Place, params: Params) => Answer) =>
        async (params: Params, token: CancellationToken): Promise<Answer | null> => {
            await ready();
            if (token.isCancellationRequested) {
                return null;
            }
            const place = workspace.locate(params.textDocument.uri);
            return place.folder.documentOf(place.path) ? answer(place, params) : null;
        };
    const at = <Params extends AtDocument & { readonly position: Position }, Answer>(
        answer: (place: Place, offset: number, params: Params) => Answer,
    ) =>
        about<Params, Answer>((place, params) =>
            answer(place, place.folder.documentOf(place.path)!.offsetAt(params.position), params),
        );

    connection.onCompletion(at((place, offset) => completionAt(place, offset, services, words, known())));
    connection.onHover(at((place, offset) => hoverAt(place, offset, known()) ?? null));
    connection.onDefinition(at((place, offset) => definitionAt(place, offset, known()) ?? null));
    connection.onReferences(
        at((place, offset, { context }) => referencesAt(place, offset, context.includeDeclaration, known())),
    );
    connection.onDocumentHighlight(at((place, offset) => highlightsAt(place, offset)));
    connection.onPrepareRename(at((place, offset) => renamableAt(place, offset)));
    connection.onRenameRequest(at((place, offset, { newName }) => renameAt(place, offset, newName, words, known())));
    connection.onDocumentSymbol(
        about((place) => (known().takesSymbolTree ? documentSymbols(place) : flatSymbols(place))),
    );
    connection.onFoldingRanges(about(foldingRanges));
    connection.onDocumentLinks(about(documentLinks));
    connection.onCodeAction(about((place, params) => codeActions(place, params, known())));
    connection.onSelectionRanges(about((place, { positions }) => selectionRanges(place, positions)));
    connection.onCodeLens(about((place) => (settings.settings.codeLens ? codeLenses(place) : [])));
    connection.languages.inlayHint.on(about((place, { range }) => inlayHints(place, range, settings.settings)));
    connection.workspace.onWillRenameFiles(async ({ files }) => {
        await ready();
        return editsForRenames(workspace, files, known());
    });
    connection.onDocumentOnTypeFormatting(about((place, { position, ch }) => formatBlock(place, position, ch)));
    connection.onDocumentFormatting(about((place) => formatDocument(place)));
    connection.onDocumentRangeFormatting(about((place, { range }) => formatRange(place, range)));
    connection.languages.semanticTokens.on(
        async (params, token) => (await about((place) => semanticTokens(place))(params, token)) ?? { data: [] },
    );
    connection.languages.semanticTokens.onRange(
        async (params, token) =>
            (await about((place) => semanticTokens(place, params.range))(params, token)) ?? { data: [] },
    );
    connection.onWorkspaceSymbol(async ({ query }) => {
        await ready();
        return workspaceSymbols(workspace.all, query);
    });
    answerOwnRequests(connection, workspace, known, ready);
    answerPanels(connection, workspace, known, ready);

    documents.listen(connection);
    connection.listen();
}

/** Of the protocol's kinds of change on the disk. */
const DELETED = 3;
