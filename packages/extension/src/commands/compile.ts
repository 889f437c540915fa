import type { Uri } from 'vscode';
import { commands, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { plainWords } from '../plain-words.js';
import { requestWithProgress } from '../progress.js';
import { COMPILE_REQUEST, type CompileAnswer } from 'underliner-language/editor';

/** Writes the service plan beside its text, or says what stands in the way. */
export async function compilePlan(client: BaseLanguageClient, uri: Uri): Promise<void> {
    const asked = { uri: client.code2ProtocolConverter.asUri(uri) };
    const answer = await requestWithProgress<CompileAnswer>(client, 'Computing the plan', COMPILE_REQUEST, asked);
    if (answer === undefined) {
        return;
    }
    if (!answer || 'refused' in answer) {
        const show = 'Show Problems';
        const words = plainWords(answer?.refused ?? 'This is no service plan.');
        const actions = answer && answer.errors > 0 ? [show] : [];
        if ((await window.showErrorMessage(words, ...actions)) === show) {
            await commands.executeCommand('workbench.actions.view.problems');
        }
        return;
    }
    if (uri.scheme === 'untitled') {
        await window.showTextDocument(await workspace.openTextDocument({ language: 'json', content: answer.text }));
        await noteCompiled();
        return;
    }
    const plan = client.protocol2CodeConverter.asUri(answer.uri);
    try {
        await workspace.fs.writeFile(plan, new TextEncoder().encode(answer.text));
    } catch {
        void window.showErrorMessage(`${nameOf(plan)} could not be written here.`);
        return;
    }
    await noteCompiled();
    const open = 'Open';
    if ((await window.showInformationMessage(`The service plan is in ${nameOf(plan)}.`, open)) === open) {
        await window.showTextDocument(plan);
    }
}

/** The last step of the walkthrough is done. */
async function noteCompiled(): Promise<void> {
    await commands.executeCommand('setContext', 'underliner:isCompiled', true);
}

function nameOf(uri: Uri): string {
    return workspace.asRelativePath(uri);
}
