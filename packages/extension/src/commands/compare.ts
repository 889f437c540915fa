import { window, type Uri } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { COMPARE_REQUEST, type CompareAnswer } from 'underliner-language/editor';
import { showAnswer } from '../answers.js';
import { lastCommitOf } from '../git.js';
import { withProgress } from '../progress.js';

/** Shows what changed for people since the last commit, in the texts as they are now, saved or not. */
export async function compareWithLastCommit(client: BaseLanguageClient, uri: Uri | undefined): Promise<void> {
    if (!uri) {
        void window.showInformationMessage('Open the file of an event first.');
        return;
    }
    const commit = await lastCommitOf(uri);
    if ('refused' in commit) {
        void window.showErrorMessage(commit.refused);
        return;
    }
    const address = client.code2ProtocolConverter.asUri(uri);
    const own = await commit.textOf(uri);
    if (own === null) {
        void window.showInformationMessage('The last commit does not hold this file yet.');
        return;
    }
    const before: Record<string, string | null> = { [address]: own };
    const answer = await withProgress('Comparing', async (token) => {
        for (;;) {
            const answer = await client.sendRequest<CompareAnswer | null>(
                COMPARE_REQUEST,
                { uri: address, before, since: 'the last commit' },
                token,
            );
            if (!answer || !('wanted' in answer)) {
                return answer;
            }
            for (const wanted of answer.wanted) {
                before[wanted] = await commit.textOf(client.protocol2CodeConverter.asUri(wanted));
            }
        }
    });
    if (!answer || 'wanted' in answer) {
        return;
    }
    if ('refused' in answer) {
        void window.showErrorMessage(answer.refused);
        return;
    }
    await showAnswer('Since the last commit', answer.markdown);
}
