import { window, type QuickPickItem, type Uri } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { WHAT_IF_REQUEST, type Question, type QuestionsOf, type WhatIfAnswer } from 'underliner-language/editor';
import { showAnswer } from '../answers.js';
import { requestWithProgress } from '../progress.js';
import { ask, questionsFor } from './ask.js';

/** Asks what is otherwise than planned, one thing or several, and shows what changes for people. Writes nothing. */
export async function askWhatIf(client: BaseLanguageClient, plan: Uri): Promise<void> {
    const uri = client.code2ProtocolConverter.asUri(plan);
    const answers = await answersTo(client, { about: 'whatIf', uri });
    if (answers) {
        const asked = { uri, answers };
        const title = 'Computing the evening';
        await showAnswer('What if', await requestWithProgress<WhatIfAnswer>(client, title, WHAT_IF_REQUEST, asked));
    }
}

async function answersTo(
    client: BaseLanguageClient,
    about: QuestionsOf,
): Promise<Readonly<Record<string, string>> | undefined> {
    const questions = await questionsFor(client, about);
    if (questions.length === 0) {
        void window.showInformationMessage('Open the file of an event first.');
        return undefined;
    }
    const answers: Record<string, string> = {};
    for (;;) {
        const chosen = await window.showQuickPick(itemsFor(questions, answers), {
            title: 'What if …',
            placeHolder: 'What comes out otherwise than planned?',
            ignoreFocusOut: true,
        });
        if (!chosen?.question) {
            return chosen && answers;
        }
        const { key } = chosen.question;
        const answer = await ask(client, about, chosen.question, answers[key]);
        if (answer !== undefined) {
            answers[key] = answer;
        }
    }
}

/** Once something is answered, the answer to it all stands first. */
function itemsFor(
    questions: readonly Question[],
    answers: Readonly<Record<string, string>>,
): (QuickPickItem & { readonly question?: Question })[] {
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
