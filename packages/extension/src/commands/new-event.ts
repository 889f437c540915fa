import { commands, FileType, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { NEW_EVENT_REQUEST, type NewEventAnswer } from 'underliner-language/editor';
import { plainWords } from '../plain-words.js';
import { ask, questionsFor } from './ask.js';

/** Asks for name, day and guests, and writes a plan to begin with: into the folder, or as an unsaved file where none is open. */
export async function beginEvent(client: BaseLanguageClient, given: Uri | undefined): Promise<void> {
    const folder = given ?? (await folderInSight());
    if (folder === 'none chosen') {
        return;
    }
    const answers: Record<string, string> = {};
    for (const question of await questionsFor(client, { about: 'newEvent' })) {
        const answer = await ask(client, { about: 'newEvent' }, question);
        if (answer === undefined) {
            return;
        }
        answers[question.key] = answer;
    }
    const written = await client.sendRequest<NewEventAnswer>(NEW_EVENT_REQUEST, {
        ...answers,
        ...(folder ? { folder: client.code2ProtocolConverter.asUri(folder) } : {}),
        zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    });
    if ('refused' in written) {
        void window.showErrorMessage(plainWords(written.refused));
        return;
    }
    const document = folder
        ? await writeNew(folder, written.name, written.text)
        : await workspace.openTextDocument({ language: 'cover', content: written.text });
    if (document) {
        // A tab of its own, for it is about to be written in.
        await window.showTextDocument(document, { preview: false });
        // The first step of the walkthrough is done.
        await commands.executeCommand('setContext', 'underliner:isBegun', true);
    }
}

/** Never over a file that is there. */
async function writeNew(folder: Uri, name: string, text: string) {
    const file = Uri.joinPath(folder, name);
    try {
        await workspace.fs.stat(file);
        void window.showErrorMessage(`${workspace.asRelativePath(file)} is there already; nothing was written.`);
        return undefined;
    } catch {
        await workspace.fs.writeFile(file, new TextEncoder().encode(text));
        return workspace.openTextDocument(file);
    }
}

/** The folder of the file in sight, else the workspace's. */
async function folderInSight(): Promise<Uri | undefined | 'none chosen'> {
    const shown = window.activeTextEditor?.document.uri;
    if (shown && workspace.getWorkspaceFolder(shown)) {
        const parent = Uri.joinPath(shown, '..');
        const { type } = await workspace.fs.stat(parent);
        if (type & FileType.Directory) {
            return parent;
        }
    }
    const folders = workspace.workspaceFolders ?? [];
    return folders.length > 1 ? ((await window.showWorkspaceFolderPick())?.uri ?? 'none chosen') : folders[0]?.uri;
}
