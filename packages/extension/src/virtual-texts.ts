import { Disposable, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { CUPBOARD_SCHEME, RULE_SCHEME, VIRTUAL_TEXT_REQUEST } from 'underliner-language/editor';

/** Shows the standard cupboard and the rules' pages, which the server has and no folder holds. */
export function provideVirtualTexts(client: BaseLanguageClient): Disposable {
    const provider = {
        async provideTextDocumentContent(uri: Uri): Promise<string | undefined> {
            const found = await client.sendRequest<{ readonly text: string } | null>(VIRTUAL_TEXT_REQUEST, {
                uri: uri.toString(true),
            });
            return found?.text;
        },
    };
    return Disposable.from(
        workspace.registerTextDocumentContentProvider(CUPBOARD_SCHEME, provider),
        workspace.registerTextDocumentContentProvider(RULE_SCHEME, provider),
    );
}

/** Where `provideVirtualTexts` shows the page of a rule. */
export function rulePage(id: string): Uri {
    return Uri.from({ scheme: RULE_SCHEME, path: `/${id}.md` });
}
