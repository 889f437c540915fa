import type { Range } from 'vscode';
import { env, Uri, ViewColumn, window, workspace, type TextEditor, type WebviewPanel } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
    PANEL_COPY_REQUEST,
    PANEL_REQUEST,
    type AskPanel,
    type PanelChoices,
    type PanelCopy,
    type PanelKind,
    type PanelPage,
} from 'underliner-language/editor';
import type { FromPage, PanelState, ToPage } from './messages.js';
import { roots, shell } from './shell.js';

interface WrittenAt {
    readonly uri: Uri;
    readonly range: Range;
}

const WAITING = 'The plan is being read …';
const NO_PLAN = 'Open the file of an event to see it here.';

/** Who types is not to wait for pictures: they are asked for when the text has been still so long, ms. */
const STILL = 200;
/** But while someone types on and on, they are no older than this, ms. */
const OLDEST = 1000;

/**
 * One panel. It asks the server for its content when its plan has changed or something was chosen in it; never while an answer
 * is on its way, and never while it is hidden.
 */
export class PlanPanel {
    private choices: PanelChoices;
    private asked: Uri | undefined;
    /** The plan shown, which is another than the file asked about where that is part of one. */
    private shown: string | undefined;
    private places: readonly WrittenAt[] = [];
    /** The page has said that it can show something. */
    private isReady = false;
    private isInSight = false;
    private isAsking = false;
    private isOutdated = false;
    private waiting: { readonly since: number; readonly timer: ReturnType<typeof setTimeout> } | undefined;

    constructor(
        private readonly client: BaseLanguageClient,
        extension: Uri,
        readonly kind: PanelKind,
        title: string,
        readonly panel: WebviewPanel,
        { uri, choices }: PanelState,
    ) {
        this.asked = uri === undefined ? undefined : Uri.parse(uri);
        this.choices = choices;
        const { webview } = panel;
        webview.options = { enableScripts: true, localResourceRoots: roots(extension) };
        webview.onDidReceiveMessage((message: FromPage) => this.hear(message));
        panel.onDidChangeViewState(() => {
            // A hidden page is gone, and says that it is ready when it comes back; but one that was only taken for hidden, as happens
            // while a window is being put together again, says nothing more.
            const isBack = panel.visible && !this.isInSight;
            this.isInSight = panel.visible;
            if (isBack) {
                void this.update();
            }
        });
        webview.html = shell(webview, extension, title, this.asked ? WAITING : NO_PLAN);
    }

    /** The file whose plan is shown. */
    get plan(): Uri | undefined {
        return this.asked;
    }

    /** Shows the plan that a file is or is part of, unless it is to stay with its own. */
    follow(uri: Uri): void {
        if (this.choices.stay !== 'on' || this.shown === undefined) {
            this.turnTo(uri);
        }
    }

    turnTo(uri: Uri): void {
        this.asked = uri;
        void this.update();
    }

    planChanged(address: string): void {
        const asked = this.asked && this.client.code2ProtocolConverter.asUri(this.asked);
        if (address === this.shown || (this.shown === undefined && address === asked)) {
            this.updateWhenStill();
        }
    }

    dispose(): void {
        clearTimeout(this.waiting?.timer);
        this.isReady = false;
    }

    serverCame(): void {
        void this.update();
    }

    serverLeft(): void {
        this.say({ sort: 'silence', words: 'Out of date: the language server is not running.' });
    }

    /** Lights what is written where the cursor is, or, where that is nothing, what is written in its line. */
    light(editor: TextEditor | undefined): void {
        const cursor = editor?.selection.active;
        const uri = editor?.document.uri.toString();
        const lit = (isHere: (range: Range) => boolean): number[] =>
            this.places.flatMap((place, index) => (place.uri.toString() === uri && isHere(place.range) ? [index] : []));
        const here = cursor ? lit((range) => range.contains(cursor)) : [];
        const places = here.length > 0 || !cursor ? here : lit(({ start }) => start.line === cursor.line);
        this.say({ sort: 'light', places });
    }

    // ---------------------------------------------------------------- asking
    private updateWhenStill(): void {
        const now = Date.now();
        const since = this.waiting?.since ?? now;
        clearTimeout(this.waiting?.timer);
        const wait = Math.max(0, Math.min(STILL, since + OLDEST - now));
        this.waiting = { since, timer: setTimeout(() => void this.update(), wait) };
    }

    private async update(): Promise<void> {
        clearTimeout(this.waiting?.timer);
        this.waiting = undefined;
        if (this.isAsking || !this.isReady || !this.isInSight || !this.asked) {
            this.isOutdated = true;
            return;
        }
        this.isAsking = true;
        this.isOutdated = false;
        try {
            await this.showPlanOf(this.asked);
        } catch {
            this.serverLeft();
        } finally {
            this.isAsking = false;
        }
        if (this.isOutdated) {
            void this.update();
        }
    }

    private get planShown(): Uri | undefined {
        return this.shown === undefined ? undefined : this.client.protocol2CodeConverter.asUri(this.shown);
    }

    private question(uri: Uri): AskPanel {
        return { panel: this.kind, choices: this.choices, uri: this.client.code2ProtocolConverter.asUri(uri) };
    }

    /** A file that is no plan leaves the plan that is shown; where that is gone, what is shown of it is marked. */
    private async showPlanOf(asked: Uri): Promise<void> {
        const ask = (uri: Uri): Promise<PanelPage | null> => this.client.sendRequest(PANEL_REQUEST, this.question(uri));
        const shown = this.planShown;
        const page = (await ask(asked)) ?? (shown && shown.toString() !== asked.toString() ? await ask(shown) : null);
        if (page) {
            this.show(page);
        } else {
            this.say(shown ? { sort: 'silence', words: goneWords(shown) } : { sort: 'nothing', words: NO_PLAN });
        }
    }

    private show(page: PanelPage): void {
        const { protocol2CodeConverter: toCode } = this.client;
        this.shown = page.uri;
        this.panel.title = page.title;
        this.places = page.places.map(({ uri, range }) => ({ uri: toCode.asUri(uri), range: toCode.asRange(range) }));
        const state: PanelState = { uri: toCode.asUri(page.uri).toString(), choices: this.choices };
        this.say({ sort: 'content', html: page.html, isStale: page.isStale, state });
        this.light(window.activeTextEditor);
    }

    /** A page that was hidden or closed meanwhile does not hear it. */
    private say(message: ToPage): void {
        if (this.isReady) {
            void this.panel.webview.postMessage(message);
        }
    }

    // ---------------------------------------------------------------- what the page says
    private hear(message: FromPage): void {
        switch (message.sort) {
            case 'ready':
                this.isReady = true;
                this.isInSight = true;
                void this.update();
                break;
            case 'choose':
                this.choices = { ...this.choices, [message.name]: message.value };
                void this.update();
                break;
            case 'go':
                void this.go(this.places[message.place]);
                break;
            case 'copy':
                void this.copy();
                break;
        }
    }

    private async go(place: WrittenAt | undefined): Promise<void> {
        if (!place) {
            return;
        }
        const open = window.visibleTextEditors.find(({ document }) => document.uri.toString() === place.uri.toString());
        const beside = this.panel.viewColumn === ViewColumn.One ? ViewColumn.Beside : ViewColumn.One;
        try {
            await window.showTextDocument(place.uri, {
                selection: place.range,
                viewColumn: open?.viewColumn ?? beside,
            });
        } catch {
            void window.showErrorMessage(`${workspace.asRelativePath(place.uri)} can’t be opened. Is it still there?`);
        }
    }

    private async copy(): Promise<void> {
        const plan = this.planShown;
        const copied =
            plan &&
            (await this.client
                .sendRequest<PanelCopy | null>(PANEL_COPY_REQUEST, this.question(plan))
                .catch(() => null));
        if (copied) {
            await env.clipboard.writeText(copied.text);
            window.setStatusBarMessage(copied.said, 5000);
        } else {
            void window.showErrorMessage('The list can’t be copied: the plan or the language server is not there.');
        }
    }
}

const goneWords = (plan: Uri): string =>
    `Out of date: ${workspace.asRelativePath(plan)} is no longer there. This is how it was.`;
