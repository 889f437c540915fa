import { window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
    CHECK_ANSWER_REQUEST,
    QUESTIONS_REQUEST,
    type AnswerProblem,
    type CheckAnswer,
    type Question,
    type QuestionsOf,
} from 'underliner-language/editor';
import { plainWords } from '../plain-words.js';

export async function questionsFor(client: BaseLanguageClient, about: QuestionsOf): Promise<readonly Question[]> {
    return client.sendRequest<readonly Question[]>(QUESTIONS_REQUEST, about);
}

/** Asks one question; what is wrong with the answer is said while it is typed. @param value that stands there at first */
export async function ask(
    client: BaseLanguageClient,
    about: QuestionsOf,
    { key, label, prompt, example }: Question,
    value = '',
): Promise<string | undefined> {
    return window.showInputBox({
        title: label,
        prompt: plainWords(prompt),
        placeHolder: example,
        value,
        ignoreFocusOut: true,
        validateInput: async (answer) => {
            const asked: CheckAnswer = { ...about, key, answer };
            const found = await client.sendRequest<AnswerProblem | null>(CHECK_ANSWER_REQUEST, asked);
            return found ? plainWords(found.problem) : undefined;
        },
    });
}
