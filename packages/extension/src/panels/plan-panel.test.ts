import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { Uri, WebviewPanel } from 'vscode';
import type { PanelPage } from 'underliner-language/editor';
import type { FromPage, ToPage } from './messages.js';

// A panel between an editor and a server that are played here: what it tells its page when something is not there.

const opened = vi.hoisted(() => ({ errors: [] as string[] }));
vi.mock('vscode', () => {
    const address = (path: string): unknown => ({ path, toString: () => path });
    return {
        Uri: { parse: address, joinPath: (base: unknown) => base },
        ViewColumn: { One: 1, Beside: -2 },
        env: {},
        workspace: { asRelativePath: (uri: unknown) => String(uri).replace('file:///', '') },
        window: {
            visibleTextEditors: [],
            showTextDocument: () => Promise.reject(new Error('cannot open')),
            showErrorMessage: (words: string) => opened.errors.push(words),
        },
    };
});
const { PlanPanel } = await import('./plan-panel.js');

const SUPPER = 'file:///supper.cover';
const page = (uri: string): PanelPage => ({
    uri,
    title: 'Evening: Quiet supper',
    html: `<p>${uri}</p>`,
    places: [{ uri, range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } }],
    isStale: false,
});

/** What the server has of each address. */
let plans: Record<string, PanelPage>;
let told: ToPage[];
let isVisible: boolean;
let hear: (message: FromPage) => void;
let changeView: () => void;

function open(uri: string | undefined) {
    const address = (path: string): Uri => ({ path, toString: () => path }) as unknown as Uri;
    const client = {
        code2ProtocolConverter: { asUri: String },
        protocol2CodeConverter: { asUri: address, asRange: (range: unknown) => range },
        sendRequest: (_: string, asked: { uri: string }) => Promise.resolve(plans[asked.uri] ?? null),
    } as unknown as BaseLanguageClient;
    const webview = {
        html: '',
        asWebviewUri: String,
        onDidReceiveMessage: (listener: typeof hear) => (hear = listener),
        postMessage: (message: ToPage) => told.push(message),
    };
    const panel = {
        webview,
        get visible() {
            return isVisible;
        },
        onDidChangeViewState: (listener: typeof changeView) => (changeView = listener),
    };
    const state = { uri, choices: {} };
    const shown = new PlanPanel(client, address('ext'), 'evening', 'Evening', panel as unknown as WebviewPanel, state);
    return { shown, webview, turnTo: (path: string) => shown.turnTo(address(path)) };
}

/** All that was asked is answered. */
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
const last = (sort: ToPage['sort']): ToPage | undefined => told.findLast((message) => message.sort === sort);

beforeEach(() => {
    plans = { [SUPPER]: page(SUPPER), 'file:///house.cover': page(SUPPER) };
    told = [];
    isVisible = true;
    opened.errors.length = 0;
});

describe('a panel', () => {
    it('says that its plan is being read, or that one has to be opened', () => {
        expect(open(SUPPER).webview.html).toContain('The plan is being read');
        expect(open(undefined).webview.html).toContain('Open the file of an event');
    });

    it('says that its plan is gone, and shows it again when it is back', async () => {
        const { shown } = open(SUPPER);
        hear({ sort: 'ready' });
        await settled();
        expect(last('content')).toMatchObject({ html: `<p>${SUPPER}</p>` });
        plans = {};
        shown.planChanged(SUPPER);
        await vi.waitFor(() =>
            expect(told.at(-1)).toEqual({
                sort: 'silence',
                words: 'Out of date: supper.cover is no longer there. This is how it was.',
            }),
        );
        hear({ sort: 'choose', name: 'view', value: 'room' });
        await settled();
        expect(told.at(-1)?.sort).toBe('silence');
        plans = { [SUPPER]: page(SUPPER) };
        shown.planChanged(SUPPER);
        await vi.waitFor(() => expect(told.filter(({ sort }) => sort === 'content')).toHaveLength(2));
    });

    it('stays with its plan, and answers its controls, when a file comes in sight that is none', async () => {
        const { turnTo } = open(SUPPER);
        hear({ sort: 'ready' });
        await settled();
        turnTo('file:///lonely-house.cover');
        await settled();
        expect(last('silence')).toBeUndefined();
        hear({ sort: 'choose', name: 'view', value: 'room' });
        await settled();
        expect(last('content')).toMatchObject({ html: `<p>${SUPPER}</p>`, state: { choices: { view: 'room' } } });
    });

    it('asks for a plan where it was turned to a file that is none', async () => {
        open('file:///lonely-house.cover');
        hear({ sort: 'ready' });
        await settled();
        expect(told.at(-1)).toEqual({ sort: 'nothing', words: 'Open the file of an event to see it here.' });
    });

    it('says which file can’t be opened', async () => {
        open(SUPPER);
        hear({ sort: 'ready' });
        await settled();
        hear({ sort: 'go', place: 0 });
        await settled();
        expect(opened.errors).toEqual(['supper.cover can’t be opened. Is it still there?']);
    });

    it('shows its plan though it is taken for hidden for a moment, as while a window is put together again', async () => {
        const { turnTo } = open(SUPPER);
        hear({ sort: 'ready' });
        isVisible = false;
        changeView();
        await settled();
        expect(last('content')).toBeDefined();
        turnTo('file:///house.cover');
        await settled();
        const before = told.filter(({ sort }) => sort === 'content').length;
        isVisible = true;
        changeView();
        await settled();
        expect(told.filter(({ sort }) => sort === 'content')).toHaveLength(before + 1);
    });
});
