import { EVENT_QUESTIONS } from './new-event.js';
import { otherwiseQuestions } from './otherwise-questions.js';
import type { AnswerProblem, CheckAnswer, Question, QuestionsOf } from './requests.js';
import { REASON_QUESTION } from './waiving.js';
import type { Place } from './workspace.js';

/** A question, and what is wrong with an answer to it. */
export interface Asked extends Question {
    problemOf(answer: string): string | undefined;
}

/** What is asked. @param place of the plan that it is about, where it is about one */
export function questionsOf(asked: QuestionsOf, place: Place | undefined): readonly Question[] {
    return allOf(asked, place).map(({ key, label, prompt, example, now }) => ({ key, label, prompt, example, now }));
}

/** What is wrong with one answer, as it is typed. */
export function problemOf(asked: CheckAnswer, place: Place | undefined): AnswerProblem | null {
    const question = allOf(asked, place).find(({ key }) => key === asked.key);
    const problem = question?.problemOf(asked.answer.trim());
    return problem === undefined ? null : { problem };
}

function allOf({ about }: QuestionsOf, place: Place | undefined): readonly Asked[] {
    switch (about) {
        case 'newEvent':
            return EVENT_QUESTIONS;
        case 'reason':
            return [REASON_QUESTION];
        case 'whatIf':
            return place ? otherwiseQuestions(place) : [];
    }
}
