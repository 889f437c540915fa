import { fork } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import type * as inBrowser from 'vscode-languageserver-protocol/browser';
import type * as inNode from 'vscode-languageserver-protocol/node';
import type { CompletionList, MessageConnection, PublishDiagnosticsParams } from 'vscode-languageserver-protocol';
import { describe, expect, it } from 'vitest';

// The server as the extension ships it, which reads through the editor: here a client whose folder holds nothing.

const require = createRequire(import.meta.url);
const { createMessageConnection, IPCMessageReader, IPCMessageWriter } =
    require('vscode-languageserver-protocol/node') as typeof inNode;
const { BrowserMessageReader, BrowserMessageWriter } =
    require('vscode-languageserver-protocol/browser') as typeof inBrowser;

const bundle = (name: string): string =>
    fileURLToPath(new URL(`../../packages/extension/dist/${name}`, import.meta.url));
const server = readFileSync(bundle('server.js'), 'utf8');
const uri = 'file:///hall/supper.cover';

/** The server as a process of the desktop. */
function startProcess() {
    const process = fork(bundle('desktop-server.js'), ['--node-ipc'], { silent: true });
    const wrote: Buffer[] = [];
    process.stdout!.on('data', (chunk: Buffer) => wrote.push(chunk));
    process.stderr!.on('data', (chunk: Buffer) => wrote.push(chunk));
    return {
        process,
        connection: createMessageConnection(new IPCMessageReader(process), new IPCMessageWriter(process)),
        wrote: () => Buffer.concat(wrote).toString(),
        left: once(process, 'exit').then(([code]) => code as number | null),
    };
}

/** The server in a context that has what a browser's worker has, and nothing of Node. */
function startWorker() {
    const timers: unknown[] = [];
    const { port1: page, port2: port } = new MessageChannel();
    let isClosed = false;
    const worker = {
        ...{ TextDecoder, TextEncoder, URL, MessageChannel, performance, console, structuredClone, queueMicrotask },
        ...{ clearTimeout, setInterval, clearInterval },
        setTimeout: (run: () => void, wait?: number) => {
            timers.push(wait);
            return setTimeout(run, wait);
        },
        postMessage: (data: unknown) => port.postMessage(data),
        addEventListener: () => undefined,
        close: () => (isClosed = true),
        onmessage: undefined as ((event: { readonly data: unknown }) => void) | undefined,
    };
    const self: typeof worker = createContext(worker) as never;
    runInContext('globalThis.self = globalThis', self);
    runInContext(server, self);
    Object.assign(port, { onmessage: (event: { readonly data: unknown }) => self.onmessage!({ data: event.data }) });
    return {
        connection: createMessageConnection(new BrowserMessageReader(page), new BrowserMessageWriter(page)),
        isClosed: () => isClosed,
        timers,
        stop: () => page.close(),
    };
}

/** Opens a plan with one slip, and asks the framework, which looks up the names of its classes, what may stand there. */
async function converse(connection: MessageConnection): Promise<void> {
    const told = new Promise<PublishDiagnosticsParams>((resolve) =>
        connection.onNotification('textDocument/publishDiagnostics', resolve),
    );
    connection.onRequest('underliner/listFiles', () => []);
    connection.onRequest('underliner/readFile', () => ({ state: 'missing' }));
    connection.listen();
    await connection.sendRequest('initialize', { processId: null, rootUri: 'file:///hall', capabilities: {} });
    await connection.sendNotification('initialized', {});
    const text = 'menu {\n    course soup "Leek broth" {\n        served in soup-bowll at 64 °C\n    }\n}\n';
    await connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri, languageId: 'cover', version: 1, text },
    });
    expect((await told).diagnostics.map(({ code }) => code)).toContain('unknown-name');
    const { items } = await connection.sendRequest<CompletionList>('textDocument/completion', {
        textDocument: { uri },
        position: { line: 2, character: 25 },
    });
    expect(items.map(({ label }) => label)).toContain('soup-bowl');
}

describe('the server of the extension', () => {
    it('answers as a process of the desktop, and ends when told', async () => {
        const { connection, left, wrote } = startProcess();
        await converse(connection);
        await connection.sendRequest('shutdown');
        await connection.sendNotification('exit');
        expect(await left).toBe(0);
        expect(wrote()).toBe('');
    });

    // LSP 3.17, Exit Notification.
    it('has failed where it ends before it was told to shut down', async () => {
        const { connection, left } = startProcess();
        connection.listen();
        await connection.sendNotification('exit');
        expect(await left).toBe(1);
    });

    it('ends with the editor', async () => {
        const { process, connection, left, wrote } = startProcess();
        await converse(connection);
        process.disconnect();
        expect(await left).toBe(1);
        expect(wrote()).toBe('');
    });

    it('answers as a worker, without a timer between messages, and ends when told', async () => {
        const { connection, isClosed, timers, stop } = startWorker();
        await converse(connection);
        expect(timers.filter((wait) => wait === 0)).toEqual([]);
        await connection.sendRequest('shutdown');
        expect(isClosed()).toBe(false);
        await connection.sendNotification('exit');
        await expect.poll(isClosed).toBe(true);
        stop();
    });

    it('keeps its names without a call for each function', () => {
        expect(server).toMatch(/\bLangiumParser=class extends AbstractLangiumParser\b/);
        // What esbuild puts around every function that is to keep a name beside its shorter one.
        expect(server).not.toMatch(/"name",\{value(:\w+)?,configurable/);
    });

    it('is one for both: a process is that worker', () => {
        expect(readFileSync(bundle('desktop-server.js'), 'utf8').length).toBeLessThan(2000);
    });
});
