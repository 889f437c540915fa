import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

// A client of the editor's protocol that keeps time: it starts a server over stdio and notes when it is told findings.

const { createMessageConnection, StreamMessageReader, StreamMessageWriter } = createRequire(import.meta.url)(
    'vscode-languageserver-protocol/node',
);

/** Nothing takes longer; a server that does not answer has broken. */
const PATIENCE = 60_000;

const CAPABILITIES = {
    workspace: { configuration: true, workspaceFolders: true },
    textDocument: {
        publishDiagnostics: { relatedInformation: true, versionSupport: true },
        completion: { completionItem: { snippetSupport: true } },
        documentSymbol: { hierarchicalDocumentSymbolSupport: true },
        semanticTokens: { requests: { full: true }, formats: ['relative'], tokenTypes: [], tokenModifiers: [] },
    },
};

export class Client {
    #process;
    #connection;
    #uri;
    #lines;
    #told = [];
    #waiting = () => undefined;
    version = 1;
    capabilities;
    log = '';

    /** @param server one of `servers.mjs` @param folder uri of the workspace */
    static async start(server, folder) {
        const client = new Client();
        client.server = server;
        client.#process = spawn(process.execPath, server.command, { stdio: 'pipe' });
        client.#process.stderr.on('data', (chunk) => (client.log += chunk));
        client.#connection = createMessageConnection(
            new StreamMessageReader(client.#process.stdout),
            new StreamMessageWriter(client.#process.stdin),
        );
        const connection = client.#connection;
        connection.onNotification('textDocument/publishDiagnostics', (params) => client.#hear(params));
        connection.onRequest('client/registerCapability', () => null);
        connection.onRequest('window/workDoneProgress/create', () => null);
        connection.onRequest('workspace/configuration', ({ items }) =>
            items.map(({ section }) => server.settings?.[section] ?? {}),
        );
        connection.listen();
        const answer = await client.ask('initialize', {
            processId: process.pid,
            rootUri: folder,
            workspaceFolders: [{ uri: folder, name: 'workspace' }],
            capabilities: CAPABILITIES,
            initializationOptions: server.options ?? {},
        });
        client.capabilities = answer.capabilities;
        await client.tell('initialized', {});
        if (server.settings) {
            await client.tell('workspace/didChangeConfiguration', { settings: server.settings });
        }
        return client;
    }

    tell(method, params) {
        return this.#connection.sendNotification(method, params);
    }

    async ask(method, params) {
        return inTime(this.#connection.sendRequest(method, params), () => `${method}: ${this.log}`);
    }

    about(method, params = {}) {
        return this.ask(method, { textDocument: { uri: this.#uri }, ...params });
    }

    // ---------------------------------------------------------------- the document
    /** @returns ms until its findings */
    async open(uri, text) {
        this.#uri = uri;
        this.#lines = text.split('\n');
        const start = performance.now();
        await this.tell('textDocument/didOpen', {
            textDocument: { uri, languageId: this.server.language, version: 1, text },
        });
        await this.#findings();
        return performance.now() - start;
    }

    /** One key: a character put in, or taken out where `character` is empty. Does not wait. */
    async type({ line, at }, character) {
        const before = this.#lines[line];
        const end = character === '' ? at + 1 : at;
        this.#lines[line] = before.slice(0, at) + character + before.slice(end);
        this.version++;
        const range = { start: { line, character: at }, end: { line, character: end } };
        await this.tell('textDocument/didChange', {
            textDocument: { uri: this.#uri, version: this.version },
            contentChanges: [{ range, text: character }],
        });
    }

    /** @returns ms until the findings of the text with this key */
    async typeAndWait(place, character) {
        this.#told = [];
        const start = performance.now();
        await this.type(place, character);
        await this.#findings();
        return performance.now() - start;
    }

    /**
     * Keys at a steady pace, whatever the server does.
     * @returns ms of the longest time without findings, until all is settled, and from the last key to that
     */
    async burst(places, character, pace) {
        this.#told = [];
        const start = performance.now();
        let last = start;
        for (const [index, place] of places.entries()) {
            await until(start + index * pace);
            last = performance.now();
            await this.type(place, character);
        }
        await this.#findings(last);
        const settled = performance.now();
        const heard = [start, ...this.#told.map(({ when }) => when).filter((when) => when < settled), settled];
        const silences = heard.slice(1).map((when, index) => when - heard[index]);
        return { silence: Math.max(...silences), settled: settled - last, told: this.#told.length };
    }

    #hear({ uri, version }) {
        if (uri === this.#uri) {
            this.#told.push({ version, when: performance.now() });
            this.#waiting();
        }
    }

    /** The findings of the text as it is; of a server that tells no versions the first told since. */
    async #findings(since = 0) {
        if (this.server.pull) {
            const asked = this.version;
            await this.ask(this.server.pull, this.#uri);
            this.#told.push({ version: asked, when: performance.now() });
            return;
        }
        const isThere = () =>
            this.#told.some(({ version, when }) => (version === undefined ? when >= since : version === this.version));
        await inTime(
            new Promise((resolve) => {
                this.#waiting = () => isThere() && resolve();
                this.#waiting();
            }),
            () => `no findings of version ${this.version}: ${this.log}`,
        );
    }

    // ---------------------------------------------------------------- the process
    /** Processor time that the server and what it started have taken, in ms; undefined where the system does not say. */
    get processorTime() {
        return processorTimeOf(this.#process.pid);
    }

    /** Peak resident memory of the server and what it started, in MB; undefined where the system does not say. */
    get peakMemory() {
        return peakOf(this.#process.pid);
    }

    async end() {
        await this.ask('shutdown').catch(() => undefined);
        await this.tell('exit').catch(() => undefined);
        this.#connection.dispose();
        this.#process.kill();
    }
}

const childrenOf = (pid) =>
    readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8')
        .split(' ')
        .filter((child) => child !== '');

function peakOf(pid) {
    try {
        const peak = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
        return childrenOf(pid).reduce((sum, child) => sum + (peakOf(child) ?? 0), Number(peak[1]) / 1024);
    } catch {
        return undefined;
    }
}

function processorTimeOf(pid) {
    try {
        const own = readdirSync(`/proc/${pid}/task`).reduce((sum, task) => {
            const [nanoseconds] = readFileSync(`/proc/${pid}/task/${task}/schedstat`, 'utf8').split(' ');
            return sum + Number(nanoseconds) / 1e6;
        }, 0);
        return childrenOf(pid).reduce((sum, child) => sum + (processorTimeOf(child) ?? 0), own);
    } catch {
        return undefined;
    }
}

async function until(when) {
    for (let left = when - performance.now(); left > 0; left = when - performance.now()) {
        await new Promise((resolve) => setTimeout(resolve, left));
    }
}

async function inTime(promise, what) {
    let timer;
    const late = new Promise((_, reject) => {
        timer = setTimeout(() => reject(new Error(`Waited in vain: ${what()}`)), PATIENCE);
    });
    try {
        return await Promise.race([promise, late]);
    } finally {
        clearTimeout(timer);
    }
}
