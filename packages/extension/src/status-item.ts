import { Disposable, languages, LanguageStatusSeverity, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { SUMMARY_REQUEST, type Summary } from 'underliner-language/editor';
import { isServed } from './served-documents.js';

/** Guests, courses and the gravest finding of the plan in sight, beside the name of the language. */
export function showStatus(client: BaseLanguageClient): Disposable {
    const item = languages.createLanguageStatusItem('underliner', { language: 'cover' });
    item.name = 'Underliner';
    let asked = 0;
    const update = async (): Promise<void> => {
        const document = window.activeTextEditor?.document;
        if (document?.languageId !== 'cover' || !isServed(document)) {
            return;
        }
        const mine = ++asked;
        item.busy = true;
        const uri = client.code2ProtocolConverter.asUri(document.uri);
        const summary = await client.sendRequest<Summary | null>(SUMMARY_REQUEST, { uri }).catch(() => null);
        // Another file may have come in sight meanwhile.
        if (mine === asked) {
            item.busy = false;
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

function show(item: ReturnType<typeof languages.createLanguageStatusItem>, summary: Summary | null): void {
    const { guests, courses, findings, worst } = summary ?? {};
    const figures = [counted(guests, 'guest'), counted(courses, 'course')].filter((part) => part !== undefined);
    item.text = figures.length > 0 ? figures.join(', ') : 'Service plan';
    item.detail = worst ? `${countsOf(findings)}. ${worst.message}` : summary ? 'Nothing found' : undefined;
    item.severity =
        worst?.severity === 'error'
            ? LanguageStatusSeverity.Error
            : worst?.severity === 'warning'
              ? LanguageStatusSeverity.Warning
              : LanguageStatusSeverity.Information;
    item.command = worst ? { command: 'workbench.actions.view.problems', title: 'Show Problems' } : undefined;
    item.accessibilityInformation = { label: `${item.text}. ${item.detail ?? ''}` };
}

function countsOf(findings: Summary['findings'] | undefined): string {
    const { error = 0, warning = 0, info = 0, hint = 0 } = findings ?? {};
    const parts = [counted(error, 'error'), counted(warning, 'warning'), counted(info + hint, 'remark')];
    return parts.filter((part) => part !== undefined && !part.startsWith('0 ')).join(', ');
}

function counted(count: number | undefined, noun: string): string | undefined {
    return count === undefined ? undefined : `${count} ${noun}${count === 1 ? '' : 's'}`;
}
