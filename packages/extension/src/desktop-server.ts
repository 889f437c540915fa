import { clearEarly } from 'underliner-language/node';

// The language server as a process of its own: a worker whose page is the process that started it, so that the extension
// carries the server once. It reads files through the editor, as in a browser, for a folder may lie elsewhere.

let code = 1;
const end = (): never => process.exit(code);

const worker = Object.assign(globalThis, {
    self: globalThis,
    onmessage: undefined as ((event: { readonly data: unknown }) => void) | undefined,
    // What can not be sent is sent to nobody: the other process is gone, and this one ends.
    postMessage: (data: unknown): boolean => process.send!(data, undefined, undefined, () => undefined),
    addEventListener: (): void => undefined,
    close: end,
});

clearEarly();
process.on('disconnect', end);
// Messages wait until somebody listens.
void import('./server.js').then(() =>
    process.on('message', (data: { readonly method?: string }) => {
        // By the protocol, who ends before having been told to shut down has failed.
        if (data.method === 'shutdown') {
            code = 0;
        }
        worker.onmessage!({ data });
    }),
);
