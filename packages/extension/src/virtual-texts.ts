import { Disposable, MarkdownString, Uri, workspace, type Diagnostic, type Hover } from 'vscode';
import type { BaseLanguageClient, Middleware } from 'vscode-languageclient';
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

/** Links to a rule's page open it laid out, not as text. */
export function linksToRules(): Middleware {
    return {
        handleDiagnostics: (uri, diagnostics, next) => next(uri, diagnostics.map(withRuleLink)),
        async provideHover(document, position, token, next) {
            const hover = await next(document, position, token);
            return hover ? withRuleLinks(hover) : hover;
        },
    };
}

function withRuleLink(diagnostic: Diagnostic): Diagnostic {
    const { code } = diagnostic;
    if (typeof code === 'object' && code.target.scheme === RULE_SCHEME) {
        diagnostic.code = { value: code.value, target: Uri.parse(ruleCommand(ruleOf(code.target))) };
    }
    return diagnostic;
}

function withRuleLinks(hover: Hover): Hover {
    const link = new RegExp(`\\(${RULE_SCHEME}:/([a-z-]+)\\.md\\)`, 'g');
    for (const part of hover.contents) {
        if (part instanceof MarkdownString) {
            part.value = part.value.replace(link, (_, id: string) => `(${ruleCommand(id)})`);
        }
    }
    return hover;
}

export function ruleOf(page: Uri): string {
    return page.path.replace(/^\/|\.md$/g, '');
}

export function rulePage(id: string): Uri {
    return Uri.from({ scheme: RULE_SCHEME, path: `/${id}.md` });
}

function ruleCommand(id: string): string {
    return `command:underliner.explainRule?${encodeURIComponent(JSON.stringify([id]))}`;
}
