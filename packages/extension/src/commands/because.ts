import { window, workspace } from 'vscode';
import type { BaseLanguageClient, WorkspaceEdit } from 'vscode-languageclient';
import { BECAUSE_REQUEST, type Because } from 'underliner-language/editor';

/** Asks why a rule does not hold here or in this house, and writes that down. @param silencing as the light bulb gives it */
export async function giveReason(client: BaseLanguageClient, silencing: unknown): Promise<void> {
    const reason = await window.showInputBox({
        title: 'Because …',
        prompt: 'Say why in a few words. They stand in the plan and on the captain’s sheet.',
        placeHolder: 'agreed with the host',
        ignoreFocusOut: true,
        validateInput: (typed) => (typed.trim() === '' ? 'A reason has at least one word.' : undefined),
    });
    if (reason === undefined) {
        return;
    }
    const asked: Because = { silencing, reason };
    const edit = await client.sendRequest<WorkspaceEdit | null>(BECAUSE_REQUEST, asked);
    if (edit) {
        await workspace.applyEdit(await client.protocol2CodeConverter.asWorkspaceEdit(edit));
    }
}
