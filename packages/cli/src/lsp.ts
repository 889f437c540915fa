import { fileURLToPath } from 'node:url';
import { glob } from 'tinyglobby';
import { startLanguageServer, type Disk } from 'underliner-language/editor';
import { clearEarly, DiskFiles } from 'underliner-language/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { EXTENSION } from './cover-file.js';
import { SKIPPED_FOLDERS } from './folders.js';

/** Written in by the build from package.json. */
declare const UNDERLINER_VERSION: string;

/**
 * `underliner lsp --stdio`: serves one editor until it says goodbye. The protocol has both pipes to itself; the process
 * leaves with the editor, with exit code 0 where the editor asked for it.
 */
export function runLsp(): Promise<never> {
    clearEarly();
    const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout);
    startLanguageServer(connection, disk, { name: 'underliner', version: UNDERLINER_VERSION });
    return new Promise(() => undefined);
}

const disk: Disk = {
    async list(folder) {
        try {
            return await glob([`**/*${EXTENSION}`], {
                cwd: fileURLToPath(folder),
                ignore: SKIPPED_FOLDERS,
                onlyFiles: true,
                expandDirectories: false,
                followSymbolicLinks: false,
            });
        } catch {
            // No folder of this machine, or one that may not be read.
            return [];
        }
    },
    read(folder, path) {
        try {
            // A reader of its own each time: it keeps what it has read.
            return Promise.resolve(new DiskFiles(fileURLToPath(folder)).read(path));
        } catch {
            return Promise.resolve({ state: 'unreadable', why: 'it is not on this disk' });
        }
    },
};
