import { fork } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type * as protocol from 'vscode-languageserver-protocol/node';
import type { CompletionList, PublishDiagnosticsParams } from 'vscode-languageserver-protocol';
import { expect, it } from 'vitest';

// The server as the extension ships it, which reads through the editor: here a client whose folder holds nothing.

const { createMessageConnection, IPCMessageReader, IPCMessageWriter } = createRequire(import.meta.url)(
    'vscode-languageserver-protocol/node',
) as typeof protocol;

const bundles = new URL('../../packages/extension/dist/', import.meta.url);
const uri = 'file:///hall/supper.cover';

it('answers as a process of the desktop', async () => {
    const server = fork(fileURLToPath(new URL('desktop-server.js', bundles)), ['--node-ipc'], { silent: true });
    const wrote: Buffer[] = [];
    server.stderr!.on('data', (chunk: Buffer) => wrote.push(chunk));
    const connection = createMessageConnection(new IPCMessageReader(server), new IPCMessageWriter(server));
    const told = new Promise<PublishDiagnosticsParams>((resolve) =>
        connection.onNotification('textDocument/publishDiagnostics', resolve),
    );
    connection.onRequest('underliner/listFiles', () => []);
    connection.onRequest('underliner/readFile', () => ({ state: 'missing' }));
    connection.listen();
    try {
        await connection.sendRequest('initialize', {
            processId: process.pid,
            rootUri: 'file:///hall',
            capabilities: {},
        });
        await connection.sendNotification('initialized', {});
        const text = 'menu {\n    course soup "Leek broth" {\n        served in soup-bowll at 64 °C\n    }\n}\n';
        await connection.sendNotification('textDocument/didOpen', {
            textDocument: { uri, languageId: 'cover', version: 1, text },
        });
        expect((await told).diagnostics.map(({ code }) => code)).toContain('unknown-name');
        // Asked of the framework, which looks up the names of its classes.
        const { items } = await connection.sendRequest<CompletionList>('textDocument/completion', {
            textDocument: { uri },
            position: { line: 2, character: 25 },
        });
        expect(items.map(({ label }) => label)).toContain('soup-bowl');
        await connection.sendRequest('shutdown');
        expect(Buffer.concat(wrote).toString()).toBe('');
    } finally {
        connection.dispose();
        server.kill();
    }
});

it.each(['desktop-server.js', 'web-server.js'])('keeps its names in %s without a call for each function', (name) => {
    const bundle = readFileSync(new URL(name, bundles), 'utf8');
    expect(bundle).toMatch(/\bLangiumParser=class extends AbstractLangiumParser\b/);
    // What esbuild puts around every function that is to keep a name beside its shorter one.
    expect(bundle).not.toMatch(/"name",\{value(:\w+)?,configurable/);
});
