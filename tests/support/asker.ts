import { CancellationTokenSource } from 'vscode-languageserver';
import type { Asker } from '../../packages/language/src/editor/in-steps.js';

/** Somebody who waits for an answer, and what was told meanwhile. @param stopAt the percentage at which no answer is wanted any more */
export function anAsker(stopAt?: number): Asker & { readonly told: readonly (string | number)[] } {
    const told: (string | number)[] = [];
    const source = new CancellationTokenSource();
    return {
        told,
        token: source.token,
        progress: {
            begin: (title) => told.push(title),
            report: (percent: unknown) => {
                told.push(percent as number);
                if (stopAt !== undefined && (percent as number) >= stopAt) {
                    // As a message does that arrives.
                    setImmediate(() => source.cancel());
                }
            },
            done: () => told.push('done'),
        },
    };
}
