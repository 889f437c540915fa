import type { FileRename, WorkspaceEdit } from 'vscode-languageserver';
import { resolvePath } from '../plan/files.js';
import type { Text } from '../plan/origin.js';
import { pathsOf } from './document-links.js';
import type { Client } from './client.js';
import type { TextEdit } from './fixes.js';
import { relativePath } from './relative-path.js';
import { workspaceEdit } from './workspace-edit.js';
import type { Workspace } from './workspace.js';

/** What has to change in `use` and `recipe` lines when files or folders get other names, or move within their folder. */
export function editsForRenames(
    workspace: Workspace,
    renames: readonly FileRename[],
    client: Client,
): WorkspaceEdit | null {
    const changes = workspace.all.flatMap((folder) => {
        const moves = renames.flatMap(({ oldUri, newUri }) => {
            const [from, to] = [workspace.locate(oldUri), workspace.locate(newUri)];
            return from.folder === folder && to.folder === folder ? [{ from: from.path, to: to.path }] : [];
        });
        const moved = (path: string): string => {
            const move = moves.find(({ from }) => path === from || path.startsWith(`${from}/`));
            return move ? move.to + path.slice(move.from.length) : path;
        };
        const edits = new Map<string, TextEdit[]>();
        for (const plan of moves.length > 0 ? folder.plans : []) {
            const home = moved(plan);
            const own = pathsOf(folder.readingOf(plan)!).flatMap((written): TextEdit[] => {
                const target = resolvePath(plan, written.text);
                const isMeant =
                    target !== undefined &&
                    (moved(target) !== target || (home !== plan && folder.textOf(target) !== undefined));
                const path = isMeant ? relativePath(home, moved(target)) : written.text;
                return path === written.text ? [] : [rewritten(written, path)];
            });
            if (own.length > 0) {
                edits.set(plan, own);
            }
        }
        return edits.size > 0 ? [workspaceEdit(folder, edits, client)] : [];
    });
    return changes.length > 0 ? joined(changes) : null;
}

/** The quotes stay as they are. */
function rewritten({ origin: { start, end } }: Text, path: string): TextEdit {
    return { start: start + 1, end: end - 1, text: path };
}

function joined(edits: readonly WorkspaceEdit[]): WorkspaceEdit {
    const documentChanges = edits.flatMap((edit) => edit.documentChanges ?? []);
    return documentChanges.length > 0
        ? { documentChanges }
        : { changes: Object.assign({}, ...edits.map(({ changes }) => changes)) as WorkspaceEdit['changes'] };
}
