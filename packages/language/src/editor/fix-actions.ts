import { CodeActionKind, type CodeAction, type Diagnostic } from 'vscode-languageserver';
import type { Client } from './client.js';
import { diagnosticOf, type FindingData } from './diagnostics.js';
import { editsOf } from './fixes.js';
import type { Folder, PlacedFinding } from './folder.js';
import { workspaceEdit } from './workspace-edit.js';

/**
 * The fixes of a finding.
 * @param told the findings that the client has there
 */
export function fixActions(
    folder: Folder,
    placed: PlacedFinding,
    told: readonly Diagnostic[],
    client: Client,
): CodeAction[] {
    const { finding } = placed;
    const own = diagnosticOf(folder, placed, client);
    // The client's own copy, found by what it says of itself, never by its message.
    const shown = told.filter(
        (each) => each.code === finding.rule && own && sameRange(each, own) && isOf(each, placed),
    );
    return finding.fixes.flatMap((fix): CodeAction[] => {
        const edits = editsOf(fix, (file) => folder.textOf(file));
        if (edits.size === 0) {
            return [];
        }
        return [
            {
                title: fix.title,
                kind: CodeActionKind.QuickFix,
                diagnostics: shown.length > 0 ? shown : own ? [own] : [],
                ...(fix.preferred ? { isPreferred: true } : {}),
                edit: workspaceEdit(folder, edits, client),
            },
        ];
    });
}

function isOf({ data }: Diagnostic, { plan }: PlacedFinding): boolean {
    const said = (data as Partial<FindingData> | undefined)?.plan;
    return said === undefined || said === plan;
}

function sameRange({ range: a }: Diagnostic, { range: b }: Diagnostic): boolean {
    return (
        a.start.line === b.start.line &&
        a.start.character === b.start.character &&
        a.end.line === b.end.line &&
        a.end.character === b.end.character
    );
}
