/** The next turn of the event loop, when what has arrived meanwhile has been read: an edit, or the wish to stop. */
export const nextTurn = (): Promise<void> =>
    new Promise((resolve) => {
        if ('setImmediate' in globalThis) {
            setImmediate(resolve);
        } else {
            setTimeout(resolve, 0);
        }
    });
