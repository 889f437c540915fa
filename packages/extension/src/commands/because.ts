import { workspace } from 'vscode';
import type { BaseLanguageClient, WorkspaceEdit } from 'vscode-languageclient';
import { BECAUSE_REQUEST, type Because } from 'underliner-language/editor';
import { ask, questionsFor } from './ask.js';

/** Asks why a rule does not hold here or in this house, and writes that down. @param silencing as the light bulb gives it */
export async function giveReason(client: BaseLanguageClient, silencing: unknown): Promise<void> {
    const [question] = await questionsFor(client, { about: 'reason' });
    const reason = question && (await ask(client, { about: 'reason' }, question));
    if (reason !== undefined) {
        const asked: Because = { silencing, reason };
        const edit = await client.sendRequest<WorkspaceEdit | null>(BECAUSE_REQUEST, asked);
        if (edit) {
            await workspace.applyEdit(await client.protocol2CodeConverter.asWorkspaceEdit(edit));
        }
    }
}
