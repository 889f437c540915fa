import type { Uri } from 'vscode';
import { ProgressLocation, window, workspace, WorkspaceEdit } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { LAY_OUT_REQUEST, PLANS_REQUEST, type LayOutAnswer } from 'underliner-language/editor';

/** Lays out every plan of a folder in one step that can be undone. Cancelled, it changes nothing. */
export async function formatFolder(client: BaseLanguageClient, given: Uri | undefined): Promise<void> {
    const folder = given ?? onlyFolder() ?? (await window.showWorkspaceFolderPick())?.uri;
    if (!folder) {
        return;
    }
    const { edit, plans, unread } = await window.withProgress(
        { location: ProgressLocation.Notification, title: 'Laying out', cancellable: true },
        async (progress, token) => {
            const folderUri = client.code2ProtocolConverter.asUri(folder);
            const plans = await client.sendRequest<readonly string[]>(PLANS_REQUEST, { uri: folderUri });
            const edit = new WorkspaceEdit();
            const unread: string[] = [];
            for (const uri of plans) {
                if (token.isCancellationRequested) {
                    return { edit: new WorkspaceEdit(), plans: [], unread: [] };
                }
                const plan = client.protocol2CodeConverter.asUri(uri);
                progress.report({ message: workspace.asRelativePath(plan), increment: 100 / plans.length });
                const answer = await client.sendRequest<LayOutAnswer | null>(LAY_OUT_REQUEST, { uri });
                if (answer && 'unread' in answer) {
                    unread.push(answer.unread);
                } else if (answer && answer.edits.length > 0) {
                    edit.set(plan, await client.protocol2CodeConverter.asTextEdits([...answer.edits]));
                }
            }
            return { edit, plans, unread };
        },
    );
    if (plans.length === 0) {
        return;
    }
    const changed = edit.entries().map(([uri]) => uri);
    const wereDirty = new Set(
        workspace.textDocuments.filter(({ isDirty }) => isDirty).map(({ uri }) => uri.toString()),
    );
    await workspace.applyEdit(edit);
    // What was being written is the chef's to save.
    for (const uri of changed.filter((each) => !wereDirty.has(each.toString()))) {
        await workspace.save(uri);
    }
    const laidOut = `${changed.length} of ${plans.length} plans laid out anew.`;
    void (unread.length > 0
        ? window.showWarningMessage([laidOut, ...unread].join(' '))
        : window.showInformationMessage(laidOut));
}

function onlyFolder(): Uri | undefined {
    const [first, ...more] = workspace.workspaceFolders ?? [];
    return more.length === 0 ? first?.uri : undefined;
}
