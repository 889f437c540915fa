import { RAL } from 'vscode-languageserver';

/**
 * Runs in the next turn of the event loop, when what has arrived meanwhile has been read: an edit, or the wish to stop.
 * A process can ask for that. A worker has timers, which wait four milliseconds once a few have followed on each other
 * (HTML Standard, timers, the nesting level); a message to oneself does not wait.
 */
export const inNextTurn: (run: () => void) => void =
    'setImmediate' in globalThis ? (run) => setImmediate(run) : byMessages();

export const nextTurn = (): Promise<void> => new Promise(inNextTurn);

/** Has the connection, which reads one message a turn, begin its turns in the same way. */
export function readInNextTurn(): void {
    const runtime = RAL();
    const immediately = (run: (...values: unknown[]) => void, ...values: unknown[]): { dispose(): void } => {
        let isWanted = true;
        inNextTurn(() => isWanted && run(...values));
        return { dispose: () => void (isWanted = false) };
    };
    RAL.install({ ...runtime, timer: { ...runtime.timer, setImmediate: immediately } });
}

function byMessages(): (run: () => void) => void {
    const waiting: (() => void)[] = [];
    const { port1, port2 } = new MessageChannel();
    Object.assign(port1, { onmessage: () => waiting.shift()!() });
    return (run) => {
        waiting.push(run);
        port2.postMessage(undefined);
    };
}
