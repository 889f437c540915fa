import { window, type Uri } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { COMPARE_REQUEST, type CompareAnswer } from 'underliner-language/editor';
import { showAnswer } from '../answers.js';
import { lastCommitOf } from '../git.js';
import { requestWithProgress } from '../progress.js';

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
    let answer: CompareAnswer | null | undefined;
    do {
        for (const wanted of answer && 'wanted' in answer ? answer.wanted : []) {
            before[wanted] = await commit.textOf(client.protocol2CodeConverter.asUri(wanted));
        }
        const asked = { uri: address, before, since: 'the last commit' };
        answer = await requestWithProgress<CompareAnswer>(client, 'Comparing', COMPARE_REQUEST, asked);
    } while (answer && 'wanted' in answer);
    if (!answer) {
        return;
    }
    if ('refused' in answer) {
        void window.showErrorMessage(answer.refused);
        return;
    }
    await showAnswer('Since the last commit', answer.markdown);
}
