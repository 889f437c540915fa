/** What git holds of a workspace. */
import { spawnSync } from 'node:child_process';
import { decodeText, LARGEST_FILE_BYTES } from 'underliner-language/node';
import type { Files, FileText } from 'underliner-language';
import { CannotRun } from './cannot-run.js';

/** Runs git in a folder. @throws CannotRun where there is no git to run */
export function git(folder: string, ...words: readonly string[]): { readonly ok: boolean; readonly output: Buffer } {
    const { error, status, stdout } = spawnSync('git', ['-C', folder, ...words], { maxBuffer: LARGEST_FILE_BYTES + 1 });
    // A file larger than any plan stops git's talk with an error of its own.
    if (error && 'code' in error && error.code === 'ENOENT') {
        throw new CannotRun(
            '`git` can’t be run here. Compare two files instead: `underliner compare before.cover after.cover`.',
        );
    }
    return { ok: !error && status === 0, output: stdout };
}

/** The files of a workspace as they were in one commit. */
export class CommittedFiles implements Files {
    readonly #read = new Map<string, FileText>();

    /** @throws CannotRun where the folder is in no repository, or the repository has no such commit */
    constructor(
        readonly root: string,
        readonly commit: string,
    ) {
        if (!git(root, 'rev-parse', '--git-dir').ok) {
            throw new CannotRun('This folder is in no git repository.');
        }
        if (!git(root, 'rev-parse', '--verify', '--quiet', '--end-of-options', `${commit}^{commit}`).ok) {
            throw new CannotRun(`The repository has no commit \`${commit}\`.`);
        }
    }

    read(path: string): FileText {
        const known = this.#read.get(path);
        if (known) {
            return known;
        }
        const { ok, output } = git(this.root, 'show', '--end-of-options', `${this.commit}:./${path}`);
        const text: FileText = ok ? decodeText(output) : { state: 'missing' };
        this.#read.set(path, text);
        return text;
    }
}
