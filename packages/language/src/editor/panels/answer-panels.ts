import type { Connection } from 'vscode-languageserver';
import type { Client } from '../client.js';
import type { Place, Workspace } from '../workspace.js';
import { panelCopy, panelPage, planOf } from './panel-page.js';
import { PANEL_COPY_REQUEST, PANEL_REQUEST, PLAN_CHANGED_NOTIFICATION, type AskPanel } from './requests.js';
import { ShownPlans } from './shown-plan.js';

/** Answers a client that shows panels. Nothing is worked out for a panel before it is asked for. */
export function answerPanels(
    connection: Connection,
    workspace: Workspace,
    client: () => Client,
    ready: () => Promise<void>,
): void {
    const plans = new ShownPlans();
    const answer = <Answer>(request: string, give: (place: Place, asked: AskPanel) => Answer): void => {
        connection.onRequest(request, async (asked: AskPanel): Promise<Answer | null> => {
            await ready();
            const place = workspace.locate(asked.uri);
            await workspace.fetchUnknown(place);
            const plan = place.folder.hasPlan(place.path) ? planOf(place) : undefined;
            return plan ? give(plan, asked) : null;
        });
    };
    answer(PANEL_REQUEST, (place, asked) => panelPage(place, asked, plans, client()));
    answer(PANEL_COPY_REQUEST, (place, asked) => panelCopy(place, asked, plans));
    // What is gone is not looked at again, so it is told of here.
    workspace.onTouched(({ folder, files }) => {
        const gone = client().showsPanels ? files.filter((file) => !folder.hasText(file)) : [];
        gone.forEach((file) => {
            void connection.sendNotification(PLAN_CHANGED_NOTIFICATION, { uri: folder.uriOf(file) });
        });
    });
}
