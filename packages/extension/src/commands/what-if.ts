import { window, type QuickPickItem, type Uri } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
    CHECK_OTHERWISE_REQUEST,
    OTHERWISE_QUESTIONS_REQUEST,
    WHAT_IF_REQUEST,
    type AnswerProblem,
    type OtherwiseQuestion,
    type WhatIfAnswer,
} from 'underliner-language/editor';
import { showAnswer } from '../answers.js';
import { requestWithProgress } from '../progress.js';

/** Asks what is otherwise than planned, one thing or several, and shows what changes for people. Writes nothing. */
export async function askWhatIf(client: BaseLanguageClient, uri: Uri | undefined): Promise<void> {
    const address = uri && client.code2ProtocolConverter.asUri(uri);
    const questions =
        address === undefined
            ? null
            : await client.sendRequest<readonly OtherwiseQuestion[] | null>(OTHERWISE_QUESTIONS_REQUEST, {
                  uri: address,
              });
    if (address === undefined || !questions?.length) {
        void window.showInformationMessage('Open the file of an event first.');
        return;
    }
    const answers = await answersTo(client, address, questions);
    if (!answers) {
        return;
    }
    const asked = { uri: address, answers };
    const answer = await requestWithProgress<WhatIfAnswer>(client, 'Computing the evening', WHAT_IF_REQUEST, asked);
    if (!answer) {
        return;
    }
    if ('refused' in answer) {
        void window.showErrorMessage(answer.refused);
        return;
    }
    await showAnswer('What if', answer.markdown);
}

async function answersTo(
    client: BaseLanguageClient,
    uri: string,
    questions: readonly OtherwiseQuestion[],
): Promise<Readonly<Record<string, string>> | undefined> {
    const answers: Record<string, string> = {};
    for (;;) {
        const chosen = await window.showQuickPick(itemsFor(questions, answers), {
            title: 'What if …',
            placeHolder: 'What comes out otherwise than planned?',
            ignoreFocusOut: true,
        });
        if (!chosen) {
            return undefined;
        }
        const { question } = chosen;
        if (!question) {
            return answers;
        }
        const answer = await window.showInputBox({
            title: question.label,
            prompt: question.now === '' ? question.label : `The plan says ${question.now}.`,
            placeHolder: question.example,
            value: answers[question.key] ?? '',
            ignoreFocusOut: true,
            validateInput: async (typed) => {
                const found = await client.sendRequest<AnswerProblem | null>(CHECK_OTHERWISE_REQUEST, {
                    uri,
                    key: question.key,
                    answer: typed,
                });
                return found?.problem;
            },
        });
        if (answer !== undefined) {
            answers[question.key] = answer;
        }
    }
}

/** Once something is answered, the answer to it all stands first. */
function itemsFor(
    questions: readonly OtherwiseQuestion[],
    answers: Readonly<Record<string, string>>,
): (QuickPickItem & { readonly question?: OtherwiseQuestion })[] {
    const items = questions.map((question) => {
        const answer = answers[question.key];
        return {
            label: question.label,
            description: answer === undefined ? question.now : `${question.now} → ${answer}`.trim(),
            question,
        };
    });
    return Object.keys(answers).length === 0 ? items : [{ label: '$(play) Show what changes' }, ...items];
}
