import {
    Disposable,
    languages,
    MarkdownString,
    StatusBarAlignment,
    ThemeColor,
    window,
    type StatusBarItem,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { SUMMARY_REQUEST, type Summary } from 'underliner-language/editor';
import { isServed } from './served-documents.js';

/** Guests, courses and the gravest finding of the plan in sight, in the line at the foot of the window. */
export function showStatus(client: BaseLanguageClient): Disposable {
    const item = window.createStatusBarItem('underliner.summary', StatusBarAlignment.Left, -10);
    item.name = 'Service Plan';
    item.command = { command: 'workbench.actions.view.problems', title: 'Show Problems' };
    let asked = 0;
    const update = async (): Promise<void> => {
        const mine = ++asked;
        const document = window.activeTextEditor?.document;
        if (document?.languageId !== 'cover' || !isServed(document)) {
            item.hide();
            return;
        }
        const uri = client.code2ProtocolConverter.asUri(document.uri);
        const summary = await client.sendRequest<Summary | null>(SUMMARY_REQUEST, { uri }).catch(() => null);
        // Another file may have come in sight meanwhile.
        if (mine === asked) {
            show(item, summary);
        }
    };
    void update();
    return Disposable.from(
        item,
        window.onDidChangeActiveTextEditor(() => void update()),
        languages.onDidChangeDiagnostics(({ uris }) => {
            const shown = window.activeTextEditor?.document.uri.toString();
            if (uris.some((uri) => uri.toString() === shown)) {
                void update();
            }
        }),
    );
}

function show(item: StatusBarItem, summary: Summary | null): void {
    if (!summary) {
        item.hide();
        return;
    }
    const { line, found, page, worst } = summary;
    item.text = `$(${ICON[worst?.severity ?? 'none']}) ${line}`;
    item.tooltip = new MarkdownString(page);
    item.backgroundColor = worst?.severity === 'error' ? new ThemeColor('statusBarItem.errorBackground') : undefined;
    item.accessibilityInformation = { label: `${line}. ${found}` };
    item.show();
}

const ICON = { error: 'error', warning: 'warning', info: 'info', hint: 'info', none: 'check' } as const;
