import { extensions, type Uri } from 'vscode';

// The little that is used of what the editor's own Git extension offers to others (its API, version 1).
interface GitExtension {
    getAPI(version: 1): { getRepository(uri: Uri): Repository | null };
}
interface Repository {
    readonly state: { readonly HEAD?: { readonly commit?: string } };
    /** The text of a file in a commit; fails where the commit has no such file. */
    show(commit: string, path: string): Promise<string>;
}

/** The texts of the last commit, or why there are none. */
export interface LastCommit {
    /** @returns `null` where the commit has no such file */
    textOf(uri: Uri): Promise<string | null>;
}

export async function lastCommitOf(uri: Uri): Promise<LastCommit | { readonly refused: string }> {
    const extension = extensions.getExtension<GitExtension>('vscode.git');
    if (!extension) {
        return { refused: 'The editor’s Git extension is not here, so the last commit can’t be read.' };
    }
    let repository: Repository | null;
    try {
        repository = (extension.isActive ? extension.exports : await extension.activate()).getAPI(1).getRepository(uri);
    } catch {
        return { refused: 'Git is switched off in this editor (`git.enabled`), so the last commit can’t be read.' };
    }
    if (!repository) {
        return { refused: 'This file is in no Git repository that the editor has open.' };
    }
    const commit = repository.state.HEAD?.commit;
    if (commit === undefined) {
        return { refused: 'Nothing has been committed in this repository yet.' };
    }
    return {
        textOf: async (file) => {
            try {
                return await repository.show(commit, file.fsPath);
            } catch {
                return null;
            }
        },
    };
}
