import type { CancellationToken, Connection, ShowDocumentParams, WorkDoneProgressParams } from 'vscode-languageserver';
import type { Client } from './client.js';
import { compareSince } from './compare-since.js';
import { compilePlan } from './compiling.js';
import type { Asker } from './in-steps.js';
import { layOutPlans } from './laying-out-folder.js';
import { newEvent } from './new-event.js';
import { answerWhatIf } from './otherwise-questions.js';
import { problemOf, questionsOf } from './questions.js';
import {
    BECAUSE_REQUEST,
    CHECK_ANSWER_REQUEST,
    COMPARE_REQUEST,
    COMPILE_REQUEST,
    LAY_OUT_FOLDER_REQUEST,
    NEW_EVENT_REQUEST,
    QUESTIONS_REQUEST,
    SUMMARY_REQUEST,
    WHAT_IF_REQUEST,
    type Because,
    type CheckAnswer,
    type NewEvent,
    type OfFile,
    type OfFolder,
    type QuestionsOf,
    type WhatIfRequest,
} from './requests.js';
import { summaryOf } from './summary.js';
import { virtualText, VIRTUAL_TEXT_REQUEST } from './virtual-texts.js';
import { silence, type Silencing } from './waiving.js';
import { GO_TO_COMMAND } from './withheld-fixes.js';
import { workspaceEdit } from './workspace-edit.js';
import type { Place, Workspace } from './workspace.js';

/** Answers what a client of this program asks beyond the editor's protocol; see `requests.ts`. */
export function answerOwnRequests(
    connection: Connection,
    workspace: Workspace,
    client: () => Client,
    ready: () => Promise<void>,
): void {
    /** Once everything is read, and where there is such a plan. */
    const ofFile = <Asked extends OfFile, Answer>(
        request: string,
        answer: (place: Place, asked: Asked, asker: Asker) => Answer | Promise<Answer>,
    ): void => {
        connection.onRequest(
            request,
            async (asked: Asked & WorkDoneProgressParams, token: CancellationToken): Promise<Answer | null> => {
                await ready();
                const place = workspace.locate(asked.uri);
                await workspace.fetchUnknown(place);
                const progress = connection.window.attachWorkDoneProgress(asked.workDoneToken);
                return place.folder.hasPlan(place.path) ? answer(place, asked, { token, progress }) : null;
            },
        );
    };
    ofFile(COMPILE_REQUEST, (place, _, asker) => compilePlan(place, asker));
    ofFile(SUMMARY_REQUEST, summaryOf);
    ofFile(WHAT_IF_REQUEST, (place, { answers }: WhatIfRequest, asker) => answerWhatIf(place, answers, asker));
    ofFile(COMPARE_REQUEST, compareSince);
    connection.onRequest(
        LAY_OUT_FOLDER_REQUEST,
        async ({ uri, workDoneToken }: OfFolder & WorkDoneProgressParams, token: CancellationToken) => {
            await ready();
            const places = workspace.all.flatMap((folder) => folder.plans.map((path) => ({ folder, path })));
            const below = places.filter(({ folder, path }) => folder.uriOf(path).startsWith(`${uri}/`));
            const progress = connection.window.attachWorkDoneProgress(workDoneToken);
            return layOutPlans(below, client(), { token, progress });
        },
    );
    /** What a question is about, once it is read. */
    const placeOf = async (asked: QuestionsOf): Promise<Place | undefined> => {
        if (!('uri' in asked)) {
            return undefined;
        }
        await ready();
        const place = workspace.locate(asked.uri);
        await workspace.fetchUnknown(place);
        return place.folder.hasPlan(place.path) ? place : undefined;
    };
    connection.onRequest(QUESTIONS_REQUEST, async (asked: QuestionsOf) => questionsOf(asked, await placeOf(asked)));
    connection.onRequest(CHECK_ANSWER_REQUEST, async (asked: CheckAnswer) => problemOf(asked, await placeOf(asked)));
    connection.onRequest(NEW_EVENT_REQUEST, async (asked: NewEvent) => {
        await ready();
        return newEvent(asked, asked.folder === undefined ? undefined : workspace.locate(`${asked.folder}/_`).folder);
    });
    connection.onRequest(BECAUSE_REQUEST, ({ silencing, reason }: Because) => {
        const { uri, ...asked } = silencing as Omit<Silencing, 'title'> & OfFile;
        const { folder } = workspace.locate(uri);
        const edits = silence(folder, asked, reason);
        return edits.size > 0 ? workspaceEdit(folder, edits, client()) : null;
    });
    connection.onExecuteCommand(async ({ command, arguments: [place] = [] }) => {
        if (command === GO_TO_COMMAND) {
            await connection.window.showDocument(place as ShowDocumentParams);
        }
    });
    connection.onRequest(VIRTUAL_TEXT_REQUEST, ({ uri }: OfFile) => {
        const text = virtualText(uri);
        return text === undefined ? null : { text };
    });
}
