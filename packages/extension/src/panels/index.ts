import { commands, Disposable, Uri, ViewColumn, window, type WebviewPanel } from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { PLAN_CHANGED_NOTIFICATION, type OfFile, type PanelKind } from 'underliner-language/editor';
import { isServed } from '../served-documents.js';
import type { PanelState } from './messages.js';
import { PlanPanel } from './plan-panel.js';

const TITLES: Readonly<Record<PanelKind, string>> = {
    table: 'Laid table',
    evening: 'Evening',
    pull: 'Pull list',
};

/** The panels: one of each kind, which follows the plan in sight. Their content comes from the server. */
export function providePanels(client: BaseLanguageClient, extension: Uri): Disposable {
    const open = new Map<PanelKind, PlanPanel>();
    const all = (): readonly PlanPanel[] => [...open.values()];

    const keep = (kind: PanelKind, panel: WebviewPanel, state: PanelState): void => {
        const kept = new PlanPanel(client, extension, kind, TITLES[kind], panel, state);
        open.set(kind, kept);
        panel.iconPath = {
            light: Uri.joinPath(extension, 'media', 'cover-light.svg'),
            dark: Uri.joinPath(extension, 'media', 'cover-dark.svg'),
        };
        panel.onDidDispose(() => {
            kept.dispose();
            if (open.get(kind) === kept) {
                open.delete(kind);
            }
        });
    };
    const show = (kind: PanelKind, at: unknown): void => {
        // From a panel, another one of the same plan is opened, in the same place.
        const other = all().find(({ panel }) => panel.active) ?? all().find(({ panel }) => panel.visible) ?? all()[0];
        const uri = at instanceof Uri ? at : (window.activeTextEditor?.document.uri ?? other?.plan);
        const panel = open.get(kind);
        if (panel) {
            panel.panel.reveal(undefined, true);
            if (uri) {
                panel.turnTo(uri);
            }
            return;
        }
        const column = { viewColumn: other?.panel.viewColumn ?? ViewColumn.Beside, preserveFocus: true };
        keep(kind, window.createWebviewPanel(`underliner.${kind}`, TITLES[kind], column), {
            uri: uri?.toString(),
            choices: {},
        });
    };
    const register = (name: string, kind: PanelKind): Disposable =>
        commands.registerCommand(`underliner.${name}`, (at) => show(kind, at));
    return Disposable.from(
        register('showTable', 'table'),
        register('showEvening', 'evening'),
        register('showPull', 'pull'),
        ...(['table', 'evening', 'pull'] as const).map((kind) =>
            window.registerWebviewPanelSerializer(`underliner.${kind}`, {
                deserializeWebviewPanel(panel, state: Partial<PanelState> | undefined) {
                    keep(kind, panel, { uri: state?.uri, choices: state?.choices ?? {} });
                    return Promise.resolve();
                },
            }),
        ),
        client.onNotification(PLAN_CHANGED_NOTIFICATION, ({ uri }: OfFile) =>
            all().forEach((panel) => panel.planChanged(uri)),
        ),
        client.onDidChangeState(({ newState }) =>
            all().forEach((panel) => {
                if (newState === State.Running) {
                    panel.serverCame();
                } else if (newState === State.Stopped) {
                    panel.serverLeft();
                }
            }),
        ),
        window.onDidChangeActiveTextEditor((editor) => {
            if (editor?.document.languageId === 'cover' && isServed(editor.document)) {
                all().forEach((panel) => panel.follow(editor.document.uri));
            }
        }),
        window.onDidChangeTextEditorSelection(({ textEditor }) => {
            if (textEditor.document.languageId === 'cover') {
                all().forEach((panel) => panel.light(textEditor));
            }
        }),
    );
}
