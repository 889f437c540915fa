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
    const { event, guests, courses, findings, worst } = summary;
    const figures = [counted(guests, 'guest'), counted(courses, 'course')].filter((part) => part !== undefined);
    const words = figures.length > 0 ? figures.join(', ') : 'Service plan';
    item.text = `$(${ICON[worst?.severity ?? 'none']}) ${words}`;
    item.tooltip = new MarkdownString();
    item.tooltip.appendMarkdown(event === undefined ? '' : `**${escaped(event)}**\n\n`);
    item.tooltip.appendMarkdown(worst ? `${countsOf(findings)}.\n\n${escaped(worst.message)}` : 'Nothing found.');
    item.backgroundColor = worst?.severity === 'error' ? new ThemeColor('statusBarItem.errorBackground') : undefined;
    item.accessibilityInformation = {
        label: `${words}. ${worst ? `${countsOf(findings)}. ${worst.message}` : 'Nothing found.'}`,
    };
    item.show();
}

const ICON = { error: 'error', warning: 'warning', info: 'info', hint: 'info', none: 'check' } as const;

function countsOf({ error, warning, info, hint }: Summary['findings']): string {
    const parts = [counted(error, 'error'), counted(warning, 'warning'), counted(info + hint, 'remark')];
    return parts.filter((part) => part !== undefined && !part.startsWith('0 ')).join(', ');
}

function counted(count: number | undefined, noun: string): string | undefined {
    return count === undefined ? undefined : `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** As Markdown that says no more than the words; names in back-quotes stay names. */
function escaped(text: string): string {
    return text.replace(/`[^`]*`|[\\*_{}[\]()#+!<>|~-]/g, (found) => (found.startsWith('`') ? found : `\\${found}`));
}
