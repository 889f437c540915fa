import type { Uri } from 'vscode';
import { window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { LAY_OUT_FOLDER_REQUEST, type FolderLaidOut } from 'underliner-language/editor';
import { plainWords } from '../plain-words.js';
import { requestWithProgress } from '../progress.js';

/** Lays out every plan of a folder in one step that can be undone. Cancelled, it changes nothing. */
export async function formatFolder(client: BaseLanguageClient, given: Uri | undefined): Promise<void> {
    const folder = given ?? onlyFolder() ?? (await window.showWorkspaceFolderPick())?.uri;
    if (!folder) {
        return;
    }
    const asked = { uri: client.code2ProtocolConverter.asUri(folder) };
    const laidOut = await requestWithProgress<FolderLaidOut>(client, 'Laying out', LAY_OUT_FOLDER_REQUEST, asked);
    if (!laidOut) {
        return;
    }
    if ('refused' in laidOut) {
        void window.showErrorMessage(plainWords(laidOut.refused));
        return;
    }
    const edit = await client.protocol2CodeConverter.asWorkspaceEdit(laidOut.edit);
    const wereDirty = new Set(
        workspace.textDocuments.filter(({ isDirty }) => isDirty).map(({ uri }) => uri.toString()),
    );
    await workspace.applyEdit(edit);
    // What was being written is the chef's to save.
    for (const [uri] of edit.entries()) {
        if (!wereDirty.has(uri.toString())) {
            await workspace.save(uri);
        }
    }
    const told = plainWords(laidOut.told);
    void (laidOut.isWhole ? window.showInformationMessage(told) : window.showWarningMessage(told));
}

function onlyFolder(): Uri | undefined {
    const [first, ...more] = workspace.workspaceFolders ?? [];
    return more.length === 0 ? first?.uri : undefined;
}
