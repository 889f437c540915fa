import { window, type Uri } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { COMPARE_REQUEST, type CompareAnswer } from 'underliner-language/editor';
import { showAnswer } from '../answers.js';
import { lastCommitOf } from '../git.js';
import { requestWithProgress } from '../progress.js';

/** Shows what changed for people since the last commit, in the texts as they are now, saved or not. */
export async function compareWithLastCommit(client: BaseLanguageClient, plan: Uri): Promise<void> {
    const commit = await lastCommitOf(plan);
    if ('refused' in commit) {
        void window.showErrorMessage(commit.refused);
        return;
    }
    const uri = client.code2ProtocolConverter.asUri(plan);
    const own = await commit.textOf(plan);
    if (own === null) {
        void window.showInformationMessage('The last commit does not hold this file yet.');
        return;
    }
    const before: Record<string, string | null> = { [uri]: own };
    const asked = { uri, before, since: 'the last commit' };
    for (;;) {
        const answer = await requestWithProgress<CompareAnswer>(client, 'Comparing', COMPARE_REQUEST, asked);
        if (!answer || !('wanted' in answer)) {
            await showAnswer('Since the last commit', answer);
            return;
        }
        for (const wanted of answer.wanted) {
            before[wanted] = await commit.textOf(client.protocol2CodeConverter.asUri(wanted));
        }
    }
}
