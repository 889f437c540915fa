import { spawn, type ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type * as protocol from 'vscode-languageserver-protocol/node';
import type {
    CodeAction,
    Diagnostic,
    InitializeResult,
    MessageConnection,
    Position,
    PublishDiagnosticsParams,
    Range,
    TextEdit,
    WorkspaceEdit,
} from 'vscode-languageserver-protocol';

// A plain client of the editor's protocol: it starts the built program over stdio and talks to it as an editor does.

// A module of the old kind, which has no names to import.
const { createMessageConnection, StreamMessageReader, StreamMessageWriter } = createRequire(import.meta.url)(
    'vscode-languageserver-protocol/node',
) as typeof protocol;

const LINE_END = /\r\n|\n|\r/g;

const program = fileURLToPath(new URL('../../packages/cli/bin/underliner.cjs', import.meta.url));

interface Open {
    text: string;
    version: number;
}

export class Talk {
    readonly #process: ChildProcess;
    readonly #connection: MessageConnection;
    readonly #open = new Map<string, Open>();
    readonly #told = new Map<string, PublishDiagnosticsParams>();
    #listeners: (() => void)[] = [];
    /** Everything the server wrote beside the conversation. */
    log = '';

    private constructor(readonly folder: string) {
        this.#process = spawn(process.execPath, [program, 'lsp', '--stdio'], { stdio: 'pipe' });
        this.#process.stderr!.on('data', (chunk: Buffer) => (this.log += chunk.toString()));
        this.#connection = createMessageConnection(
            new StreamMessageReader(this.#process.stdout!),
            new StreamMessageWriter(this.#process.stdin!),
        );
        this.#connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
            this.#told.set(params.uri, params);
            this.#listeners.forEach((listener) => listener());
        });
        this.#connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
            this.log += `${message}\n`;
        });
        this.#connection.onRequest('client/registerCapability', () => null);
        this.#connection.listen();
    }

    /**
     * @param folder a folder of the disk; all paths are told from it
     * @param open the folders in it that are opened, where it is not itself
     */
    static async start(
        folder: string,
        open: readonly string[] = [''],
    ): Promise<{ talk: Talk; result: InitializeResult }> {
        const talk = new Talk(folder);
        const folders = open.map((path) => ({
            uri: pathToFileURL(join(folder, path)).href,
            name: path || 'workspace',
        }));
        const hasLeft = new Promise<never>((_, reject) => {
            talk.#process.once('exit', (code) =>
                reject(new Error(`The server left with exit code ${code}: ${talk.log}`)),
            );
        });
        // Later it may leave: nobody waits for it then.
        hasLeft.catch(() => undefined);
        const asked = talk.#connection.sendRequest<InitializeResult>('initialize', {
            processId: process.pid,
            rootUri: folders[0]!.uri,
            workspaceFolders: folders,
            initializationOptions: { virtualTexts: true },
            capabilities: {
                workspace: {
                    workspaceFolders: true,
                    workspaceEdit: { documentChanges: true },
                    didChangeWatchedFiles: { dynamicRegistration: true },
                },
                textDocument: {
                    publishDiagnostics: { relatedInformation: true, versionSupport: true },
                    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
                },
            },
        });
        const result = await Promise.race([asked, hasLeft]);
        await talk.#connection.sendNotification('initialized', {});
        return { talk, result };
    }

    /** A server to which nothing has been said yet. */
    static ungreeted(folder: string): Talk {
        return new Talk(folder);
    }

    uri(path: string): string {
        return pathToFileURL(join(this.folder, path)).href;
    }

    ask<Answer>(method: string, path: string, params: object = {}): Promise<Answer> {
        return this.#connection.sendRequest<Answer>(method, { textDocument: { uri: this.uri(path) }, ...params });
    }

    request<Answer>(method: string, params: object): Promise<Answer> {
        return this.#connection.sendRequest<Answer>(method, params);
    }

    notify(method: string, params: object): Promise<void> {
        return this.#connection.sendNotification(method, params);
    }

    // ---------------------------------------------------------------- documents
    async open(path: string, text = readFileSync(join(this.folder, path), 'utf8')): Promise<void> {
        this.#open.set(path, { text, version: 1 });
        const textDocument = { uri: this.uri(path), languageId: 'cover', version: 1, text };
        await this.#connection.sendNotification('textDocument/didOpen', { textDocument });
    }

    /** Puts other words in place of the first such words, as typing does. */
    async type(path: string, words: string, by: string): Promise<void> {
        const from = this.offset(path, this.position(path, words));
        await this.change(path, from, from + words.length, by);
    }

    /** Puts other words between two offsets, as typing does. */
    async change(path: string, from: number, to: number, by: string): Promise<void> {
        const range = { start: this.positionAt(path, from), end: this.positionAt(path, to) };
        const document = this.#open.get(path)!;
        document.text = document.text.slice(0, from) + by + document.text.slice(to);
        document.version++;
        const textDocument = { uri: this.uri(path), version: document.version };
        const change = { textDocument, contentChanges: [{ range, text: by }] };
        await this.#connection.sendNotification('textDocument/didChange', change);
    }

    /** Applies an edit as an editor does: refuses one for another version, changes open documents. */
    async apply(edit: WorkspaceEdit): Promise<void> {
        for (const change of edit.documentChanges ?? []) {
            if (!('edits' in change)) {
                throw new Error('Only texts are changed here.');
            }
            const path = fileURLToPath(change.textDocument.uri).slice(this.folder.length + 1);
            const document = this.#open.get(path);
            if (document?.version !== change.textDocument.version) {
                throw new Error(`${path} has another version than ${change.textDocument.version}.`);
            }
            const all = (change.edits as TextEdit[]).map(({ range, newText }) => ({
                from: this.offset(path, range.start),
                to: this.offset(path, range.end),
                newText,
            }));
            for (const { from, to, newText } of all.sort((a, b) => b.from - a.from)) {
                document.text = document.text.slice(0, from) + newText + document.text.slice(to);
            }
            document.version++;
            const textDocument = { uri: change.textDocument.uri, version: document.version };
            const contentChanges = [{ text: document.text }];
            await this.#connection.sendNotification('textDocument/didChange', { textDocument, contentChanges });
        }
    }

    async close(path: string): Promise<void> {
        this.#open.delete(path);
        await this.#connection.sendNotification('textDocument/didClose', { textDocument: { uri: this.uri(path) } });
    }

    text(path: string): string {
        return this.#open.get(path)!.text;
    }

    version(path: string): number {
        return this.#open.get(path)!.version;
    }

    // ---------------------------------------------------------------- places
    position(path: string, words: string, within = 0): Position {
        const offset = this.text(path).indexOf(words);
        if (offset < 0) {
            throw new Error(`\`${words}\` is not in ${path}.`);
        }
        return this.positionAt(path, offset + within);
    }

    /** Lines end in `\n`, `\r\n` or `\r`, as the protocol says. */
    private positionAt(path: string, offset: number): Position {
        const before = this.text(path).slice(0, offset).split(LINE_END);
        return { line: before.length - 1, character: before.at(-1)!.length };
    }

    range(path: string, words: string): Range {
        return { start: this.position(path, words), end: this.position(path, words, words.length) };
    }

    offset(path: string, { line, character }: Position): number {
        const ends = [...this.text(path).matchAll(LINE_END)].map(({ 0: end, index }) => index + end.length);
        return (line === 0 ? 0 : ends[line - 1]!) + character;
    }

    // ---------------------------------------------------------------- findings
    /** What the client was last told of a file, once it satisfies; for an open file, of its present version. */
    findings(path: string, satisfies: (diagnostics: Diagnostic[]) => boolean = () => true): Promise<Diagnostic[]> {
        return new Promise((resolve, reject) => {
            const look = (): boolean => {
                const told = this.#told.get(this.uri(path));
                const version = this.#open.get(path)?.version;
                if (told === undefined || told.version !== version || !satisfies(told.diagnostics)) {
                    return false;
                }
                clearTimeout(timer);
                this.#listeners = this.#listeners.filter((listener) => listener !== look);
                resolve(told.diagnostics);
                return true;
            };
            const timer = setTimeout(
                () =>
                    reject(new Error(`Waited in vain: ${JSON.stringify(this.#told.get(this.uri(path)))} ${this.log}`)),
                60_000,
            );
            if (!look()) {
                this.#listeners.push(look);
            }
        });
    }

    /** What the client was last told of all files. */
    everyFinding(): (Diagnostic & { readonly file: string })[] {
        return [...this.#told].flatMap(([uri, { diagnostics }]) => {
            const file = fileURLToPath(uri).slice(this.folder.length + 1);
            return diagnostics.map((diagnostic) => ({ ...diagnostic, file }));
        });
    }

    async fixes(path: string, words: string, only?: string): Promise<CodeAction[]> {
        const range = this.range(path, words);
        const context = { diagnostics: await this.findings(path), ...(only === undefined ? {} : { only: [only] }) };
        return this.ask('textDocument/codeAction', path, { range, context });
    }

    /** Says goodbye. @returns the exit code */
    async end(): Promise<number | null> {
        const left = new Promise<number | null>((resolve) => this.#process.once('exit', (code) => resolve(code)));
        await this.#connection.sendRequest('shutdown');
        await this.#connection.sendNotification('exit');
        return left;
    }

    kill(): void {
        this.#process.kill();
    }
}
