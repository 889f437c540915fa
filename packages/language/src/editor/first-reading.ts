import type { Connection, WorkDoneProgressServerReporter } from 'vscode-languageserver';
import { nextTurn } from './next-turn.js';
import type { FolderReading, Workspace } from './workspace.js';

/** So many files are read in a moment: nothing is told of them. */
export const FEW_FILES = 100;

/**
 * Reads folders that were just opened. Where they hold many files the client is told how far it is, and can stop it: then
 * the rest is read only when a plan uses it or the client opens it.
 */
export async function readFolders(
    uris: readonly string[],
    workspace: Workspace,
    connection: Connection,
): Promise<void> {
    const reading = new FirstReading(connection);
    const read = await Promise.allSettled(uris.map((uri) => workspace.addFolder(uri, reading)));
    reading.done();
    read.forEach((each) => {
        if (each.status === 'rejected') {
            connection.console.error(`A folder could not be read: ${String(each.reason)}`);
        }
    });
}

class FirstReading implements FolderReading {
    private files = 0;
    private read = 0;
    private isDone = false;
    private isAsked = false;
    private progress: WorkDoneProgressServerReporter | undefined;

    constructor(private readonly connection: Pick<Connection, 'window'>) {}

    get isStopped(): boolean {
        return this.progress?.token.isCancellationRequested === true;
    }

    found(files: number): void {
        this.files += files;
        if (this.files > FEW_FILES && !this.isAsked) {
            this.isAsked = true;
            // Nothing waits for the client to show it.
            void this.show();
        }
    }

    async hasRead(files: number): Promise<void> {
        this.read += files;
        this.progress?.report(Math.round((this.read / this.files) * 100), `${this.read} of ${this.files}`);
        await nextTurn();
    }

    done(): void {
        this.isDone = true;
        this.progress?.done();
        if (this.isStopped && this.read < this.files) {
            this.connection.window.showWarningMessage(
                `${this.read} of ${this.files} plans were read. The others are neither checked nor renamed in until you open them or start the language server again.`,
            );
        }
    }

    private async show(): Promise<void> {
        try {
            const progress = await this.connection.window.createWorkDoneProgress();
            progress.begin('Reading the plans', 0, undefined, true);
            if (this.isDone) {
                progress.done();
            } else {
                this.progress = progress;
            }
        } catch {
            // The client shows none after all.
        }
    }
}
